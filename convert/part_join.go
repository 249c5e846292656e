package convert

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/spool"
)

// openPart is a part of a set that is being taken in.
type openPart struct {
	path string
	file *os.File
	head partHead
	rows *spool.Kept
}

// joinParts takes in parts of a set in place of notebooks. The notebooks stand
// in the order of their paths, as those of a folder do, whichever part they
// came in.
func joinParts(ctx context.Context, job Job, s *settings, paths []string, rows *spool.Spool) (*bookRuns, error) {
	settings, err := job.sumOf(s)
	if err != nil {
		return nil, err
	}
	progress := job.progress()
	progress.Stage("Joining", len(paths))
	type book struct {
		*partBook
		part  *openPart
		first int // sheet of the part
	}
	var books []book
	var parts []*openPart
	defer func() {
		for _, p := range parts {
			p.file.Close()
		}
	}()
	for _, path := range paths {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		p, err := newOpenPart(path, rows)
		if err != nil {
			return nil, err
		}
		parts = append(parts, p)
		if p.head.Settings != settings {
			return nil, partFault(path, "it was read by other lists, answers or settings, on another day or by another version than are used now", "Read it again with the same --project, --taxa, --answers and --today as here")
		}
		sheet := 0
		for i := range p.head.Books {
			b := &p.head.Books[i]
			books = append(books, book{b, p, sheet})
			sheet += len(b.Sheets)
		}
		for _, k := range p.head.Answered {
			s.answers.Ask(k)
		}
		progress.Step(1)
	}
	slices.SortStableFunc(books, func(a, b book) int {
		return cmp.Or(slices.Compare(steps(a.File), steps(b.File)), cmp.Compare(a.part.path, b.part.path))
	})
	slices.SortStableFunc(parts, func(a, b *openPart) int {
		return slices.Compare(a.firstSteps(), b.firstSteps())
	})
	all := &bookRuns{}
	for _, p := range parts {
		all.notes = append(all.notes, p.head.Notes...)
	}
	sums := map[string]string{}
	for i, b := range books {
		twin, known := sums[b.Sum]
		if known && b.Sum != "" || i > 0 && b.File != notebook.Stdin && filepath.Clean(b.File) == filepath.Clean(books[i-1].File) {
			return nil, partFault(b.part.path, fmt.Sprintf("%s is in it, which is the same as %s in another part", b.File, cmp.Or(twin, b.File)), "Read each notebook into one part only")
		}
		sums[b.Sum] = b.File
		run := &bookRun{file: b.File, notes: b.Notes}
		all.books = append(all.books, run)
		all.notes = append(all.notes, b.LeftOut...)
		first := len(all.sheets)
		for _, s := range b.Sheets {
			sr := &sheetRun{index: len(all.sheets), file: b.File, name: s.Name, cells: s.Cells, plan: keptPlan{s.Entries, s.Reading}}
			all.sheets = append(all.sheets, sr)
			run.sheets = append(run.sheets, sr)
		}
		if err := b.part.rows.Add(b.At, b.Rows, b.first, first, len(b.Sheets)); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// steps are the folders and the name of a path, in which folders are sorted.
func steps(path string) []string { return strings.Split(filepath.ToSlash(filepath.Clean(path)), "/") }

// firstSteps are those of the part's first notebook.
func (p *openPart) firstSteps() []string {
	var first []string
	for i := range p.head.Books {
		if s := steps(p.head.Books[i].File); i == 0 || slices.Compare(s, first) < 0 {
			first = s
		}
	}
	return first
}

// newOpenPart opens a part and sees to it that it is whole.
func newOpenPart(path string, rows *spool.Spool) (*openPart, error) {
	damaged := partFault(path, "the part is damaged or was cut off", "Read its notebooks again")
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	p := &openPart{path: path, file: f}
	if p.rows, err = p.open(rows); err != nil {
		f.Close()
		var pathError *os.PathError
		if errors.As(err, &pathError) {
			return nil, err
		}
		return nil, damaged
	}
	return p, nil
}

var errDamaged = errors.New("damaged")

func (p *openPart) open(rows *spool.Spool) (*spool.Kept, error) {
	info, err := p.file.Stat()
	if err != nil {
		return nil, err
	}
	head := int64(len(partMark) + 8)
	end := info.Size() - sha256.Size
	if end < head {
		return nil, errDamaged
	}
	sum := sha256.New()
	if _, err := io.Copy(sum, io.NewSectionReader(p.file, 0, end)); err != nil {
		return nil, err
	}
	want := make([]byte, sha256.Size)
	if _, err := p.file.ReadAt(want, end); err != nil {
		return nil, err
	}
	if string(want) != string(sum.Sum(nil)) {
		return nil, errDamaged
	}
	length := make([]byte, 8)
	if _, err := p.file.ReadAt(length, int64(len(partMark))); err != nil {
		return nil, err
	}
	size := binary.LittleEndian.Uint64(length)
	if size > uint64(end-head) {
		return nil, errDamaged
	}
	text := make([]byte, size)
	if _, err := p.file.ReadAt(text, head); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(text, &p.head); err != nil {
		return nil, err
	}
	at := head + int64(size)
	if p.head.Parts < 0 || int64(p.head.Parts) > end-at {
		return nil, errDamaged
	}
	parts := make([]byte, p.head.Parts)
	if _, err := p.file.ReadAt(parts, at); err != nil && len(parts) > 0 {
		return nil, err
	}
	at += int64(len(parts))
	return rows.OpenKept(parts, io.NewSectionReader(p.file, at, end-at))
}

// keptPlan says how a sheet of a part was read.
type keptPlan struct {
	entries []layout.Entry
	reading string
}

func (p keptPlan) Entries() []layout.Entry { return p.entries }

func (p keptPlan) Print(w io.Writer) { io.WriteString(w, p.reading) }

// Walk is never called: the rows of a part have been read.
func (p keptPlan) Walk(notebook.Sheet, func(*layout.Outcome) error) error {
	return errors.New("the rows of a part have been read already")
}

// Says is never called, likewise.
func (p keptPlan) Says(layout.Meaning) bool { return false }
