package notebook

import (
	"slices"
	"strings"
)

// Kinds of objects on a sheet, [MS-XLS] section 2.5.143 (FtCmo), that are no
// pictures: the list that a filter drops down, and the box of a comment.
const (
	xlsDropDown   = 0x14
	xlsCommentBox = 0x19
)

// xlsComments puts a sheet's comments together: the text of each stands with
// the box that shows it, and a record of the cell names the box.
type xlsComments struct {
	sheet   *xlsSheet
	object  int            // the number of the last object
	texts   map[int]string // by the number of the object
	waiting map[Ref]int    // the object that shows a cell's comment
	last    Ref
	bytes   int
}

func (c *xlsComments) take(r xlsRecord) error {
	d := fields{data: r.data}
	switch {
	case r.kind == xlsObj:
		d.skip(4)
		kind := d.uint16()
		c.object = d.uint16()
		c.sheet.drawing = c.sheet.drawing || kind != xlsDropDown && kind != xlsCommentBox
	case r.kind == xlsTxO && c.sheet.book.wide:
		d.skip(10)
		n := d.uint16()
		j := &xlsJoined{stream: c.sheet.book.stream, next: r.next}
		c.texts[c.object] = validText(appendUTF16(nil, j.characters(n, false)))
		c.bytes += len(c.texts[c.object]) + 16
	case r.kind == xlsNote:
		row, col := d.uint16(), d.uint16()
		if c.sheet.book.wide {
			d.skip(2)
			c.waiting[Ref{Col: col + 1, Row: row + 1}] = d.uint16()
			return nil
		}
		// A long comment goes on in records that name no cell.
		n := d.uint16()
		if row != 0xffff {
			c.last = Ref{Col: col + 1, Row: row + 1}
		}
		text := c.sheet.book.narrow(d.take(min(n, len(d.data))))
		c.sheet.comments[c.last] += text
		c.bytes += len(text) + 16
	}
	if c.bytes > commentBytes {
		return errTooBig
	}
	return nil
}

// settle gives every cell its comment.
func (c *xlsComments) settle() {
	s := c.sheet
	for ref, object := range c.waiting {
		s.comments[ref] = strings.TrimSpace(c.texts[object])
	}
	for ref, text := range s.comments {
		if text == "" || ref.Col < 1 || ref.Row < 1 || ref.Col > s.book.limits.Columns || ref.Row > s.book.limits.Rows {
			delete(s.comments, ref)
			continue
		}
		s.commentRefs = append(s.commentRefs, ref)
	}
	slices.SortFunc(s.commentRefs, Ref.compare)
}
