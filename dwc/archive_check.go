package dwc

import (
	"cmp"
	"crypto/sha256"
	"fmt"
	"slices"
)

// ArchiveFault is something in an archive that is not as the standard has it.
type ArchiveFault struct {
	// File and Line are where it is; Line is 0 where it is not in one line.
	File string
	Line int
	// ID is the id of the row, where the fault is in a row.
	ID string
	// Term is the term that the fault is about, where it is about one.
	Term string
	// Message is plain sentences.
	Message string
}

// String returns the place and the message.
func (f ArchiveFault) String() string {
	message := f.Message
	if f.Term != "" {
		message = f.Term + ": " + message
	}
	return Note{File: f.File, Line: f.Line, Message: message}.String()
}

// ValidateArchive reads an archive through and reports every fault: what was
// read only with leniency, columns that are no known term, ids that are
// missing or there twice, rows of extensions whose core record does not exist,
// measurements of occurrences that do not exist, and values that Check,
// CheckEvent or CheckMeasurement finds at fault. An archive is valid where
// nothing is reported and the error is nil; an error means that the archive
// could not be read to its end.
//
// To know every id, it keeps some 50 bytes a row in memory.
func ValidateArchive(name string, report func(ArchiveFault), limits ...Limits) error {
	a, err := OpenArchive(name, limits...)
	if err != nil {
		return err
	}
	defer a.Close()
	return a.Validate(report)
}

// Validate is ValidateArchive for an archive that is open.
func (a *Archive) Validate(report func(ArchiveFault)) error {
	for _, n := range a.Notes {
		report(ArchiveFault{File: n.File, Line: n.Line, Message: n.Message})
	}
	c := &archiveCheck{archive: a, report: report, ids: map[string]idSet{}}
	tables := a.Tables()
	// Occurrences come before what may refer to them.
	slices.SortStableFunc(tables[1:], func(s, t *DataTable) int { return cmp.Compare(order(s), order(t)) })
	for _, t := range tables {
		if err := c.table(t); err != nil {
			return err
		}
	}
	if _, err := a.Metadata(); err != nil {
		return err
	}
	return nil
}

func order(t *DataTable) int {
	if t.rowType == RowOccurrence {
		return 0
	}
	return 1
}

// idSet knows ids by the first half of their SHA-256, and where each was seen
// first.
type idSet map[[16]byte]int

func digest(id string) [16]byte {
	sum := sha256.Sum256([]byte(id))
	return [16]byte(sum[:16])
}

// archiveCheck is one reading of an archive.
type archiveCheck struct {
	archive *Archive
	report  func(ArchiveFault)
	// ids are those seen so far, by the term that they are values of; those of
	// core rows under coreIDs.
	ids map[string]idSet
}

func (c *archiveCheck) table(t *DataTable) error {
	for _, column := range t.columns {
		if column.Term.IRI != "" && !column.Term.Known() && column.Term != isPreferredName {
			c.report(ArchiveFault{File: t.files[0], Term: column.Term.Name, Message: "This column is no term of Darwin Core."})
		}
	}
	for row, err := range t.Rows() {
		if err != nil {
			return err
		}
		for _, n := range row.Notes {
			c.fault(row, "", n)
		}
		c.identity(t, row)
		c.values(t, row)
	}
	return nil
}

func (c *archiveCheck) fault(row *Row, term, message string, args ...any) {
	if len(args) > 0 {
		message = fmt.Sprintf(message, args...)
	}
	c.report(ArchiveFault{File: row.File, Line: row.Line, ID: row.id, Term: term, Message: message})
}

// coreIDs is the name under which the ids of core rows are kept.
const coreIDs = ""

// identity checks the row's own id, and that what it refers to exists.
func (c *archiveCheck) identity(t *DataTable, row *Row) {
	coreTerm, own := IDTerm(c.archive.Core.rowType), IDTerm(t.rowType)
	if t.core {
		c.unique(row, coreIDs, own, row.id)
	} else if row.id == "" {
		c.fault(row, coreTerm, "The row does not say which record it belongs to.")
	} else if !c.exists(coreIDs, row.id) {
		c.fault(row, coreTerm, "The row belongs to “%s”, which the core table does not have.", row.id)
	}
	// Check reports a record's own id where it is missing.
	if id := row.Get(own); id != "" && (t.core && id != row.id || !t.core && own != coreTerm) {
		c.unique(row, own, own, id)
	}
	if id := row.Get("occurrenceID"); t.rowType == RowMeasurement && id != "" && !c.exists("occurrenceID", id) &&
		(coreTerm != "occurrenceID" || !c.exists(coreIDs, id)) {
		c.fault(row, "occurrenceID", "The measurement is of the occurrence “%s”, which the archive does not have.", id)
	}
	if id := row.Get(coreTerm); !t.core && id != "" && row.id != "" && id != row.id {
		c.fault(row, coreTerm, "The row belongs to “%s”, but its %s is “%s”.", row.id, coreTerm, id)
	}
}

func (c *archiveCheck) exists(kind, id string) bool {
	_, ok := c.ids[kind][digest(id)]
	return ok
}

// unique notes an id, and reports it where it is missing from a core row or
// was seen before.
func (c *archiveCheck) unique(row *Row, kind, term, id string) {
	if id == "" {
		if term != "occurrenceID" && term != "eventID" {
			c.fault(row, term, "The row has no id.")
		}
		return
	}
	seen := c.ids[kind]
	if seen == nil {
		seen = idSet{}
		c.ids[kind] = seen
	}
	key := digest(id)
	if line, twice := seen[key]; twice {
		c.fault(row, term, "The id “%s” was there before, in line %d: an id must be used once only.", id, line)
		return
	}
	seen[key] = row.Line
}

func (c *archiveCheck) values(t *DataTable, row *Row) {
	var faults []FieldFault
	switch t.rowType {
	case RowOccurrence:
		var o Occurrence
		row.Fill(&o)
		faults = Check(&o)
	case RowEvent:
		var e Event
		row.Fill(&e)
		faults = CheckEvent(&e)
	case RowMeasurement:
		var m Measurement
		row.Fill(&m)
		faults = CheckMeasurement(&m)
	}
	for _, f := range faults {
		c.fault(row, f.Term, f.Message)
	}
}
