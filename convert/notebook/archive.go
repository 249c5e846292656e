package notebook

import (
	"context"
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"

	"fieldfare/dwc"
)

// openArchive opens a Darwin Core Archive, a zip or a folder. Each of its
// tables of occurrences is a sheet named by what its rows describe
// ("Occurrence"), whose first row holds the names of the terms.
//
// Where the core describes events or taxa, the occurrences of the extension
// say nothing of when, where or which; the terms of the core row are put
// beside each, and so are measurements. Whatever cannot stand beside an
// occurrence is on a sheet of its own that LeftOut knows.
func openArchive(ctx context.Context, src *source, o Options) (*Book, error) {
	a, err := dwc.OpenArchive(src.real, dwc.Limits{
		FileBytes: o.Limits.UnzippedBytes, RecordBytes: o.Limits.RowBytes, FieldBytes: o.Limits.CellBytes,
		Ratio: o.Limits.Ratio, Columns: o.Limits.Columns,
	})
	if err != nil {
		return nil, archiveTrouble(err)
	}
	book := &Book{closers: []func() error{a.Close}}
	for _, n := range a.Notes {
		book.addNote(n.String())
	}
	if err := book.addTables(ctx, src, a, o); err != nil {
		return nil, errors.Join(archiveTrouble(err), book.Close())
	}
	return book, nil
}

// addTables makes sheets of an archive's tables.
func (b *Book) addTables(ctx context.Context, src *source, a *dwc.Archive, o Options) error {
	isOccurrence := func(t *dwc.DataTable) bool { return t.RowType() == dwc.RowOccurrence }
	if !slices.ContainsFunc(a.Tables(), isOccurrence) {
		b.addTablesAlone(ctx, src, a)
		return nil
	}
	measures, err := readMeasures(ctx, a)
	if err != nil {
		return err
	}
	for _, t := range a.Tables() {
		if !isOccurrence(t) {
			continue
		}
		s := newArchiveTable(ctx, src, t)
		if s.measures = measures; t != a.Core {
			s.core, err = readCore(ctx, s, a.Core, o)
			if s.core != nil {
				b.closers = append(b.closers, s.core.kept.close)
			}
			if err != nil {
				return err
			}
			b.addNote("Each occurrence was read together with the row of the archive's core that it belongs to.")
		}
		b.sheets = append(b.sheets, s)
	}
	if err := visitsOnce(b.sheets); err != nil {
		return err
	}
	left, err := leftTables(ctx, src, a, measures)
	for _, l := range left {
		b.left = append(b.left, fmt.Sprintf("Left out of the archive: %s in the table %s: %s. They are listed under “Skipped”.", countedRows(l.count), l.name, l.reason))
		b.sheets = append(b.sheets, l)
	}
	return err
}

// addTablesAlone makes sheets of the tables of an archive that has no table of
// occurrences: events without any, which are visits, or names.
func (b *Book) addTablesAlone(ctx context.Context, src *source, a *dwc.Archive) {
	for _, t := range a.Tables() {
		s := newArchiveTable(ctx, src, t)
		if why := leftReason(t.RowType()); t.RowType() != dwc.RowEvent && (why != "" || t != a.Core) {
			b.sheets = append(b.sheets, &leftTable{archiveTable: s, reason: why})
			continue
		}
		b.sheets = append(b.sheets, s)
	}
	if a.Core.RowType() == dwc.RowTaxon {
		b.left = append(b.left, "The archive is a checklist: it has names and no records. To read other notebooks with its names, give it after --taxa.")
	}
}

func countedRows(n int) string {
	if n == 1 {
		return "1 row"
	}
	return fmt.Sprintf("%d rows", n)
}

// OfArchive tells whether a sheet is a table of a Darwin Core Archive.
func OfArchive(s Sheet) bool {
	switch s.(type) {
	case *archiveTable, *leftTable:
		return true
	}
	return false
}

// archiveLimits are the settings of the project file that bound an archive, by
// the limits of its reader.
var archiveLimits = map[string]string{"FileBytes": "unzipped_bytes", "RecordBytes": "row_bytes", "FieldBytes": "cell_bytes", "Ratio": "ratio", "Columns": "columns"}

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
	p := &Problem{Found: message, Cause: e}
	if limit := archiveLimits[e.Limit]; limit != "" {
		p.Advice = raise(limit, "split it")
	}
	return p
}
