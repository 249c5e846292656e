package notebook

import (
	"bufio"
	"encoding/binary"
	"io"
	"math"
)

// Kinds of records, by their names in [MS-XLS] section 2.3.
const (
	xlsFormula    = 0x0006
	xlsEOF        = 0x000A
	xlsNote       = 0x001C
	xlsDate1904   = 0x0022
	xlsFilePass   = 0x002F
	xlsFont       = 0x0031
	xlsContinue   = 0x003C
	xlsCodePage   = 0x0042
	xlsObj        = 0x005D
	xlsColInfo    = 0x007D
	xlsBoundSheet = 0x0085
	xlsMulRk      = 0x00BD
	xlsRString    = 0x00D6
	xlsXF         = 0x00E0
	xlsMergeCells = 0x00E5
	xlsSST        = 0x00FC
	xlsLabelSST   = 0x00FD
	xlsTxO        = 0x01B6
	xlsNumber     = 0x0203
	xlsLabel      = 0x0204
	xlsBoolErr    = 0x0205
	xlsString     = 0x0207
	xlsRow        = 0x0208
	xlsRK         = 0x027E
	xlsFormat     = 0x041E
	xlsBOF        = 0x0809
)

// xlsRecord is one record; its data are valid until the next is read.
type xlsRecord struct {
	kind int
	data []byte
	next int64 // where the record after it begins
}

// xlsStream gives out the records of a workbook. Reading on from where the
// last ended costs no new look into the file.
type xlsStream struct {
	body *spool
	r    *bufio.Reader
	at   int64
	data []byte
}

func newXLSStream(body *spool) *xlsStream { return &xlsStream{body: body, at: -1} }

// record returns the record that begins at an offset. The end of the stream
// is io.ErrUnexpectedEOF: every part of it ends with a record that says so.
func (s *xlsStream) record(at int64) (xlsRecord, error) {
	if at != s.at {
		if ahead := at - s.at; s.at >= 0 && ahead > 0 && ahead <= int64(s.r.Buffered()) {
			if _, err := s.r.Discard(int(ahead)); err != nil {
				return xlsRecord{}, unexpected(err)
			}
		} else {
			s.r = bufio.NewReaderSize(s.body.from(at), 64<<10)
		}
		s.at = at
	}
	var head [4]byte
	if _, err := io.ReadFull(s.r, head[:]); err != nil {
		s.at = -1
		return xlsRecord{}, unexpected(err)
	}
	n := int(binary.LittleEndian.Uint16(head[2:]))
	if cap(s.data) < n {
		s.data = make([]byte, n, 1<<16)
	}
	s.data = s.data[:n]
	if _, err := io.ReadFull(s.r, s.data); err != nil {
		s.at = -1
		return xlsRecord{}, unexpected(err)
	}
	s.at = at + 4 + int64(n)
	return xlsRecord{kind: int(binary.LittleEndian.Uint16(head[:])), data: s.data, next: s.at}, nil
}

// reader returns another reader of the same stream, for a walk of its own.
func (s *xlsStream) reader() *xlsStream { return newXLSStream(s.body) }

// fields takes the fields of a record one after the other. What lies beyond
// its end reads as zero, and short says so.
type fields struct {
	data  []byte
	short bool
}

func (f *fields) take(n int) []byte {
	if n > len(f.data) {
		f.short, f.data = true, nil
		return make([]byte, n)
	}
	b := f.data[:n]
	f.data = f.data[n:]
	return b
}

func (f *fields) skip(n int)      { f.take(n) }
func (f *fields) uint8() byte     { return f.take(1)[0] }
func (f *fields) uint16() int     { return int(binary.LittleEndian.Uint16(f.take(2))) }
func (f *fields) uint32() uint32  { return binary.LittleEndian.Uint32(f.take(4)) }
func (f *fields) float() float64  { return math.Float64frombits(binary.LittleEndian.Uint64(f.take(8))) }
func (f *fields) packed() float64 { return unpackRK(f.uint32()) }

// unpackRK reads a number packed into four bytes: the upper 30 bits of a
// floating-point number or a whole number, in hundredths where bit 0 says so.
// Source: [MS-XLS] section 2.5.217 (RkNumber).
func unpackRK(rk uint32) float64 {
	var v float64
	if rk&2 != 0 {
		v = float64(int32(rk) >> 2)
	} else {
		v = math.Float64frombits(uint64(rk&^3) << 32)
	}
	if rk&1 != 0 {
		v /= 100
	}
	return v
}
