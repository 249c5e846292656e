package dwc

import (
	"errors"
	"io"
	"path"
	"slices"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/unicode"
)

// openSimple opens an archive without a descriptor: one text file, whose first
// line names the terms.
func (a *Archive) openSimple(name string) error {
	var candidates []string
	for _, n := range a.source.names() {
		switch strings.ToLower(path.Ext(n)) {
		case ".txt", ".csv", ".tsv", ".tab", ".dat", ".text":
			candidates = append(candidates, n)
		case ".zip":
			return unreadable(name, 0, "There is another zip in here, “%s”, and no meta.xml. Unpack it, and give the inner one.", n)
		default:
			if strings.EqualFold(path.Base(n), "[Content_Types].xml") {
				return unreadable(name, 0, "This is a workbook or a document, not a Darwin Core Archive.")
			}
			if strings.EqualFold(path.Base(n), emlFile) {
				a.metadata = n
			}
		}
	}
	if _, single := a.source.(*fileSource); single {
		candidates, a.metadata = a.source.names(), ""
	}
	var tables []*DataTable
	var first error
	for _, n := range candidates {
		t, err := a.simpleTable(n)
		if err != nil {
			if first == nil {
				first = err
			}
			continue
		}
		tables = append(tables, t)
	}
	switch {
	case len(tables) == 1:
		a.Core = tables[0]
		return a.Core.inspect()
	case len(tables) > 1:
		return unreadable(name, 0, "There are several tables in here (%s) and no meta.xml that says how they belong together. Give one of them, or add meta.xml.", listed(candidates))
	case first != nil:
		return first
	}
	return unreadable(name, 0, "This is no Darwin Core Archive: there is neither a meta.xml nor a text file of records. It holds %s.", listed(a.source.names()))
}

// simpleTable works out how a file without a descriptor is written. Its first
// line must name at least one term.
func (a *Archive) simpleTable(file string) (*DataTable, error) {
	meta := &tableMeta{files: []string{file}, id: -1, skip: 1, encoding: "UTF-8"}
	t := &DataTable{tableMeta: meta, archive: a, core: true}
	isUTF8, err := a.isUTF8(file)
	if err != nil {
		return nil, err
	}
	if !isUTF8 {
		meta.encoding = "windows-1252"
	}
	most := 0
	var header []string
	for _, delimiter := range []string{"\t", ",", ";", "|"} {
		d := dialect{delimiter: delimiter, quote: `"`, terminator: "\n"}
		values, err := t.firstRecord(file, &d)
		if err != nil {
			return nil, err
		}
		known := 0
		for _, v := range values {
			if _, _, ok := Closest(v); ok {
				known++
			}
		}
		if known > most {
			most, header, meta.dialect = known, values, d
		}
	}
	if most == 0 {
		return nil, unreadable(file, 1, "The first line names no term of Darwin Core, so that it cannot be told what the columns are.")
	}
	if !isUTF8 {
		t.note(file, 0, "The file is not UTF-8; it was read as Windows-1252.")
	}
	t.simpleColumns(header)
	return t, nil
}

// firstRecord reads a file's first record as if it were written in a dialect,
// whose terminator is set to the one that the file has.
func (t *DataTable) firstRecord(file string, d *dialect) ([]string, error) {
	meta := *t.tableMeta
	meta.dialect = *d
	probe := &DataTable{tableMeta: &meta, archive: t.archive}
	f, r, _, err := probe.openFile(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if err := r.fill(); err != nil {
		if errors.Is(err, io.EOF) {
			return nil, unreadable(file, 0, "The file is empty.")
		}
		return nil, err
	}
	if ending, ok := probe.lineEnding(string(r.buf[r.start:r.end])); ok {
		r.dialect.terminator, d.terminator = ending, ending
	}
	return r.next(nil)
}

// simpleColumns takes the columns from the headings.
func (t *DataTable) simpleColumns(header []string) {
	has := map[string]bool{}
	for i, heading := range header {
		heading = strings.TrimSpace(heading)
		term, exact, ok := Closest(heading)
		switch {
		case !ok && isIRI(heading):
			term = Term{Name: heading, IRI: heading}
		case !ok:
			continue // kept under its heading, like any column that nothing describes
		case !exact:
			t.note(t.files[0], 1, "The heading “%s” was read as %s.", heading, term.Name)
		}
		if has[term.Name] {
			t.note(t.files[0], 1, "The term %s is there more than once; each row's first value counts.", term.Name)
		}
		has[term.Name] = true
		t.columns = append(t.columns, Column{Term: term, Index: i})
	}
	switch {
	case has["occurrenceID"]:
		t.rowType = RowOccurrence
	case has["measurementType"] && has["measurementValue"]:
		t.rowType = RowMeasurement
	case has["eventID"] && !has["scientificName"] && !has["vernacularName"]:
		t.rowType = RowEvent
	case has["taxonID"] && !has["eventDate"] && !has["basisOfRecord"]:
		t.rowType = RowTaxon
	default:
		t.rowType = RowOccurrence
	}
	id := IDTerm(t.rowType)
	for _, c := range t.columns {
		if c.Term.Name == id {
			t.id = c.Index
		}
	}
	if t.id < 0 {
		t.id = slices.IndexFunc(header, func(h string) bool { return strings.EqualFold(strings.TrimSpace(h), "id") })
	}
}

// isUTF8 reads a file through to see whether it is UTF-8 or has a byte order
// mark that says what it is.
func (a *Archive) isUTF8(file string) (bool, error) {
	f, err := a.source.open(file)
	if err != nil {
		return false, err
	}
	defer f.Close()
	text, checked, _, err := decodedText(f, unicode.UTF8)
	if err != nil || !checked {
		return true, err
	}
	buf := make([]byte, 64<<10)
	kept := 0
	for {
		n, err := text.Read(buf[kept:])
		n += kept
		// A character may lie across the end of what has been read.
		cut := n
		for cut > max(0, n-utf8.UTFMax) && !utf8.Valid(buf[:cut]) {
			cut--
		}
		ended := errors.Is(err, io.EOF)
		if !utf8.Valid(buf[:cut]) || ended && cut < n {
			return false, nil
		}
		if ended {
			return true, nil
		}
		if err != nil {
			return false, err
		}
		kept = copy(buf, buf[cut:n])
	}
}
