package notebook

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// survey reads what stands before and after a sheet's rows, and its comments:
// which columns are hidden and which areas merged must be known before the
// first row is given out.
func (s *xlsxSheet) survey(name string) error {
	if err := s.edges(); err != nil {
		return err
	}
	slices.SortStableFunc(s.merges, func(a, b area) int { return a.top - b.top })
	return s.readComments(name)
}

func (s *xlsxSheet) edges() error {
	p, err := openPart(s.file, s.book.limits, s.book.ctx.Err)
	if err != nil {
		return err
	}
	defer p.Close()
	return elements(p, s.book.limits.CellBytes, func(m *markup) (err error) {
		switch string(m.name) {
		case "col":
			s.column(m)
		case "sheetData":
			if !m.closing {
				s.some, err = m.passRows()
			}
		case "mergeCell":
			if ref, ok := attribute(m.attrs, "ref"); ok {
				if a, ok := parseArea(ref, s.book.limits); ok {
					s.merges = append(s.merges, a)
					if len(s.merges) > s.book.limits.Merges {
						return tooMerged(s.book.limits)
					}
				}
			}
		}
		return err
	})
}

func tooMerged(l Limits) error {
	return &Problem{
		Found:  fmt.Sprintf("it has more than %d merged areas", l.Merges),
		Advice: raise("merges", "unmerge them in a spreadsheet program"),
	}
}

func (s *xlsxSheet) column(m *markup) {
	hidden := false
	first, last := 0, 0
	for key, v := range attributes(m.attrs) {
		switch string(key) {
		case "min":
			first, _ = strconv.Atoi(string(v))
		case "max":
			last, _ = strconv.Atoi(string(v))
		case "hidden":
			hidden = hidden || isTrue(v)
		case "width":
			w, err := strconv.ParseFloat(string(v), 64)
			hidden = hidden || err == nil && w == 0
		}
	}
	if !hidden || first < 1 {
		return
	}
	for c := first; c <= min(last, s.book.limits.Columns); c++ {
		if n := len(s.hiddenColumns); n == 0 || s.hiddenColumns[n-1] < c {
			s.hiddenColumns = append(s.hiddenColumns, c)
		}
	}
}

// passRows moves to the end of the element "sheetData" whose start tag was
// just given, and looks at its rows only to see whether there is anything in
// them.
func (m *markup) passRows() (some bool, err error) {
	mark := []byte("sheetData>")
	for {
		b := m.buf[m.pos:m.end]
		i := bytes.Index(b, mark)
		if i >= 0 {
			b = b[:i]
		}
		// A value, a text or a formula, with or without a prefix.
		for _, tag := range []string{"<v", "<is", "<f", ":v", ":is", ":f"} {
			some = some || bytes.Contains(b, []byte(tag))
		}
		if i >= 0 {
			m.pos += i + len(mark)
			m.depth--
			return some, nil
		}
		m.pos = max(m.pos, m.end-len(mark)+1)
		if ok, err := m.fill(); err != nil {
			return some, err
		} else if !ok {
			return some, io.ErrUnexpectedEOF
		}
	}
}

// area is a merged area; all four from 1.
type area struct{ left, top, right, bottom int }

func parseArea(ref []byte, l Limits) (a area, ok bool) {
	from, to, found := bytes.Cut(ref, []byte(":"))
	if !found {
		return a, false
	}
	a.left, a.top = parseRef(from)
	a.right, a.bottom = parseRef(to)
	if a.left > a.right {
		a.left, a.right = a.right, a.left
	}
	if a.top > a.bottom {
		a.top, a.bottom = a.bottom, a.top
	}
	a.right, a.bottom = min(a.right, l.Columns), min(a.bottom, l.Rows)
	return a, a.left > 0 && a.top > 0 && a.left <= a.right && a.top <= a.bottom
}

// parseRef reads an address such as B7 or $B$7; zeros where it is none.
func parseRef(b []byte) (col, row int) {
	i := 0
	for ; i < len(b); i++ {
		c := b[i] &^ 0x20
		if c < 'A' || c > 'Z' {
			if b[i] == '$' {
				continue
			}
			break
		}
		if col = col*26 + int(c-'A'+1); col > 1<<24 {
			return 0, 0
		}
	}
	digits := i
	for ; i < len(b); i++ {
		if b[i] < '0' || b[i] > '9' || row > 1<<28 {
			return 0, 0
		}
		row = row*10 + int(b[i]-'0')
	}
	if digits == i {
		return 0, 0
	}
	return col, row
}

