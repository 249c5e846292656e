package convert

import (
	"context"

	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// setView is what the second pass learns of the records as a set.
type setView struct {
	checks *validate.Set
	// ordinals holds the records, by number, whose content another record
	// before them has too.
	ordinals map[int]int
	// used knows which terms, and so which columns, have a value at all.
	used, usedByEvents *dwc.Used
	measured           bool
	// visits and chances count the records that belong to a trap night or
	// visit, and those that do not.
	visits, chances int
	coverage        coverage
}

// compareAll looks at the records as a set: at those that can be handed in
// for the columns and the coverage, at all of them for the checks.
func compareAll(ctx context.Context, s *settings, rows *spool.Spool) (*setView, error) {
	v := &setView{
		checks:       validate.NewSet(),
		ordinals:     map[int]int{},
		used:         dwc.NewUsed(dwc.RowOccurrence),
		usedByEvents: dwc.NewUsed(dwc.RowEvent),
	}
	times := map[[16]byte]int32{}
	var row spool.Row
	n := 0
	err := rows.Each(func(encoded []byte) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := spool.Decode(encoded, &row); err != nil {
			return err
		}
		for i := range row.Records {
			r := &row.Records[i]
			times[r.Content]++
			if k := times[r.Content]; k > 1 {
				v.ordinals[n] = int(k)
			}
			if !r.EmptyVisit {
				v.checks.Observe(n, r.Content, &r.Occurrence, &r.Facts)
			}
			if r.State() < reading.Held {
				v.handIn(s, r)
			}
			n++
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	v.checks.Settle()
	return v, nil
}

// handIn takes in a record that can be handed in, as it may leave.
func (v *setView) handIn(s *settings, r *spool.Record) {
	o := s.public(r)
	if isVisit(r) {
		v.visits++
	} else {
		v.chances++
	}
	e := eventOf(&o, r)
	v.usedByEvents.Add(&e)
	if r.EmptyVisit {
		return
	}
	v.used.Add(&o)
	v.measured = v.measured || len(r.Measurements) > 0 && r.Facts.Blur == 0
	v.coverage.add(&o)
}

// shape chooses between an archive of occurrences and one of events.
func (v *setView) shape(s *settings) string {
	if shape := s.project.Dataset.Shape; shape != "" {
		return shape
	}
	if v.visits > 0 {
		return shapeEvent
	}
	return shapeOccurrence
}
