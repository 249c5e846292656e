package notebook

import (
	"bytes"
	"encoding/binary"
	"encoding/xml"
	"fmt"
	"unicode"
	"unicode/utf16"
)

// xlsLook is how the cells of a workbook look, as far as it bears on what they
// say: number formats, and what is struck through.
type xlsLook struct {
	fonts   []bool // whether struck through
	formats []xlsFormatCode
	cells   []xlsCellLook
}

type xlsFormatCode struct {
	id   int
	code string
}

type xlsCellLook struct{ font, format int }

// font returns a font's place in the list: no font has the number 4.
// Source: [MS-XLS] section 2.5.129 (FontIndex).
func (l *xlsLook) font(n int) int {
	if n > 4 {
		return n - 1
	}
	return n
}

func (l *xlsLook) struck(font int) bool {
	n := l.font(font)
	return n < len(l.fonts) && l.fonts[n]
}

// strikes tells which kinds of text there are in a text with runs, each of
// them the unit at which it begins and its font.
func (l *xlsLook) strikes(units []uint16, runs []byte) (k strike) {
	if len(runs) < 4 {
		return 0
	}
	note := func(from, to int, kind strike) {
		for _, u := range units[min(from, len(units)):min(max(from, to), len(units))] {
			if !unicode.IsSpace(rune(u)) {
				k |= kind
				return
			}
		}
	}
	kind, from := styledText, 0
	for ; len(runs) >= 4; runs = runs[4:] {
		at := int(binary.LittleEndian.Uint16(runs))
		note(from, at, kind)
		kind, from = plainText, at
		if l.struck(int(binary.LittleEndian.Uint16(runs[2:]))) {
			kind = struckText
		}
	}
	note(from, len(units), kind)
	if k == styledText {
		return 0
	}
	return k
}

// narrowStrikes is strikes for a text from before Unicode, whose runs have their
// beginning and font in one byte each.
func (l *xlsLook) narrowStrikes(text string, runs []byte) strike {
	var wide []byte
	for _, b := range runs {
		wide = append(wide, b, 0)
	}
	return l.strikes(utf16.Encode([]rune(text)), wide)
}

// styles writes the looks as the part of an .xlsx workbook that holds them, so
// that numbers of both kinds are shown by the same means.
func (l *xlsLook) styles() []byte {
	var b bytes.Buffer
	b.WriteString(`<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">`)
	fmt.Fprintf(&b, `<numFmts count="%d">`, len(l.formats))
	for _, f := range l.formats {
		fmt.Fprintf(&b, `<numFmt numFmtId="%d" formatCode="`, f.id)
		xml.EscapeText(&b, []byte(f.code)) // a buffer takes everything
		b.WriteString(`"/>`)
	}
	fmt.Fprintf(&b, `</numFmts><fonts count="%d">`, len(l.fonts))
	for _, struck := range l.fonts {
		if struck {
			b.WriteString(`<font><strike/></font>`)
		} else {
			b.WriteString(`<font/>`)
		}
	}
	b.WriteString(`</fonts><fills count="1"><fill/></fills><borders count="1"><border/></borders>`)
	fmt.Fprintf(&b, `<cellXfs count="%d">`, len(l.cells))
	for _, c := range l.cells {
		fmt.Fprintf(&b, `<xf numFmtId="%d" fontId="%d" fillId="0" borderId="0"/>`, c.format, l.font(c.font))
	}
	b.WriteString(`</cellXfs></styleSheet>`)
	return b.Bytes()
}
