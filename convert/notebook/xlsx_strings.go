package notebook

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"os"
	"strconv"
	"strings"
	"unicode/utf8"
)

// strike says which kinds of text a cell has, as to being struck through. A
// text without any leaves it to the cell's style.
type strike uint8

const (
	struckText strike = 1 << iota
	plainText
	styledText // as the cell's style has it
)

// resolve says whether all, or only some, of the text is struck through, given
// what the cell's style does.
func (k strike) resolve(style bool) (all, part bool) {
	if k&styledText != 0 || k == 0 {
		if style {
			k |= struckText
		} else {
			k |= plainText
		}
	}
	all = k&struckText != 0 && k&plainText == 0
	return all, !all && k&struckText != 0
}

// sharedStrings is a workbook's table of texts. Texts over the memory limit
// are kept in a temporary file.
type sharedStrings struct {
	texts   []string
	strikes map[int]strike // of the texts that say so themselves
	spill   *os.File
	offsets []int64 // of the texts in spill, with the end of the last

	limit int64
	kept  int64 // of it, so far
	temp  string
	w     *bufio.Writer // to spill
}

func newSharedStrings(l Limits, temp string) *sharedStrings {
	return &sharedStrings{strikes: map[int]strike{}, limit: l.StringBytes, temp: temp}
}

// add takes in the next text.
func (s *sharedStrings) add(text []byte) (err error) {
	if s.w == nil && s.kept <= s.limit {
		s.texts = append(s.texts, validText(text))
		s.kept += int64(len(text)) + 16
		return nil
	}
	if s.w == nil {
		if s.spill, err = os.CreateTemp(s.temp, "fieldfare-*"); err != nil {
			return err
		}
		s.w = bufio.NewWriterSize(s.spill, 256<<10)
		s.offsets = []int64{0}
	}
	n, err := s.w.Write(text)
	s.offsets = append(s.offsets, s.offsets[len(s.offsets)-1]+int64(n))
	return err
}

// len returns how many texts there are.
func (s *sharedStrings) len() int { return len(s.texts) + max(0, len(s.offsets)-1) }

// flush must be called after the last text.
func (s *sharedStrings) flush() error {
	if s.w == nil {
		return nil
	}
	return s.w.Flush()
}

// readSharedStrings reads the part that holds the texts.
func readSharedStrings(r io.Reader, l Limits, temp string) (*sharedStrings, error) {
	m, err := openMarkup(r, l.CellBytes)
	if err != nil {
		return nil, err
	}
	s := newSharedStrings(l, temp)
	text := make([]byte, 0, 64<<10)
	for {
		t, err := m.next()
		if err == io.EOF {
			return s, s.flush()
		}
		if err != nil {
			return s, err
		}
		if t != startTag || string(m.name) != "si" {
			continue
		}
		if text, err = appendRichText(text[:0], m, l.CellBytes, s.setStrike(s.len())); err != nil {
			return s, err
		}
		if err := s.add(text); err != nil {
			return s, err
		}
	}
}

func (s *sharedStrings) setStrike(i int) func(strike) {
	return func(k strike) { s.strikes[i] = k }
}

var errNoSuchString = errors.New("notebook: no such shared string")

// get returns text i.
func (s *sharedStrings) get(i int) (string, strike, error) {
	if s == nil || i < 0 {
		return "", 0, errNoSuchString
	}
	if i < len(s.texts) {
		return s.texts[i], s.strikes[i], nil
	}
	j := i - len(s.texts)
	if j >= len(s.offsets)-1 {
		return "", 0, errNoSuchString
	}
	b := make([]byte, s.offsets[j+1]-s.offsets[j])
	if _, err := s.spill.ReadAt(b, s.offsets[j]); err != nil {
		return "", 0, err
	}
	return validText(b), s.strikes[i], nil
}

func (s *sharedStrings) close() error {
	if s == nil || s.spill == nil {
		return nil
	}
	return errors.Join(s.spill.Close(), os.Remove(s.spill.Name()))
}

// appendRichText appends the text inside the element whose start tag was just
// given ("si" or "is"): its "t" elements, and those of its runs, but not the
// reading aids (rPh). struck is told what runs say about being struck through.
func appendRichText(dst []byte, m *markup, limit int, struck func(strike)) ([]byte, error) {
	from := len(dst)
	depth := m.depth
	run, seen := styledText, strike(0)
	for {
		t, err := m.next()
		if err != nil {
			return dst, unexpected(err)
		}
		if t == endTag && m.depth < depth {
			break
		}
		if t != startTag {
			continue
		}
		switch string(m.name) {
		case "rPh":
			if err := m.skip(); err != nil {
				return dst, err
			}
		case "r":
			run = styledText
		case "rPr":
			run = plainText // a run with a font of its own
		case "strike":
			if v, ok := attribute(m.attrs, "val"); !ok || isTrue(v) {
				run = struckText
			}
		case "t":
			at := len(dst)
			inside := m.depth
			for m.depth >= inside {
				t, err := m.next()
				if err != nil {
					return dst, unexpected(err)
				}
				if t == textRun {
					dst = append(dst, m.text...)
					if len(dst)-from > limit {
						return dst, errTooBig
					}
				}
			}
			if len(bytes.TrimSpace(dst[at:])) > 0 {
				seen |= run
			}
		}
	}
	if bytes.Contains(dst[from:], []byte("_x")) {
		dst = appendControl(dst[:from], dst[from:])
	}
	if seen&^styledText != 0 {
		struck(seen)
	}
	return dst, nil
}

func isTrue(v []byte) bool {
	switch string(v) {
	case "0", "false", "off":
		return false
	}
	return true
}

// appendControl appends text with its escaped characters resolved: _x000D_
// stands for the character with that code (ECMA-376 part 1, section 22.9.2.19).
// dst may share text's memory, since the result is never longer.
func appendControl(dst, text []byte) []byte {
	for i := 0; i < len(text); i++ {
		if text[i] == '_' && i+6 < len(text) && text[i+1] == 'x' && text[i+6] == '_' {
			if n, err := strconv.ParseUint(string(text[i+2:i+6]), 16, 16); err == nil && (n < 0xD800 || n > 0xDFFF) {
				dst = utf8.AppendRune(dst, rune(n))
				i += 6
				continue
			}
		}
		dst = append(dst, text[i])
	}
	return dst
}

// sharedIndex reads a shared string's index as a cell stores it.
func sharedIndex(v []byte) int {
	n, err := strconv.Atoi(strings.TrimSpace(string(v)))
	if err != nil {
		return -1
	}
	return n
}
