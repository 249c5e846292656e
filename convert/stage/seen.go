package stage

import (
	"io/fs"
	"os"
)

// Seen is a file as it was at some moment, to tell later whether it is still
// the same.
type Seen struct {
	path string
	info fs.FileInfo // nil: there was none
}

// See notes how the file is at this moment. It need not exist.
func See(path string) Seen {
	info, err := os.Stat(path)
	if err != nil {
		info = nil
	}
	return Seen{path, info}
}

// Changed tells whether the file has been written or replaced since.
func (s Seen) Changed() bool {
	now := See(s.path)
	if s.info == nil || now.info == nil {
		return (s.info == nil) != (now.info == nil)
	}
	return !os.SameFile(s.info, now.info) || s.info.Size() != now.info.Size() || !s.info.ModTime().Equal(now.info.ModTime())
}
