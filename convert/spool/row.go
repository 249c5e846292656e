// Package spool keeps what has been read of each source row in a temporary
// file until the whole set has been seen, so that memory does not grow with
// the number of rows.
package spool

import (
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// Row is one source row and all that came of it.
type Row struct {
	// Sheet is the index of the row's sheet among all sheets of the run.
	Sheet int
	// Number is the row's number in its sheet, from 1.
	Number int
	// Skip is why the row is no record; empty otherwise.
	Skip string
	// Cells are the row's cells as a person sees them.
	Cells []string
	// Records are the observations on the row. A row may have none and yet
	// findings (a value that asks a question before there is a record).
	Records []Record
	// Findings concern the row and not one record of it.
	Findings []reading.Finding
}

// Record is one observation: an occurrence, or a visit on which nothing was
// found (EmptyVisit).
type Record struct {
	Occurrence dwc.Occurrence
	Facts      validate.Facts
	// Parts are those that the occurrence shares with others, by kind; nil
	// for one that it does not. Own are, of a record that was read back, the
	// terms that it has for itself: what it has of them counts, not what a
	// part says.
	Parts [Kinds]*Part
	Own   Terms
	// Content is the fingerprint of what was written, the same wherever the
	// row stands and whatever its file is called.
	Content [16]byte
	// Cell is where the record stands, such as the address of its name; the
	// zero value is nowhere.
	Cell notebook.Ref
	// Findings are the questions about the record.
	Findings   []reading.Finding
	EmptyVisit bool
	// Measurements are values of the measurement columns, as written.
	Measurements []Measurement
}

// Measurement is one measured value beside a record, without the ids of what
// it is of: the organism, or, as the night's temperature, the whole event.
type Measurement struct {
	dwc.Measurement
	Event bool
}

// State is the worst of the record's findings.
func (r *Record) State() reading.State { return reading.Worst(r.Findings) }

// State is the row's place in the accounts: skipped, or the worst state of
// the row and its records.
func (r *Row) State() reading.State {
	if r.Skip != "" {
		return reading.Skipped
	}
	worst := reading.Worst(r.Findings)
	for i := range r.Records {
		worst = max(worst, r.Records[i].State())
	}
	return worst
}
