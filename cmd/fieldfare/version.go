package main

import "fieldfare/convert"

func version() string { return convert.Version }
