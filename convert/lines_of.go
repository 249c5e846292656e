package convert

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// linesOf counts the lines of a text file, so that the time left can be told;
// -1 where the file is no text whose lines could be counted in passing.
func linesOf(path string) int {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".csv", ".tsv", ".tab", ".txt":
	default:
		return -1
	}
	file, err := os.Open(path)
	if err != nil {
		return -1
	}
	defer file.Close()
	if info, err := file.Stat(); err != nil || !info.Mode().IsRegular() {
		return -1 // what is read from it would be missing later
	}
	lines, buf := 0, make([]byte, 1<<16)
	for {
		n, err := file.Read(buf)
		lines += bytes.Count(buf[:n], []byte{'\n'})
		if err == io.EOF {
			return max(lines, 1)
		}
		if err != nil {
			return -1
		}
	}
}
