package spool

import (
	"bufio"
	"encoding/binary"
	"io"
)

// A spool can be kept in a file, and its rows be added to another spool later:
// first the parts that the rows refer to, then the rows.

// KeptParts returns the parts that the rows refer to, encoded.
func (s *Spool) KeptParts() []byte {
	parts := s.parts.kept()
	e := encoder{}
	e.num(len(parts))
	for _, p := range parts {
		e.num(int(p.Kind))
		e.num(len(p.Terms))
		for i, term := range p.Terms {
			e.b = append(e.b, term)
			e.text(p.Values[i])
		}
		e.facts(&p.Facts)
	}
	return e.b
}

// KeepRows writes the rows to w.
func (s *Spool) KeepRows(w io.Writer) error {
	if err := s.w.Flush(); err != nil {
		return err
	}
	_, err := io.Copy(w, io.NewSectionReader(s.file, 0, s.size))
	return err
}

// At is where a row begins, in bytes from the first; Rows is how many stand
// before it.
func (m Mark) At() (at int64, rows int) { return m.size, m.rows }

// Kept is the rows of a spool that was kept, on their way into another one.
type Kept struct {
	rows  *io.SectionReader
	into  *Spool
	parts []*Part // by the id that they had
	row   Row
	buf   []byte
}

// OpenKept begins to add kept rows to the spool, with the parts that they refer
// to.
func (s *Spool) OpenKept(parts []byte, rows *io.SectionReader) (*Kept, error) {
	k := &Kept{rows: rows, into: s}
	d := decoder{s: string(parts)}
	for range d.size() {
		p := &Part{Kind: Kind(d.num())}
		if int(p.Kind) >= Kinds {
			return nil, errSpool
		}
		for range d.size() {
			term := d.byte()
			if int(term) >= numTerms {
				return nil, errSpool
			}
			p.Terms, p.Values = append(p.Terms, term), append(p.Values, d.text())
			p.set.Add(int(term))
		}
		d.facts(&p.Facts)
		s.parts.Keep(p)
		k.parts = append(k.parts, p)
	}
	if d.bad || d.at != len(d.s) {
		return nil, errSpool
	}
	return k, nil
}

// Add adds the n rows from a place on to the spool. Their sheets are numbered
// from first, and get the numbers from sheet on; there are so many sheets.
func (k *Kept) Add(at int64, n, first, sheet, sheets int) error {
	if at < 0 || at > k.rows.Size() {
		return errSpool
	}
	r := bufio.NewReaderSize(io.NewSectionReader(k.rows, at, k.rows.Size()-at), bufferSize)
	for range n {
		size, err := binary.ReadUvarint(r)
		if err != nil || size > uint64(k.rows.Size()) {
			return errSpool
		}
		if uint64(cap(k.buf)) < size {
			k.buf = make([]byte, size)
		}
		k.buf = k.buf[:size]
		if _, err := io.ReadFull(r, k.buf); err != nil {
			return errSpool
		}
		clear(k.row.Records[:cap(k.row.Records)])
		d := decoder{s: string(k.buf), parts: k.parts}
		if err := d.row(&k.row); err != nil {
			return err
		}
		if k.row.Sheet < first || k.row.Sheet >= first+sheets {
			return errSpool
		}
		k.row.Sheet += sheet - first
		k.buf = Encode(k.buf[:0], &k.row)
		if err := k.into.Append(k.buf); err != nil {
			return err
		}
	}
	return nil
}
