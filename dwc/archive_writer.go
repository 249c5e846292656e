package dwc

import (
	"archive/zip"
	"errors"
	"fmt"
	"io"
	"strings"
	"time"
)

// Table says what one table of an archive holds.
type Table struct {
	// RowType is the IRI of what a row describes: RowOccurrence.
	RowType string
	// Columns are the terms of the columns in order, each by its name or its
	// IRI. Those of the first table of an archive, the core, must include the
	// core's own id (see IDTerm), and those of every other table, an
	// extension, the id of the core: it says which core record a row belongs
	// to.
	Columns []string
	// File is the name of the table's file; empty for the usual one, which is
	// the class's name in lower case: "occurrence.txt".
	File string
}

// writtenAt is the time that every file in an archive bears, so that the same
// records always give the same bytes. It is the earliest that zip can state.
var writtenAt = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

const (
	metaFile = "meta.xml"
	emlFile  = "eml.xml"
)

// Writer writes a Darwin Core Archive: a zip with a descriptor (meta.xml), the
// dataset's metadata (eml.xml) where there is any, and one text file a table.
//
// The text files are UTF-8, with one header line of term names, a tab between
// fields and a line feed after each row. A field that has a tab, a line break
// or a double quote in it, or white space at either end, is enclosed in double
// quotes, and a double quote in it doubled; meta.xml says so. Bytes that are
// no UTF-8 become U+FFFD, the replacement character.
//
// Rows may arrive in any order of tables and are not kept in memory: those of
// the core go straight to the output, those of extensions wait, compressed,
// in memory up to a few megabytes and then in a temporary file. The tables are
// compressed in the background; an error in that may be returned by a later
// call, by Close at the latest. A Writer is for one goroutine.
type Writer struct {
	zip      *zip.Writer
	deflate  []*deflater // of the files that go straight to the output
	tables   []*tableWriter
	metadata *Dataset
	err      error
}

// NewWriter starts an archive of a core table and any extensions. Close must
// be called to finish it, or Abort to give it up. The error says which table
// cannot be written: one whose row type cannot be a core, a column that is no
// known term or is there twice, ids that have no column, or a file name that
// is none or another's.
func NewWriter(w io.Writer, core Table, extensions ...Table) (*Writer, error) {
	a := &Writer{zip: zip.NewWriter(w)}
	a.zip.RegisterCompressor(zip.Deflate, func(out io.Writer) (io.WriteCloser, error) {
		d := newDeflater(out)
		a.deflate = append(a.deflate, d)
		return d, nil
	})
	coreID := IDTerm(core.RowType)
	if coreID == "" {
		return nil, fmt.Errorf("dwc: the row type %q cannot be the core of an archive", core.RowType)
	}
	names := map[string]bool{metaFile: true, emlFile: true}
	for _, t := range append([]Table{core}, extensions...) {
		tw, err := newTableWriter(t, coreID)
		if err != nil {
			return nil, err
		}
		if names[strings.ToLower(tw.file)] {
			return nil, fmt.Errorf("dwc: two files of the archive would be named %s", tw.file)
		}
		names[strings.ToLower(tw.file)] = true
		a.tables = append(a.tables, tw)
	}
	out, err := a.zip.CreateHeader(header(a.tables[0].file))
	if err != nil {
		return nil, err
	}
	for i, t := range a.tables {
		if i > 0 {
			t.spool = newSpool()
			out = t.spool
		}
		t.out = out
		t.writeHeader()
	}
	return a, nil
}

func header(name string) *zip.FileHeader {
	return &zip.FileHeader{Name: name, Method: zip.Deflate, Modified: writtenAt}
}

// SetMetadata gives the dataset's metadata, at any time before Close. The
// Dataset must not be changed after.
func (a *Writer) SetMetadata(d *Dataset) { a.metadata = d }

// Write adds a record to a table, which is counted from 0, the core. Terms
// that are no column of the table are left out. The record must be of the
// table's row type, else it is an error and nothing is written.
func (a *Writer) Write(table int, r Record) error {
	t, err := a.table(table)
	if err != nil {
		return err
	}
	if r.RowType() != t.rowType {
		return fmt.Errorf("dwc: %s is for %s, not %s", t.file, t.rowType, r.RowType())
	}
	for i, field := range t.fields {
		if i > 0 {
			t.buf = append(t.buf, '\t')
		}
		if field >= 0 {
			t.buf = appendField(t.buf, *r.Field(field))
		}
	}
	return a.note(t.endRow())
}

