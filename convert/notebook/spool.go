package notebook

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"os"
)

// spool keeps what is written to it in memory, or in a temporary file where
// it is large.
type spool struct {
	temp string
	mem  []byte
	file *os.File
	w    *bufio.Writer
}

const spoolMemory = 8 << 20

func (s *spool) Write(b []byte) (int, error) {
	if s.file == nil && len(s.mem)+len(b) <= spoolMemory {
		s.mem = append(s.mem, b...)
		return len(b), nil
	}
	if s.file == nil {
		f, err := os.CreateTemp(s.temp, "fieldfare-*")
		if err != nil {
			return 0, err
		}
		s.file, s.w = f, bufio.NewWriterSize(f, 256<<10)
		if _, err := s.w.Write(s.mem); err != nil {
			return 0, err
		}
		s.mem = nil
	}
	return s.w.Write(b)
}

func (s *spool) flush() error {
	if s.w == nil {
		return nil
	}
	return s.w.Flush()
}

// from returns what was written, from an offset on.
func (s *spool) from(offset int64) io.Reader {
	if s.file == nil {
		return bytes.NewReader(s.mem[min(offset, int64(len(s.mem))):])
	}
	return io.NewSectionReader(s.file, offset, 1<<62)
}

func (s *spool) close() error {
	if s.file == nil {
		return nil
	}
	err := errors.Join(s.file.Close(), os.Remove(s.file.Name()))
	s.file = nil
	return err
}
