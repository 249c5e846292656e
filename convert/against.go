package convert

import (
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strings"

	"fieldfare/convert/compare"
	"fieldfare/convert/places"
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/dwc"
	"fieldfare/gridref"
)

// WithdrawnFile lists the records of the earlier submission that are not in
// this one.
const WithdrawnFile = "withdrawn.csv"

// against leaves out of a submission what an earlier one has already, and
// notes what it has that is gone. The records that are left wait in a spool,
// since the archive's columns depend on them.
type against struct {
	path    string
	known   *compare.Known
	seen    map[compare.Mark]bool
	held    map[compare.Mark]bool // those that wait for an answer
	waiting *spool.Spool
	view    setView // columns and coverage of what is left
	encoded []byte
}

// newAgainst reads the earlier submission; with an empty path there is none,
// and a nil against is returned.
func newAgainst(path string, out *stage.Folder) (*against, error) {
	if path == "" {
		return nil, nil
	}
	known, err := compare.Read(path)
	var unreadable *dwc.ReadError
	switch {
	case errors.As(err, &unreadable):
		return nil, err
	case err != nil: // a sentence that begins with the path
		return nil, &stage.Error{Path: path, Problem: strings.TrimPrefix(err.Error(), path+": "), Err: err}
	}
	waiting, err := spool.New(out.Temp())
	if err != nil {
		return nil, err
	}
	return &against{path: path, known: known, seen: map[compare.Mark]bool{}, held: map[compare.Mark]bool{}, waiting: waiting, view: setView{outline: newOutline()}}, nil
}

// keep takes in a record that would leave, and keeps it if it is new or
// changed.
func (a *against) keep(o *dwc.Occurrence, r *spool.Record) error {
	var measured []dwc.Measurement
	if r.Facts.Blur == 0 {
		for i := range r.Measurements {
			measured = append(measured, r.Measurements[i].Measurement)
		}
	}
	is := compare.NewObservation(o, measured)
	a.seen[is.Mark()] = true
	if a.known.State(&is) == compare.Same {
		return nil
	}
	a.view.add(o, r)
	if r.Facts.Blur == 0 {
		for i := range r.Measurements {
			a.view.measured.add(&r.Measurements[i])
		}
	}
	a.encoded = encodeLeaving(a.encoded, o, r)
	return a.waiting.Append(a.encoded)
}

// each yields the records kept.
func (a *against) each(fn func(o *dwc.Occurrence, r *spool.Record) error) error {
	var row spool.Row
	return a.waiting.Each(func(encoded []byte) error {
		if err := spool.Decode(encoded, &row, nil); err != nil {
			return err
		}
		return fn(&row.Records[0].Occurrence, &row.Records[0])
	})
}

// hold takes in that a record is there, but held at present: it is not
// withdrawn, whatever becomes of it.
func (a *against) hold(id string) {
	if a != nil {
		a.held[compare.IDMark(id)] = true
	}
}

// fate counts what has become of the records of the earlier submission that
// are not handed in now.
type fate struct {
	gone, held, unread, all int
}

// withdraw writes the list of withdrawn records. One that is held at present is
// none of them, nor one of a notebook that was not read. Where it was is left
// out for those whose place is private by now.
func (a *against) withdraw(s *settings, unread map[compare.Mark]bool, out *stage.Folder) (f fate, err error) {
	list, err := compare.Withdrawn(a.path, func(id compare.Mark) bool {
		f.all++
		switch {
		case a.seen[id]:
		case a.held[id]:
			f.held++
		case unread[id]:
			f.unread++
		default:
			return false
		}
		return true
	})
	if err != nil {
		return f, err
	}
	f.gone = len(list)
	file, err := out.Create(WithdrawnFile)
	if err != nil {
		return f, err
	}
	w := csv.NewWriter(file)
	w.Write([]string{"occurrenceID", "scientificName", "eventDate", "locality", "eventID"})
	for _, r := range list {
		if s.hides(&r) {
			r.Where = ""
		}
		w.Write([]string{r.ID, r.What, r.When, r.Where, r.EventID})
	}
	w.Flush()
	if err := w.Error(); err != nil {
		return f, err
	}
	return f, file.Close()
}

// notes says what is not in the list of withdrawn records, and asks where most
// of the earlier submission is in it.
func (f fate) notes(name string, notebooks []string) (notes []string) {
	if f.held > 0 {
		notes = append(notes, fmt.Sprintf("Of %s %s held at present: not withdrawn, but as handed in before until you answer.", name, isAre(f.held)))
	}
	if f.unread > 0 {
		named := strings.Join(notebooks[:min(len(notebooks), 3)], "; ")
		if n := len(notebooks) - 3; n > 0 {
			named += fmt.Sprintf("; and %d more", n)
		}
		notes = append(notes, fmt.Sprintf("Of %s %s from notebooks that were not read (%s): not withdrawn.", name, isAre(f.unread), named))
	}
	if 2*f.gone > f.all {
		notes = append(notes, fmt.Sprintf("%s lists %d of the %d records of %s. Were all notebooks given? Look before you pass it on.", WithdrawnFile, f.gone, f.all, name))
	}
	return notes
}

// hides tells whether a withdrawn record is one that would leave blurred today.
func (s *settings) hides(r *compare.Record) bool {
	if _, blur := s.sensitive.in(r.What); blur > 0 || s.privacy.least > 0 {
		return true
	}
	site := s.places.Find(r.Where)
	if site.Place != nil {
		site.Possible = append(site.Possible, site.Place)
	}
	if slices.ContainsFunc(site.Possible, func(p *places.Place) bool { return s.privacy.place(p) > 0 }) || s.namesPrivate(r.Where) {
		return true
	}
	where, err := gridref.Parse(r.Where)
	return err == nil && slices.ContainsFunc(s.privacy.squares, func(p privateSquare) bool { return places.Apart(p.where, where) <= privateMetres })
}

func (a *against) close() {
	if a != nil {
		a.waiting.Close()
	}
}
