package notebook

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"

	"fieldfare/dwc"
)

// openArchive opens a Darwin Core Archive, a zip or a folder. Each of its
// tables is a sheet named by what its rows describe ("Occurrence"), whose
// first row holds the names of the terms.
//
// Where the core describes events, the occurrences of the extension say
// nothing of when and where; the terms of its event are put beside each.
func openArchive(ctx context.Context, src *source, o Options) (*Book, error) {
	a, err := dwc.OpenArchive(src.real, dwc.Limits{
		FileBytes: o.Limits.UnzippedBytes, RecordBytes: o.Limits.RowBytes, FieldBytes: o.Limits.CellBytes,
	})
	if err != nil {
		return nil, archiveTrouble(err)
	}
	book := &Book{closers: []func() error{a.Close}}
	for _, n := range a.Notes {
		book.addNote(n.String())
	}
	measures, err := readMeasures(a)
	if err != nil {
		return nil, errors.Join(archiveTrouble(err), book.Close())
	}
	found := a.Table(dwc.RowOccurrence) != nil
	for _, t := range a.Tables() {
		if found && t == a.Core && t.RowType() == dwc.RowEvent || found && t.RowType() == dwc.RowMeasurement {
			continue // read with the occurrences
		}
		s := newArchiveTable(ctx, src, t)
		if t.RowType() == dwc.RowOccurrence {
			s.measures = measures
		}
		if t != a.Core && a.Core.RowType() == dwc.RowEvent && t.RowType() == dwc.RowOccurrence {
			s.events, err = readEvents(ctx, s, a.Core, o)
			if s.events != nil {
				book.closers = append(book.closers, s.events.kept.close)
			}
			if err != nil {
				return nil, errors.Join(archiveTrouble(err), book.Close())
			}
			s.core = a.Core
			book.addNote("Each occurrence was read together with the event that it belongs to. Events without an occurrence stand after them.")
		}
		book.sheets = append(book.sheets, s)
	}
	return book, nil
}

// OfArchive tells whether a sheet is a table of a Darwin Core Archive.
func OfArchive(s Sheet) bool {
	_, is := s.(*archiveTable)
	return is
}

// archiveTrouble makes a Problem of what the archive reader says; its
// messages are whole sentences with their advice.
func archiveTrouble(err error) error {
	var e *dwc.ReadError
	if !errors.As(err, &e) {
		return err
	}
	message := strings.TrimSuffix(e.Message, ".")
	if e.Line > 0 {
		message = fmt.Sprintf("%s, line %d: %s", path.Base(e.File), e.Line, message)
	}
	return &Problem{Found: message, Cause: e}
}

// archiveTable is one table of an archive.
type archiveTable struct {
	src    *source
	ctx    context.Context
	table  *dwc.DataTable
	name   string
	heads  []string
	events *eventTable
	// core is the archive's core where the rows of this table belong to its
	// events; measures are those of the rows.
	core     *dwc.DataTable
	measures *measures
}

func newArchiveTable(ctx context.Context, src *source, t *dwc.DataTable) *archiveTable {
	s := &archiveTable{src: src, ctx: ctx, table: t, name: t.RowType()}
	if i := strings.LastIndexAny(s.name, "/#"); i >= 0 {
		s.name = s.name[i+1:]
	}
	for _, c := range t.Columns() {
		s.heads = append(s.heads, c.Term.Name)
	}
	return s
}

func (s *archiveTable) File() string         { return s.src.path }
func (s *archiveTable) Name() string         { return s.name }
func (s *archiveTable) Hidden() bool         { return false }
func (s *archiveTable) HiddenColumns() []int { return nil }

// Walk yields the names of the terms as row 1, then the table's rows.
func (s *archiveTable) Walk(fn func(*Row) error) error {
	stopped, err := s.walk(fn)
	return s.src.ended(s.name, stopped, archiveTrouble(err))
}

