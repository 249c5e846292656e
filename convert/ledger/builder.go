package ledger

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
)

// Builder puts a ledger together from lines in any order. Beyond some thousands
// they wait in a temporary file, sorted piece by piece, so that a ledger of
// millions of lines takes no more memory than one of a season.
type Builder struct {
	folder string // of the temporary file
	lines  []Line // that are in no piece yet
	file   *os.File
	ends   []int64 // of the pieces
	err    error   // the first of writing them
}

// pieceLines is how many lines are sorted at once.
const pieceLines = 1 << 14

// NewBuilder returns an empty builder, which may keep a temporary file in the
// folder until Close is called.
func NewBuilder(folder string) *Builder { return &Builder{folder: folder} }

// Add adds a line. An error is told of by Write.
func (b *Builder) Add(l Line) {
	if b.lines = append(b.lines, l); len(b.lines) >= pieceLines && b.err == nil {
		b.err = b.spill()
	}
}

// spill writes the lines at hand as a piece of the file.
func (b *Builder) spill() error {
	if b.file == nil {
		file, err := os.CreateTemp(b.folder, "ledger-")
		if err != nil {
			return err
		}
		b.file = file
	}
	slices.SortFunc(b.lines, order)
	w := bufio.NewWriterSize(b.file, 1<<16)
	for i := range b.lines {
		b.lines[i].write(w)
	}
	if err := w.Flush(); err != nil {
		return err
	}
	end, err := b.file.Seek(0, io.SeekCurrent)
	b.ends = append(b.ends, end)
	clear(b.lines)
	b.lines = b.lines[:0]
	return err
}

// Write writes the ledger, sorted by id: all lines added.
func (b *Builder) Write(to io.Writer) error {
	if b.err != nil {
		return b.err
	}
	slices.SortFunc(b.lines, order)
	pieces := make([]*piece, 0, len(b.ends)+1)
	start := int64(0)
	for _, end := range b.ends {
		pieces = append(pieces, &piece{r: bufio.NewReaderSize(io.NewSectionReader(b.file, start, end-start), 1<<13)})
		start = end
	}
	pieces = append(pieces, &piece{lines: b.lines})
	for _, p := range pieces {
		if err := p.next(); err != nil {
			return err
		}
	}
	w := bufio.NewWriter(to)
	fmt.Fprintln(w, heading)
	pieces = slices.DeleteFunc(pieces, func(p *piece) bool { return p.done })
	slices.SortStableFunc(pieces, byNext)
	for len(pieces) > 0 {
		p := pieces[0]
		p.line.write(w)
		if err := p.next(); err != nil {
			return err
		}
		pieces = pieces[1:]
		if !p.done { // to its new place among the others, which are sorted
			at, _ := slices.BinarySearchFunc(pieces, p, byNext)
			pieces = slices.Insert(pieces, at, p)
		}
	}
	return w.Flush()
}

// Close gives the temporary file up.
func (b *Builder) Close() {
	if b.file != nil {
		b.file.Close()
		os.Remove(b.file.Name())
	}
	*b = Builder{}
}

// piece is a list of sorted lines, in memory or in the file, and the next of
// them.
type piece struct {
	lines []Line
	r     *bufio.Reader
	line  Line
	done  bool
}

func byNext(a, b *piece) int { return order(a.line, b.line) }

func (p *piece) next() error {
	if p.r == nil {
		if p.done = len(p.lines) == 0; !p.done {
			p.line, p.lines = p.lines[0], p.lines[1:]
		}
		return nil
	}
	text, err := p.r.ReadString('\n')
	if errors.Is(err, io.EOF) {
		p.done = true
		return nil
	}
	if err != nil {
		return err
	}
	line, ok := parse(strings.TrimSuffix(text, "\n"))
	if !ok {
		return errors.New("a temporary file could not be read back")
	}
	p.line = line
	return nil
}
