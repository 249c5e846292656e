package notebook

import (
	"bytes"
	"encoding/binary"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/htmlindex"
)

// codePage returns the encoding of a workbook from before Unicode; Windows'
// Western European where the number says nothing known.
func codePage(n int) encoding.Encoding {
	name, ok := map[int]string{
		874: "windows-874", 932: "shift_jis", 936: "gbk", 949: "euc-kr", 950: "big5",
		1250: "windows-1250", 1251: "windows-1251", 1253: "windows-1253", 1254: "windows-1254",
		1255: "windows-1255", 1256: "windows-1256", 1257: "windows-1257", 1258: "windows-1258",
		10000: "macintosh", 32768: "macintosh",
	}[n]
	switch {
	case n == 437:
		return charmap.CodePage437
	case n == 850:
		return charmap.CodePage850
	case ok:
		if e, err := htmlindex.Get(name); err == nil {
			return e
		}
	}
	return charmap.Windows1252
}

// text takes a text whose length stands before it in one byte, or in two where
// it may be long.
func (b *xlsBook) text(d *fields, long bool) string {
	n := 0
	if long {
		n = d.uint16()
	} else {
		n = int(d.uint8())
	}
	if !b.wide {
		return b.narrow(d.take(min(n, len(d.data))))
	}
	wide := d.uint8()&1 != 0
	units := appendUnits(nil, d, n, wide)
	d.short = d.short || len(units) < n
	return validText(appendUTF16(nil, units))
}

// narrow reads a text from before Unicode.
func (b *xlsBook) narrow(raw []byte) string {
	text, err := b.page.NewDecoder().Bytes(raw)
	if err != nil {
		text = raw
	}
	return validText(bytes.TrimRight(text, "\x00"))
}

// appendUnits takes up to n units of UTF-16, whose upper byte is left out
// where they are not wide.
func appendUnits(dst []uint16, d *fields, n int, wide bool) []uint16 {
	if !wide {
		for _, c := range d.take(min(n, len(d.data))) {
			dst = append(dst, uint16(c))
		}
		return dst
	}
	b := d.take(2 * min(n, len(d.data)/2))
	for i := 0; i < len(b); i += 2 {
		dst = append(dst, binary.LittleEndian.Uint16(b[i:]))
	}
	return dst
}

func appendUTF16(dst []byte, units []uint16) []byte {
	for i := 0; i < len(units); i++ {
		r := rune(units[i])
		if utf16.IsSurrogate(r) && i+1 < len(units) {
			if pair := utf16.DecodeRune(r, rune(units[i+1])); pair != utf8.RuneError {
				r = pair
				i++
			}
		}
		dst = utf8.AppendRune(dst, r)
	}
	return dst
}

// xlsJoined reads a record together with those that continue it.
type xlsJoined struct {
	fields
	stream *xlsStream
	next   int64
	units  []uint16
	ended  bool // there is no more, and more was asked for
}

// more goes on to the record that continues this one.
func (j *xlsJoined) more() bool {
	r, err := j.stream.record(j.next)
	if err != nil || r.kind != xlsContinue {
		j.ended = true
		return false
	}
	j.data, j.next = r.data, r.next
	return true
}

// whole takes n bytes, wherever records end between them.
func (j *xlsJoined) whole(n int, each func([]byte)) {
	for n > 0 {
		if len(j.data) == 0 && !j.more() {
			return
		}
		b := j.take(min(n, len(j.data)))
		if each != nil {
			each(b)
		}
		n -= len(b)
	}
}

// number takes a number of some bytes, the lowest first.
func (j *xlsJoined) number(n int) (v int) {
	shift := 0
	j.whole(n, func(b []byte) {
		for _, c := range b {
			v |= int(c) << shift
			shift += 8
		}
	})
	return v
}

// characters takes n units of UTF-16. Each record that continues a text says
// anew how its characters are kept.
func (j *xlsJoined) characters(n int, wide bool) []uint16 {
	j.units = j.units[:0]
	for len(j.units) < n {
		if len(j.data) == 0 {
			if !j.more() {
				break
			}
			wide = j.uint8()&1 != 0
		}
		before := len(j.units)
		if j.units = appendUnits(j.units, &j.fields, n-len(j.units), wide); len(j.units) == before {
			j.ended = true
			break
		}
	}
	return j.units
}

// readTexts reads the workbook's table of texts, [MS-XLS] sections 2.4.265
// (SST) and 2.5.293 (XLUnicodeRichExtendedString).
func (b *xlsBook) readTexts(r xlsRecord, temp string) (*sharedStrings, error) {
	j := &xlsJoined{fields: fields{data: r.data}, stream: b.stream, next: r.next}
	j.number(4) // how often they are used
	n := j.number(4)
	texts := newSharedStrings(b.limits, temp)
	var text []byte
	var runs []byte
	for i := 0; i < n && !j.ended; i++ {
		if i%1024 == 0 && b.ctx.Err() != nil {
			return texts, b.ctx.Err()
		}
		length, flags := j.number(2), j.number(1)
		formatted, extra := 0, 0
		if flags&8 != 0 {
			formatted = j.number(2)
		}
		if flags&4 != 0 {
			extra = j.number(4)
		}
		units := j.characters(length, flags&1 != 0)
		runs = runs[:0]
		j.whole(4*formatted, func(part []byte) { runs = append(runs, part...) })
		j.whole(extra, nil)
		if j.ended {
			break
		}
		text = appendUTF16(text[:0], units)
		if len(text) > b.limits.CellBytes {
			return texts, errTooBig
		}
		if k := b.look.strikes(units, runs); k != 0 {
			texts.strikes[i] = k
		}
		if err := texts.add(text); err != nil {
			return texts, err
		}
	}
	if j.ended {
		return texts, damagedXLS(nil)
	}
	return texts, texts.flush()
}