func (s *archiveTable) walk(fn func(*Row) error) (stopped, err error) {
	row := Row{Number: 1}
	for _, h := range s.heads {
		row.Cells = append(row.Cells, textCell(h))
	}
	if s.events != nil {
		for _, h := range s.events.heads {
			row.Cells = append(row.Cells, textCell(h))
		}
	}
	if s.measures != nil {
		for _, h := range s.measures.heads {
			row.Cells = append(row.Cells, textCell(h))
		}
	}
	if err := fn(&row); err != nil {
		return err, nil
	}
	seen := map[string]bool{} // events
	id := slices.Index(s.heads, "occurrenceID")
	columns := len(s.table.Columns())
	for r, err := range s.table.Rows() {
		if err != nil {
			return nil, err
		}
		if row.Number++; row.Number%4096 == 0 {
			if err := s.ctx.Err(); err != nil {
				return nil, err
			}
		}
		row.Cells = row.Cells[:0]
		for i := range columns {
			row.Cells = append(row.Cells, textCell(validText([]byte(r.Value(i)))))
		}
		row.Repaired = strings.TrimSuffix(strings.Join(r.Notes, " "), ".")
		if s.events != nil {
			var known bool
			if row.Cells, known, err = s.events.append(row.Cells, r.ID()); err != nil {
				return nil, err
			}
			if !known {
				row.Repaired = strings.TrimPrefix(row.Repaired+fmt.Sprintf("; its event %q is not in the archive", r.ID()), "; ")
			}
		}
		if s.core != nil {
			seen[r.ID()] = true
		}
		if s.measures != nil {
			record, event := r.ID(), ""
			if s.core != nil {
				event, record = record, ""
				if id >= 0 {
					record = r.Value(id)
				}
			}
			row.Cells = s.measures.append(row.Cells, record, event)
		}
		if err := fn(&row); err != nil {
			return err, nil
		}
	}
	if s.core == nil {
		return nil, nil
	}
	return s.visits(&row, seen, fn)
}

// eventTable holds the values of an archive's events by their ids. The values
// are kept in a spool, since there may be many.
type eventTable struct {
	heads   []string
	columns []int // of the core, for each of heads
	kept    *spool
	places  map[string]span
}

// readEvents reads the core's terms that the occurrences do not have.
func readEvents(ctx context.Context, s *archiveTable, core *dwc.DataTable, o Options) (*eventTable, error) {
	e := &eventTable{kept: &spool{temp: o.TempDir}, places: map[string]span{}}
	own := map[string]bool{}
	for _, h := range s.heads {
		own[h] = true
	}
	for i, c := range core.Columns() {
		if !own[c.Term.Name] {
			e.heads, e.columns = append(e.heads, c.Term.Name), append(e.columns, i)
		}
	}
	at := 0
	var b []byte
	for r, err := range core.Rows() {
		if err == nil {
			err = ctx.Err()
		}
		if err != nil {
			return e, err
		}
		b = b[:0]
		for _, i := range e.columns {
			v := validText([]byte(r.Value(i)))
			b = append(binary.AppendUvarint(b, uint64(len(v))), v...)
		}
		if _, err := e.kept.Write(b); err != nil {
			return e, err
		}
		if _, twice := e.places[r.ID()]; !twice && r.ID() != "" {
			e.places[r.ID()] = span{at, at + len(b)}
		}
		at += len(b)
	}
	return e, e.kept.flush()
}

// append adds the cells of the event with the id. Where there is no such
// event, only the id is known.
func (e *eventTable) append(cells []Cell, id string) (_ []Cell, known bool, err error) {
	place, ok := e.places[id]
	if !ok {
		for _, h := range e.heads {
			c := Cell{}
			if h == "eventID" {
				c = textCell(id)
			}
			cells = append(cells, c)
		}
		return cells, false, nil
	}
	b := make([]byte, place.to-place.from)
	if _, err := io.ReadFull(e.kept.from(int64(place.from)), b); err != nil {
		return nil, false, err
	}
	for range e.columns {
		n, size := binary.Uvarint(b)
		b = b[size:]
		cells = append(cells, textCell(string(b[:n])))
		b = b[n:]
	}
	return cells, true, nil
}
