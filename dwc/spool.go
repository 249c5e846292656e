package dwc

import (
	"archive/zip"
	"bytes"
	"hash/crc32"
	"io"
	"os"
)

// spoolMemory is how many compressed bytes a spool keeps in memory.
const spoolMemory = 4 << 20

// spool holds a file's content, compressed, until its turn in the archive
// comes: a zip takes one file after the other.
type spool struct {
	deflate *deflater
	crc     uint32
	size    uint64 // before compression
	packed  uint64
	memory  bytes.Buffer
	file    *os.File // once memory is full
	named   bool     // the file still has its name, and must be removed
}

func newSpool() *spool {
	s := new(spool)
	s.deflate = newDeflater(spoolTarget{s})
	return s
}

// Write compresses and keeps p.
func (s *spool) Write(p []byte) (int, error) {
	s.crc = crc32.Update(s.crc, crc32.IEEETable, p)
	s.size += uint64(len(p))
	return s.deflate.Write(p)
}

// spoolTarget takes a spool's compressed bytes.
type spoolTarget struct{ *spool }

// Write keeps p in memory, or in the file.
func (s spoolTarget) Write(p []byte) (int, error) {
	s.packed += uint64(len(p))
	if s.file != nil {
		return s.file.Write(p)
	}
	s.memory.Write(p)
	if s.memory.Len() <= spoolMemory {
		return len(p), nil
	}
	f, err := os.CreateTemp("", "fieldfare-*.part")
	if err != nil {
		return 0, err
	}
	// Where the system allows it, the file loses its name at once, so that it
	// is gone whatever becomes of the program.
	s.file, s.named = f, os.Remove(f.Name()) != nil
	if _, err := s.memory.WriteTo(f); err != nil {
		return 0, err
	}
	s.memory = bytes.Buffer{}
	return len(p), nil
}

// copyTo adds the content to an archive under a name.
func (s *spool) copyTo(z *zip.Writer, name string) error {
	if err := s.deflate.Close(); err != nil {
		return err
	}
	h := header(name)
	h.CRC32, h.UncompressedSize64, h.CompressedSize64 = s.crc, s.size, s.packed
	// CreateRaw leaves the time to its caller; this is that of writtenAt.
	h.ModifiedDate = 1<<5 | 1
	out, err := z.CreateRaw(h)
	if err != nil {
		return err
	}
	var content io.Reader = &s.memory
	if s.file != nil {
		if _, err := s.file.Seek(0, io.SeekStart); err != nil {
			return err
		}
		content = s.file
	}
	_, err = io.Copy(out, content)
	return err
}

// remove lets go of the temporary file, if there is one.
func (s *spool) remove() {
	_ = s.deflate.Close() // it may still write
	if s.file != nil {
		s.file.Close()
		if s.named {
			os.Remove(s.file.Name())
		}
		s.file = nil
	}
}