// readComments reads the sheet's notes and threads of comments.
func (s *xlsxSheet) readComments(name string) error {
	rels, err := s.book.relations(name)
	if err != nil {
		return err
	}
	s.comments = map[Ref]string{}
	for _, r := range rels {
		s.drawing = s.drawing || r.kind == "drawing"
		if r.kind == "comments" {
			if err := s.eachComment(r.target, "comment", s.addNote); err != nil {
				return err
			}
		}
	}
	// A thread also leaves a note behind for older programs, whose text
	// begins with an explanation; the thread itself takes its place.
	threads := map[Ref]string{}
	for _, r := range rels {
		if r.kind == "threadedComment" {
			err := s.eachComment(r.target, "threadedComment", func(ref Ref, text string) {
				threads[ref] = joinLines(threads[ref], text)
			})
			if err != nil {
				return err
			}
		}
	}
	for ref, text := range threads {
		s.comments[ref] = text
	}
	for ref := range s.comments {
		s.commentRows = append(s.commentRows, ref)
	}
	s.some = s.some || len(s.comments) > 0
	slices.SortFunc(s.commentRows, Ref.compare)
	return nil
}

func (s *xlsxSheet) addNote(ref Ref, text string) {
	// The explanation is written by spreadsheet programs in every language,
	// always in square brackets, with the text after the last label.
	if strings.HasPrefix(text, "[") {
		if _, after, ok := strings.Cut(text, "Comment:\n"); ok && strings.Contains(text, "hreaded") {
			text = after
		}
	}
	s.comments[ref] = joinLines(s.comments[ref], text)
}

func joinLines(a, b string) string {
	b = strings.TrimSpace(b)
	if a == "" || b == "" {
		return a + b
	}
	return a + "\n" + b
}

// commentBytes bounds a sheet's comments, which are kept in memory.
const commentBytes = 64 << 20

func (s *xlsxSheet) eachComment(part, element string, add func(Ref, string)) error {
	f := s.book.parts[strings.ToLower(part)]
	if f == nil {
		return nil
	}
	p, err := openPart(f, s.book.limits, s.book.ctx.Err)
	if err != nil {
		return err
	}
	defer p.Close()
	m, err := openMarkup(p, s.book.limits.CellBytes)
	if err != nil {
		return err
	}
	for total := 0; ; {
		t, err := m.next()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
		if t != startTag || string(m.name) != element {
			continue
		}
		at, _ := attribute(m.attrs, "ref")
		col, row := parseRef(at)
		text, err := commentText(m, s.book.limits.CellBytes)
		if err != nil {
			return err
		}
		if col < 1 || row < 1 || col > s.book.limits.Columns || row > s.book.limits.Rows {
			continue
		}
		if total += len(text) + 16; total > commentBytes {
			return errNoLimit
		}
		add(Ref{Col: col, Row: row}, text)
	}
}

// commentText reads the "text" of a note or of a comment of a thread.
func commentText(m *markup, limit int) (string, error) {
	if m.closing {
		return "", m.skip()
	}
	var b []byte
	for depth := m.depth; m.depth >= depth; {
		t, err := m.next()
		if err != nil {
			return "", unexpected(err)
		}
		if t != startTag || string(m.name) != "text" {
			continue
		}
		inside, plain := m.depth, true
		for m.depth >= inside {
			t, err := m.next()
			if err != nil {
				return "", unexpected(err)
			}
			switch {
			case t == startTag && string(m.name) == "rPh":
				if err := m.skip(); err != nil {
					return "", err
				}
			case t == startTag && (string(m.name) == "r" || string(m.name) == "t"):
				plain = plain && string(m.name) != "r"
			case t == textRun && (len(bytes.TrimSpace(m.text)) > 0 || !plain || len(b) > 0):
				b = append(b, m.text...)
			}
			if len(b) > limit {
				return "", errTooBig
			}
		}
	}
	if bytes.Contains(b, []byte("_x")) {
		b = appendControl(b[:0], b)
	}
	return validText(b), nil
}
