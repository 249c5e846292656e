package dwc

import (
	"slices"
	"strconv"
	"strings"
)

// Column is one column of a table as its archive describes it.
type Column struct {
	// Term is what the column holds. A term that is not one of Darwin Core's
	// goes by its IRI; a column of a file that nothing describes has no IRI,
	// and goes by its heading.
	Term Term
	// Index is the column's place in the files, from 0; -1 where the column
	// is in no file and every row has the default.
	Index int
	// Default is the value of rows that have none.
	Default string
	// DelimitedBy is what stands between several values in one, if stated.
	DelimitedBy string
	// Vocabulary is the IRI of the words that the column takes, if stated.
	Vocabulary string
}

// tableMeta is what meta.xml says of one table.
type tableMeta struct {
	rowType    string
	files      []string // as located in the source
	columns    []Column
	id         int // column of the id or coreid; -1 where there is none
	skip       int // header lines
	dialect    dialect
	encoding   string
	dateFormat string
	// pattern is the date format, and dateColumns are those columns that are
	// in it, where it is one that has to be turned into that of ISO 8601.
	pattern     datePattern
	dateColumns []int
}

// metaReader reads a descriptor, after the Darwin Core text guide
// (https://dwc.tdwg.org/text/), forgiving what cannot be misunderstood.
type metaReader struct {
	source source
	name   string // of the descriptor
	folder string
	limits Limits
	notes  []Note
}

func (m *metaReader) note(line int, message string) {
	m.notes = append(m.notes, Note{File: m.name, Line: line, Message: message})
}

// read returns the tables, the core first, and the location of the metadata.
func (m *metaReader) read() (tables []*tableMeta, metadata string, err error) {
	root, err := readXML(m.source, m.name, m.limits)
	if err != nil {
		return nil, "", err
	}
	if root.name != "archive" {
		return nil, "", unreadable(m.name, root.line, "The document is <%s>, not the <archive> that describes a Darwin Core Archive.", root.name)
	}
	if root.space != nsText {
		m.note(root.line, "The descriptor's namespace is not "+nsText+"; it was read as if it were.")
	}
	cores := root.all("core")
	if len(cores) != 1 {
		return nil, "", unreadable(m.name, root.line, "There are %d <core> elements, where an archive has exactly one.", len(cores))
	}
	metadata, _ = root.attr("metadata")
	for i, e := range append(cores, root.all("extension")...) {
		t, err := m.table(e, i == 0)
		if err != nil {
			return nil, "", err
		}
		tables = append(tables, t)
	}
	return tables, strings.TrimSpace(metadata), nil
}

func (m *metaReader) table(e *element, core bool) (*tableMeta, error) {
	t := &tableMeta{id: -1}
	if err := m.attributes(e, t); err != nil {
		return nil, err
	}
	if err := m.files(e, t); err != nil {
		return nil, err
	}
	idName := "coreid"
	if core {
		idName = "id"
	}
	for i, id := range e.all(idName) {
		index, ok, err := m.index(id)
		switch {
		case err != nil:
			return nil, err
		case i > 0:
			return nil, unreadable(m.name, id.line, "There is a second <%s>, where a table has only one.", idName)
		case ok:
			t.id = index
		}
	}
	if t.id < 0 && !core {
		m.note(e.line, "There is no <coreid> for "+strings.Join(t.files, " and ")+", so that its rows belong to no record of the core.")
	}
	return t, m.columns(e, t)
}

// attributes reads how the files are written. Defaults are those of the text
// guide and its schema.
func (m *metaReader) attributes(e *element, t *tableMeta) error {
	text := func(name, otherwise string) string {
		if v, ok := e.attr(name); ok {
			return unescape(v)
		}
		return otherwise
	}
	t.dialect = dialect{delimiter: text("fieldsTerminatedBy", ","), quote: text("fieldsEnclosedBy", `"`), terminator: text("linesTerminatedBy", "\n")}
	switch {
	case t.dialect.delimiter == "":
		return unreadable(m.name, e.line, "fieldsTerminatedBy is empty: it has to say what stands between the values, such as , or \\t.")
	case t.dialect.terminator == "":
		return unreadable(m.name, e.line, "linesTerminatedBy is empty: it has to say what ends a row, such as \\n.")
	case t.dialect.quote == t.dialect.delimiter || t.dialect.terminator == t.dialect.delimiter:
		return unreadable(m.name, e.line, "fieldsTerminatedBy is the same as fieldsEnclosedBy or linesTerminatedBy, so that values cannot be told apart.")
	}
	if skip := strings.TrimSpace(text("ignoreHeaderLines", "0")); skip != "" {
		n, err := strconv.Atoi(skip)
		if err != nil || n < 0 {
			return unreadable(m.name, e.line, "ignoreHeaderLines is “%s”, which is no number of lines.", skip)
		}
		t.skip = n
	}
	t.encoding = strings.TrimSpace(text("encoding", "UTF-8"))
	if _, err := encodingFor(t.encoding); err != nil {
		return unreadable(m.name, e.line, "The encoding “%s” is not known. Save the files as UTF-8 and say so here.", t.encoding)
	}
	t.dateFormat = text("dateFormat", "YYYY-MM-DD")
	t.rowType = m.rowType(e)
	return nil
}

