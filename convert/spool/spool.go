package spool

import (
	"bufio"
	"encoding/binary"
	"io"
	"os"
)

// Spool is a sequence of rows in a temporary file.
type Spool struct {
	file *os.File
	w    *bufio.Writer
	enc  encoder
	size int64 // bytes appended
	rows int
	// parts are what the rows refer to.
	parts Parts
}

const bufferSize = 1 << 18

// New makes an empty spool in the folder. Close removes its file.
func New(folder string) (*Spool, error) {
	file, err := os.CreateTemp(folder, "rows-")
	if err != nil {
		return nil, err
	}
	return &Spool{file: file, w: bufio.NewWriterSize(file, bufferSize)}, nil
}

// Encode returns the row in the spool's encoding, appended to b. It may be
// called from several goroutines; Append then adds the result.
func Encode(b []byte, r *Row) []byte {
	e := encoder{b}
	e.row(r)
	return e.b
}

// Append adds an encoded row at the end.
func (s *Spool) Append(encoded []byte) error {
	head := binary.AppendUvarint(s.enc.b[:0], uint64(len(encoded)))
	s.enc.b = head
	if _, err := s.w.Write(head); err != nil {
		return err
	}
	_, err := s.w.Write(encoded)
	s.size += int64(len(head) + len(encoded))
	s.rows++
	return err
}

// Mark is a place in the spool to go back to.
type Mark struct {
	size int64
	rows int
}

// Mark returns the present end.
func (s *Spool) Mark() Mark { return Mark{s.size, s.rows} }

// Rewind drops everything appended since the mark.
func (s *Spool) Rewind(m Mark) error {
	if err := s.w.Flush(); err != nil {
		return err
	}
	if err := s.file.Truncate(m.size); err != nil {
		return err
	}
	if _, err := s.file.Seek(m.size, io.SeekStart); err != nil {
		return err
	}
	s.size, s.rows = m.size, m.rows
	return nil
}

// Size returns where the next row will begin, for At.
func (s *Spool) Size() int64 { return s.size }

// At returns the encoded row that begins at a place.
func (s *Spool) At(place int64) ([]byte, error) {
	if err := s.w.Flush(); err != nil {
		return nil, err
	}
	var head [binary.MaxVarintLen64]byte
	n, err := s.file.ReadAt(head[:], place)
	if err != nil && err != io.EOF {
		return nil, err
	}
	length, size := binary.Uvarint(head[:n])
	if size <= 0 || length > uint64(s.size) {
		return nil, errSpool
	}
	b := make([]byte, length)
	if _, err := s.file.ReadAt(b, place+int64(size)); err != nil {
		return nil, errSpool
	}
	return b, nil
}

// Parts returns the parts that the spool's rows may refer to.
func (s *Spool) Parts() *Parts { return &s.parts }

// Rows returns how many rows the spool holds.
func (s *Spool) Rows() int { return s.rows }

// Each yields every encoded row in order. The bytes are valid only during
// the call; Decode turns them into a Row.
func (s *Spool) Each(fn func(encoded []byte) error) error {
	if err := s.w.Flush(); err != nil {
		return err
	}
	r := bufio.NewReaderSize(io.NewSectionReader(s.file, 0, s.size), bufferSize)
	var b []byte
	for range s.rows {
		n, err := binary.ReadUvarint(r)
		if err != nil {
			return errSpool
		}
		if n > uint64(s.size) {
			return errSpool
		}
		if uint64(cap(b)) < n {
			b = make([]byte, n)
		}
		b = b[:n]
		if _, err := io.ReadFull(r, b); err != nil {
			return errSpool
		}
		if err := fn(b); err != nil {
			return err
		}
	}
	return nil
}

// Decode reads an encoded row into r, whose slices are used again. Parts are
// those that were kept before the row was encoded; nil for none.
func Decode(encoded []byte, r *Row, parts *Parts) error {
	clear(r.Records[:cap(r.Records)])
	d := decoder{s: string(encoded), parts: parts.kept()}
	return d.row(r)
}

// Close removes the spool.
func (s *Spool) Close() error {
	err := s.file.Close()
	if removed := os.Remove(s.file.Name()); err == nil {
		err = removed
	}
	return err
}
