// Package compare finds what is new, changed and withdrawn between two
// submissions, by the records' ids. Records are occurrences, with what was
// measured beside them, and visits on which nothing was found.
package compare

import "maps"

// ChangesOnly is what the metadata say of a submission that holds only what is
// new or changed since an earlier one.
const ChangesOnly = "This submission holds only the records that are new or changed since an earlier submission."

// TermChange is one term of a record before and after. The term of a
// measurement is the heading that the copies for people have for it.
type TermChange struct {
	Term string `json:"term"`
	Old  string `json:"old"`
	New  string `json:"new"`
}

// Record is one record that differs between the submissions.
type Record struct {
	ID string `json:"occurrenceID"`
	// EventID is the id of a visit on which nothing was found, which has no
	// other.
	EventID string `json:"eventID,omitempty"`
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
	// ChangesOnly: the new submission holds only what changed, so that nothing
	// is known of what else the old one has.
	ChangesOnly bool `json:"changesOnly,omitempty"`
	// Repeated are ids that one of the submissions has more than once, where
	// only the first record was compared.
	Repeated []string `json:"repeated,omitempty"`
}

// Submissions compares two submissions. Its memory grows by some hundred
// bytes a record of the old one, and by the records that differ.
func Submissions(oldPath, newPath string) (*Result, error) {
	known, err := Read(oldPath)
	if err != nil {
		return nil, err
	}
	partial, err := changesOnly(newPath)
	if err != nil {
		return nil, err
	}
	r := &Result{ChangesOnly: partial, New: []Record{}, Changed: []Record{}, Withdrawn: []Record{}, Repeated: known.repeated}
	seen := map[Mark]bool{}
	repeated := maps.Clone(known.repeats)
	changed := map[Mark]*Observation{}
	var order []*Observation
	err = each(newPath, func(o *Observation) error {
		id := o.Mark()
		if seen[id] {
			if !repeated[id] {
				repeated[id] = true
				r.Repeated = append(r.Repeated, o.ID())
			}
			return nil
		}
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
	before := map[Mark][]TermChange{}
	met := map[Mark]bool{} // of the old one
	err = each(oldPath, func(o *Observation) error {
		id := o.Mark()
		if met[id] {
			return nil
		}
		met[id] = true
		if now := changed[id]; now != nil {
			before[id] = differences(o, now)
		} else if !partial && !seen[id] && !known.described(o) {
			r.Withdrawn = append(r.Withdrawn, recordOf(o))
		}
		return nil
	})
	for _, o := range order {
		record := recordOf(o)
		record.Changes = before[o.Mark()]
		r.Changed = append(r.Changed, record)
	}
	return r, err
}

// Withdrawn lists the records of a submission that are not among those seen.
func Withdrawn(path string, seen func(id Mark) bool) ([]Record, error) {
	var list []Record
	met := map[Mark]bool{}
	err := each(path, func(o *Observation) error {
		if id := o.Mark(); !seen(id) && !met[id] {
			met[id] = true
			list = append(list, recordOf(o))
		}
		return nil
	})
	return list, err
}

func recordOf(o *Observation) Record {
	where := o.Occurrence.Locality
	if where == "" {
		where = o.Occurrence.VerbatimCoordinates
	}
	r := Record{ID: o.Occurrence.OccurrenceID, What: o.Occurrence.ScientificName, When: o.Occurrence.EventDate, Where: where}
	if o.visit() {
		r.EventID, r.What = o.Occurrence.EventID, nothingFound
	}
	return r
}

// nothingFound stands for the name of a visit on which nothing was found.
const nothingFound = "nothing found"
