package layout

import (
	"fmt"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// differs reports whether a value is another than the one above it.
func (pl *cellPlan) differs(v *Value) bool { return pl.has && v.Text != pl.last.Text }

// carryDown repeats what stands above where the row's own cell is blank.
func (w *walker) carryDown(r *notebook.Row, s *listState, d *Draft, mask *uint64) {
	ownDate := false
	for _, i := range s.carries {
		if pl := &s.plans[i]; pl.date && pl.explicit {
			ownDate = true
		}
	}
	for _, i := range s.carries {
		pl := &s.plans[i]
		if pl.seen || !pl.has {
			continue
		}
		if pl.visit && (ownDate || s.siteNew || s.whoNew) || pl.place && s.siteNew || *mask&pl.bit != 0 {
			continue
		}
		if pl.method && (s.siteNew || s.whoNew) {
			w.methodEnds(r, s, pl)
			continue
		}
		v := pl.last
		v.From = FromAbove
		switch {
		case pl.rareGap && !pl.visit:
			v.Doubt = v.Doubt.And(reading.QueryOf("gap-filled-from-above", "This row has no "+string(pl.column.meaning)+" of its own, while nearly all others have. “"+v.Text+"” was taken from "+v.Ref.String()+" above.", v.Text))
		case pl.method && s.dateNew:
			v.Doubt = v.Doubt.And(reading.QueryOf(methodOfAnotherDate, "Rows of another date below “"+v.Text+"” have no "+pl.says()+" of their own. It was taken to be the same. If it was not, write what was used beside the date.", v.Text))
		case pl.column.meaning == Recorder && s.siteNew:
			v.Doubt = v.Doubt.And(reading.QueryOf("recorder-of-another-site", "Rows of another site below “"+v.Text+"” have no recorder of their own. It was taken to be the same. If it was not, write who recorded there.", v.Text))
		}
		d.Values = append(d.Values, v)
		*mask |= pl.bit
		if pl.method && s.dateNew { // the doubt holds for all rows of that date
			pl.last.Doubt = v.Doubt
		}
	}
	if s.siteNew { // what belonged to the old site goes with it
		for _, i := range s.carries {
			if pl := &s.plans[i]; (pl.place || pl.visit) && !pl.explicit {
				pl.has = false
			}
		}
	}
	if ownDate || s.whoNew {
		for _, i := range s.carries {
			if pl := &s.plans[i]; pl.visit && !pl.explicit {
				pl.has = false
			}
		}
	}
}

// methodEnds asks about a trap or lamp that stands above where the row names
// another site or recorder, and is not carried there.
func (w *walker) methodEnds(r *notebook.Row, s *listState, pl *cellPlan) {
	other := "site"
	if !s.siteNew {
		other = "recorder"
	}
	w.out.Notes = append(w.out.Notes, Note{Verdict: reading.QueryOf("method-not-carried", fmt.Sprintf(
		"“%s” stands above, but the rows below it that name another %s have no %s of their own, so none is taken for them. Write there what was used.", pl.last.Text, other, pl.says())),
		Ref: cellRef(pl.column.col, r.Number), Text: pl.last.Text})
	pl.has = false
}

// says is what the plan's column is headed as, for a message.
func (pl *cellPlan) says() string {
	if pl.column.heading != "" {
		return "“" + pl.column.heading + "”"
	}
	return string(pl.column.meaning)
}
