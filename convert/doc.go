// Package convert is the main job from end to end: notebooks in, a checked
// Darwin Core submission out. Run in convert.go reads top to bottom; each
// stage stands in the file of its name.
package convert

// Version is the version of the program, written into every summary.
const Version = "0.1.0"