func (m *metaReader) rowType(e *element) string {
	v, _ := e.attr("rowType")
	v = strings.TrimSpace(v)
	for _, known := range []string{RowOccurrence, RowEvent, RowMeasurement, RowTaxon, RowVernacularName} {
		if v == known {
			return known
		}
		if foldIRI(v) == foldIRI(known) {
			m.note(e.line, "The row type “"+v+"” was read as "+known+".")
			return known
		}
	}
	if v[strings.LastIndexAny(v, "/#")+1:] == "ExtendedMeasurementOrFact" {
		m.note(e.line, "The row type “"+v+"” was read as "+RowMeasurement+".")
		return RowMeasurement
	}
	// The text guide's default is a simple Darwin Core record, which is an
	// occurrence as a rule.
	if v == "" {
		m.note(e.line, "No row type is stated; the rows were taken for occurrences.")
	}
	if v == "" || strings.HasSuffix(v, "/SimpleDarwinRecord") {
		return RowOccurrence
	}
	return v
}

// unescape replaces the escapes that the text guide uses in attributes.
func unescape(v string) string {
	return strings.NewReplacer(`\\`, `\`, `\t`, "\t", `\n`, "\n", `\r`, "\r", `\f`, "\f", `\"`, `"`, `\'`, `'`, `\0`, "\x00").Replace(v)
}

func (m *metaReader) files(e *element, t *tableMeta) error {
	for _, l := range e.child("files").all("location") {
		location := l.content()
		switch {
		case strings.Contains(location, "://"):
			return unreadable(m.name, l.line, "The file is at %s. Fetch it, put it beside %s, and write its name here: nothing is fetched from elsewhere.", location, m.name)
		case location == "":
			return unreadable(m.name, l.line, "The name of the file is empty.")
		}
		name, exact, ok := find(m.source, m.folder, location)
		if !ok {
			return unreadable(m.name, l.line, "The file “%s” is not in the archive, which holds %s.", location, listed(m.source.names()))
		}
		if !exact {
			m.note(l.line, "The file is named “"+name+"” in the archive, and “"+location+"” here; they were taken for the same.")
		}
		t.files = append(t.files, name)
	}
	if len(t.files) == 0 {
		return unreadable(m.name, e.line, "No file is named for this table: <files> with a <location> is missing.")
	}
	return nil
}

// listed joins the first few names.
func listed(names []string) string {
	const most = 8
	if len(names) == 0 {
		return "no file"
	}
	if len(names) > most {
		return strings.Join(names[:most], ", ") + " and " + strconv.Itoa(len(names)-most) + " more"
	}
	return strings.Join(names, ", ")
}

// index reads the index attribute; ok is false where there is none.
func (m *metaReader) index(e *element) (index int, ok bool, err error) {
	v, ok := e.attr("index")
	v = strings.TrimSpace(v)
	if !ok || v == "" {
		return 0, false, nil
	}
	index, err = strconv.Atoi(v)
	if err == nil && index >= m.limits.Columns {
		return 0, false, over("Columns", m.name, e.line, "The index is “%s”, and a table may have %d columns, more than any of records has.", v, m.limits.Columns)
	}
	if err != nil || index < 0 {
		return 0, false, unreadable(m.name, e.line, "The index is “%s”: it has to be a column's number, counted from 0.", v)
	}
	return index, true, nil
}

func (m *metaReader) columns(e *element, t *tableMeta) error {
	fields := e.all("field")
	if len(fields) > m.limits.Columns {
		return over("Columns", m.name, e.line, "There are more than %d fields, which no table of records has.", m.limits.Columns)
	}
	seen := map[Term]bool{}
	for _, f := range fields {
		index, hasIndex, err := m.index(f)
		if err != nil {
			return err
		}
		if !hasIndex {
			index = -1
		}
		term, err := m.term(f)
		if err != nil {
			return err
		}
		value, hasDefault := f.attr("default")
		if !hasIndex && !hasDefault {
			m.note(f.line, "The field "+term.Name+" has neither an index nor a default, and so no value.")
			continue
		}
		if seen[term] {
			m.note(f.line, "The term "+term.Name+" is there more than once; each row's first value counts.")
		}
		seen[term] = true
		c := Column{Term: term, Index: index, Default: value}
		c.DelimitedBy, _ = f.attr("delimitedBy")
		c.Vocabulary, _ = f.attr("vocabulary")
		t.columns = append(t.columns, c)
	}
	if len(t.columns) == 0 && t.id < 0 {
		return unreadable(m.name, e.line, "No column of this table is described: <field> elements are missing.")
	}
	m.dates(e, t)
	return nil
}

// dates settles what is done about a date format.
func (m *metaReader) dates(e *element, t *tableMeta) {
	if strings.TrimSpace(t.dateFormat) == "" {
		return
	}
	pattern, ok := parseDatePattern(t.dateFormat)
	if ok && pattern.isISO() {
		return
	}
	var columns []int
	for i, c := range t.columns {
		if slices.Contains(dateTerms, c.Term.Name) {
			columns = append(columns, i)
		}
	}
	switch {
	case len(columns) == 0:
	case !ok:
		m.note(e.line, "Dates are said to be written as “"+t.dateFormat+"”, which was not understood; they were left as they are.")
	default:
		m.note(e.line, "Dates are said to be written as “"+t.dateFormat+"”; they were read so, and turned into year-month-day.")
		t.pattern, t.dateColumns = pattern, columns
		for _, i := range columns {
			if iso, ok := pattern.iso(t.columns[i].Default); ok {
				t.columns[i].Default = iso
			}
		}
	}
}

func (m *metaReader) term(f *element) (Term, error) {
	stated, _ := f.attr("term")
	iri := strings.TrimSpace(stated)
	if iri == "" {
		return Term{}, unreadable(m.name, f.line, "A field does not say which term it is.")
	}
	term, exact, ok := Closest(iri)
	switch {
	case !ok:
		return Term{Name: iri, IRI: iri}, nil
	case iri == nsDCTerms+"language": // a recommended term itself, of the same meaning
	case !exact || term.IRI != iri:
		m.note(f.line, "The term “"+iri+"” was read as "+term.IRI+".")
	}
	return term, nil
}