// WriteRow adds a row to a table, which is counted from 0, the core. There
// must be as many values as the table has columns.
func (a *Writer) WriteRow(table int, values []string) error {
	t, err := a.table(table)
	if err != nil {
		return err
	}
	if len(values) != len(t.terms) {
		return fmt.Errorf("dwc: %s has %d columns, not %d", t.file, len(t.terms), len(values))
	}
	return a.note(t.row(values))
}

// WriteText adds a row to a table, which is counted from 0, the core. Row
// appends the row's fields to b, each as AppendField does, with a tab between;
// there must be as many as the table has columns. It is for rows that share
// much of their text.
func (a *Writer) WriteText(table int, row func(b []byte) []byte) error {
	t, err := a.table(table)
	if err != nil {
		return err
	}
	t.buf = row(t.buf)
	return a.note(t.endRow())
}

// WriteRows adds whole rows to a table, which is counted from 0, the core. Each
// must have its fields as AppendField makes them, as many as the table has
// columns and not all empty, with a tab between and a line feed at its end. It
// is for rows that were made elsewhere, as by several goroutines.
func (a *Writer) WriteRows(table int, rows []byte) error {
	t, err := a.table(table)
	if err != nil {
		return err
	}
	if err := t.flush(); err != nil {
		return a.note(err)
	}
	_, err = t.out.Write(rows)
	return a.note(err)
}

// table returns the table to write to, and an error where nothing more can be
// written or there is no such table.
func (a *Writer) table(i int) (*tableWriter, error) {
	if a.err != nil {
		return nil, a.err
	}
	if i < 0 || i >= len(a.tables) {
		return nil, fmt.Errorf("dwc: the archive has no table %d, only those from 0 to %d", i, len(a.tables)-1)
	}
	return a.tables[i], nil
}

// note remembers the first error in writing, after which the archive cannot
// be finished.
func (a *Writer) note(err error) error {
	if err != nil && a.err == nil {
		a.err = err
	}
	return err
}

// Close writes what remains. The archive is complete only where it returns
// nil. It does not close the underlying writer.
func (a *Writer) Close() error {
	defer a.Abort()
	if a.err != nil {
		return a.err
	}
	for _, t := range a.tables {
		if err := t.flush(); err != nil {
			return a.note(err)
		}
	}
	for _, t := range a.tables[1:] {
		if err := t.spool.copyTo(a.zip, t.file); err != nil {
			return a.note(err)
		}
	}
	if err := a.writeFile(metaFile, a.appendMeta(nil)); err != nil {
		return err
	}
	if a.metadata != nil {
		eml, err := a.metadata.appendEML(nil)
		if err != nil {
			return a.note(err)
		}
		if err := a.writeFile(emlFile, eml); err != nil {
			return err
		}
	}
	if err := a.zip.Close(); err != nil {
		return a.note(err)
	}
	a.err = errors.New("dwc: the archive is closed")
	return nil
}

// Abort gives the archive up, so that no temporary file remains. After Close
// it does nothing.
func (a *Writer) Abort() {
	for _, t := range a.tables {
		if t.spool != nil {
			t.spool.remove()
		}
	}
	for _, d := range a.deflate {
		_ = d.Close() // what could not be written is given up with the rest
	}
	if a.err == nil {
		a.err = errors.New("dwc: the archive was given up")
	}
}

func (a *Writer) writeFile(name string, content []byte) error {
	out, err := a.zip.CreateHeader(header(name))
	if err == nil {
		_, err = out.Write(content)
	}
	return a.note(err)
}

// appendMeta appends the descriptor that the Darwin Core text guide defines.
func (a *Writer) appendMeta(b []byte) []byte {
	x := xmlWriter{b: b}
	x.declaration()
	attrs := []string{"xmlns", nsText}
	if a.metadata != nil {
		attrs = append(attrs, "metadata", emlFile)
	}
	x.open("archive", attrs...)
	for i, t := range a.tables {
		element, id := "extension", "coreid"
		if i == 0 {
			element, id = "core", "id"
		}
		x.open(element, "encoding", "UTF-8", "fieldsTerminatedBy", `\t`, "linesTerminatedBy", `\n`,
			"fieldsEnclosedBy", `"`, "ignoreHeaderLines", "1", "rowType", t.rowType)
		x.open("files")
		x.text("location", t.file)
		x.close()
		x.empty(id, "index", fmt.Sprint(t.id))
		for column, term := range t.terms {
			x.empty("field", "index", fmt.Sprint(column), "term", term.IRI)
		}
		x.close()
	}
	x.close()
	return x.b
}
