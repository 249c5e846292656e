package convert

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"fieldfare/convert/identity"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// archive writes the submission in the shape that fits the records: with
// occurrences as its core, or with events (trap nights and visits) as its
// core and the occurrences as an extension of them.
type archive struct {
	file        io.WriteCloser
	w           *dwc.Writer
	rows        []*rowText // of the tables, but for the measurements
	shape       string
	measureAt   int               // table of the measurements, 0 where there are none
	seen        map[string]bool   // events
	measured    map[[16]byte]bool // of events
	last        [2]string         // the last event and its season
	noted       map[string]noted  // what the first record says of its event
	differing   map[string]string // events of which a later one says otherwise, with their dates
	occurrences int
	events      int
	visitsLeft  int  // visits for which the shape has no place
	exact       bool // nothing is blurred
}

func newArchive(file io.WriteCloser, s *settings, v *setView) (*archive, error) {
	a := &archive{file: file, shape: v.shape(s), seen: map[string]bool{}, measured: map[[16]byte]bool{}, noted: map[string]noted{}, differing: map[string]string{}}
	var core dwc.Table
	var extensions []dwc.Table
	measured := []string{"measurementType", "measurementValue", "measurementUnit"}
	if a.shape == shapeEvent {
		core = dwc.Table{RowType: dwc.RowEvent, Columns: v.usedByEvents.Columns("eventID")}
		extensions = []dwc.Table{{RowType: dwc.RowOccurrence, Columns: v.used.Columns("eventID", "occurrenceID")}}
		measured = append([]string{"eventID", "occurrenceID"}, measured...)
	} else {
		core = dwc.Table{RowType: dwc.RowOccurrence, Columns: v.used.Columns("occurrenceID")}
		measured = append([]string{"occurrenceID"}, measured...)
	}
	if len(v.measured.kinds) > 0 {
		extensions = append(extensions, dwc.Table{RowType: dwc.RowMeasurement, Columns: v.measured.used.Columns(measured...)})
		a.measureAt = len(extensions)
	}
	for _, t := range append([]dwc.Table{core}, extensions...) {
		if t.RowType != dwc.RowMeasurement {
			a.rows = append(a.rows, newRowText(t.Columns))
		}
	}
	var err error
	a.w, err = dwc.NewWriter(file, core, extensions...)
	return a, err
}

// add writes a record that leaves, and its event where that is new.
func (a *archive) add(o *dwc.Occurrence, r *spool.Record) error {
	table := 0
	if a.shape == shapeEvent {
		table = 1
		if err := a.event(o, r); err != nil {
			return err
		}
	} else if o.OccurrenceID == "" {
		a.visitsLeft++ // there is no place for a visit without an occurrence
	}
	if o.OccurrenceID != "" {
		a.occurrences++
		if err := a.write(table, o, r); err != nil {
			return err
		}
	}
	return a.measure(o, r)
}

func (a *archive) write(table int, o *dwc.Occurrence, r *spool.Record) error {
	return a.w.WriteText(table, func(b []byte) []byte { return a.rows[table].append(b, o, r) })
}

// measure writes what was measured: of the organism with its record, of the
// night once for its event. Where there are no events it goes with each record.
func (a *archive) measure(o *dwc.Occurrence, r *spool.Record) error {
	if a.measureAt == 0 || r.Facts.Blur > 0 && !a.exact {
		return nil
	}
	for _, m := range r.Measurements {
		m.OccurrenceID = o.OccurrenceID
		if a.shape == shapeEvent {
			m.EventID = o.EventID
			if m.Event {
				m.OccurrenceID = ""
				key := identity.Content(append([]string{"measurement"}, texts(&m)...))
				if a.measured[key] {
					continue
				}
				a.measured[key] = true
			}
		}
		if m.OccurrenceID == "" && (!m.Event || a.shape != shapeEvent) {
			continue
		}
		if err := a.w.Write(a.measureAt, &m); err != nil {
			return err
		}
	}
	return nil
}

// texts are the texts of a measurement's terms.
func texts(m *spool.Measurement) []string {
	var list []string
	for i := range dwc.TermsOf(dwc.RowMeasurement) {
		list = append(list, *m.Field(i))
	}
	return list
}

// event writes the record's event and its season, each once.
func (a *archive) event(o *dwc.Occurrence, r *spool.Record) error {
	if ids := [2]string{o.EventID, o.ParentEventID}; ids == a.last {
		a.compare(o.EventID, o.EventDate, notedOf(o))
		return nil
	} else {
		a.last = ids
	}
	defer a.compare(o.EventID, o.EventDate, notedOf(o))
	if o.ParentEventID != "" && a.isNew(o.ParentEventID) {
		season := seasonOf(o)
		if err := a.w.Write(0, &season); err != nil {
			return err
		}
	}
	if !a.isNew(o.EventID) {
		return nil
	}
	a.note(o.EventID, notedOf(o))
	return a.write(0, withoutNames(o), r)
}

// noted is what is written of a visit on the row of a record.
type noted struct{ fieldNotes, habitat string }

func notedOf(o *dwc.Occurrence) noted { return noted{o.FieldNotes, o.Habitat} }

// note keeps what the first record of an event says of it.
func (a *archive) note(event string, is noted) {
	if is != (noted{}) {
		a.noted[event] = noted{strings.Clone(is.fieldNotes), strings.Clone(is.habitat)}
	}
}

// compare notes where a record says of its event what the first of it does not.
// Each keeps its own words; the event has those of the first.
func (a *archive) compare(event, date string, is noted) {
	if is != (noted{}) && is != a.noted[event] {
		a.differing[event] = date
	}
}

// eventNotes tells of the events of which the records say different things.
func (a *archive) eventNotes() []string {
	if len(a.differing) == 0 {
		return nil
	}
	days := slices.Sorted(maps.Values(a.differing))
	return []string{fmt.Sprintf("On %s the weather, field notes or habitat are written differently from row to row (first on %s). The visit is handed in with those of its first row, each record with its own.", count(len(days), "visit"), days[0])}
}

func (a *archive) close(metadata *dwc.Dataset) error {
	a.w.SetMetadata(metadata)
	if err := a.w.Close(); err != nil {
		return err
	}
	return a.file.Close()
}

// abort gives the archive up; after close it does nothing.
func (a *archive) abort() {
	a.w.Abort()
	a.file.Close()
}
