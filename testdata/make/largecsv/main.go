// Command largecsv writes a large invented notebook to standard output:
// largecsv ROWS.
package main

import (
	"log"
	"os"
	"strconv"

	"fieldfare/testdata/make/large"
)

func main() {
	log.SetFlags(0)
	if len(os.Args) != 2 {
		log.Fatal("usage: largecsv ROWS")
	}
	rows, err := strconv.Atoi(os.Args[1])
	if err != nil {
		log.Fatalf("%q is no number of rows", os.Args[1])
	}
	if err := large.Write(os.Stdout, rows); err != nil {
		log.Fatal(err)
	}
}
