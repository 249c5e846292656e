// Package compare finds what is new, changed and withdrawn between two
// submissions, by the records' ids.
package compare

import (
	"crypto/sha256"
	"fmt"

	"fieldfare/dwc"
)

// TermChange is one term of a record before and after.
type TermChange struct {
	Term string `json:"term"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// Record is one record that differs between the submissions.
type Record struct {
	ID string `json:"occurrenceID"`
	// What, When and Where let a person recognise the record.
	What    string       `json:"scientificName"`
	When    string       `json:"eventDate"`
	Where   string       `json:"locality"`
	Changes []TermChange `json:"changes,omitempty"`
}

// Result is all that differs. Each list is in the order of its submission:
// Withdrawn in the old one's, the others in the new one's.
type Result struct {
	New       []Record `json:"new"`
	Changed   []Record `json:"changed"`
	Withdrawn []Record `json:"withdrawn"`
	Same      int      `json:"unchanged"`
}

// Mark is a record's id and content in 16 bytes each.
type Mark [16]byte

// Known is what is remembered of a submission: of each record 32 bytes.
type Known struct {
	byID map[Mark]Mark
}

// IDMark returns the mark of an id.
func IDMark(id string) Mark {
	sum := sha256.Sum256([]byte(id))
	return Mark(sum[:16])
}

// ContentMark returns the mark of what a record says. When a record was last
// modified does not count: it says nothing of the observation.
func ContentMark(o *dwc.Occurrence) Mark {
	h := sha256.New()
	for i, term := range dwc.Terms() {
		if value := *o.Field(i); value != "" && term != "modified" {
			fmt.Fprintf(h, "%s\x1f%s\x1e", term, value)
		}
	}
	var m Mark
	copy(m[:], h.Sum(nil))
	return m
}

// State says how a record stands to the earlier submission.
type State uint8

const (
	New State = iota
	Changed
	Same
)

// Read remembers a submission.
func Read(path string) (*Known, error) {
	k := &Known{byID: map[Mark]Mark{}}
	return k, each(path, func(o *dwc.Occurrence) error {
		k.byID[IDMark(o.OccurrenceID)] = ContentMark(o)
		return nil
	})
}

// State compares a record with the submission.
func (k *Known) State(o *dwc.Occurrence) State {
	old, found := k.byID[IDMark(o.OccurrenceID)]
	switch {
	case !found:
		return New
	case old != ContentMark(o):
		return Changed
	}
	return Same
}

// Submissions compares two submissions. Its memory grows by some hundred
// bytes a record of the old one, and by the records that differ.
func Submissions(oldPath, newPath string) (*Result, error) {
	known, err := Read(oldPath)
	if err != nil {
		return nil, err
	}
	r := &Result{New: []Record{}, Changed: []Record{}, Withdrawn: []Record{}}
	seen := map[Mark]bool{}
	changed := map[Mark]*dwc.Occurrence{}
	var order []*dwc.Occurrence
	err = each(newPath, func(o *dwc.Occurrence) error {
		id := IDMark(o.OccurrenceID)
		seen[id] = true
		switch known.State(o) {
		case New:
			r.New = append(r.New, recordOf(o))
		case Changed:
			kept := *o
			changed[id] = &kept
			order = append(order, &kept)
		case Same:
			r.Same++
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	before := map[string][]TermChange{}
	err = each(oldPath, func(o *dwc.Occurrence) error {
		id := IDMark(o.OccurrenceID)
		if now := changed[id]; now != nil {
			before[o.OccurrenceID] = differences(o, now)
		} else if !seen[id] {
			r.Withdrawn = append(r.Withdrawn, recordOf(o))
		}
		return nil
	})
	for _, o := range order {
		record := recordOf(o)
		record.Changes = before[o.OccurrenceID]
		r.Changed = append(r.Changed, record)
	}
	return r, err
}

// Withdrawn lists the records of a submission that are not among those seen.
func Withdrawn(path string, seen func(id Mark) bool) ([]Record, error) {
	var list []Record
	err := each(path, func(o *dwc.Occurrence) error {
		if !seen(IDMark(o.OccurrenceID)) {
			list = append(list, recordOf(o))
		}
		return nil
	})
	return list, err
}

func recordOf(o *dwc.Occurrence) Record {
	where := o.Locality
	if where == "" {
		where = o.VerbatimCoordinates
	}
	return Record{ID: o.OccurrenceID, What: o.ScientificName, When: o.EventDate, Where: where}
}

func differences(old, now *dwc.Occurrence) []TermChange {
	var list []TermChange
	for i, term := range dwc.Terms() {
		if a, b := *old.Field(i), *now.Field(i); a != b && term != "modified" {
			list = append(list, TermChange{term, a, b})
		}
	}
	return list
}

// each yields every occurrence of a submission, whatever its shape.
func each(path string, fn func(o *dwc.Occurrence) error) error {
	archive, err := dwc.OpenArchive(path)
	if err != nil {
		return err
	}
	defer archive.Close()
	if archive.Table(dwc.RowOccurrence) == nil {
		return fmt.Errorf("%s: there are no occurrences in it. Give a submission.zip or another Darwin Core Archive", path)
	}
	return archive.Occurrences(func(o *dwc.Occurrence, row *dwc.Row) error {
		if o.OccurrenceID == "" {
			return fmt.Errorf("%s, %s, line %d: the record has no occurrenceID, so it cannot be compared", path, row.File, row.Line)
		}
		return fn(o)
	})
}
