package layout

import (
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// joined reads columns that make one value together.
func (w *walker) joined(r *notebook.Row, s *listState, d *Draft, pl *cellPlan, mask *uint64) {
	texts := make([]string, len(pl.joined))
	any, first := false, -1
	doubt := pl.value.Doubt
	for i, c := range pl.joined {
		if c >= len(r.Cells) || !HasText(&r.Cells[c]) {
			continue
		}
		cell := &r.Cells[c]
		if cell.Struck {
			w.left[skipStruck]++
			continue
		}
		w.out.Used++
		t, dt := tidy(trim(cell.Text))
		if dt.State != reading.Fair {
			doubt = doubt.And(dt)
		}
		if isDitto(t) {
			if pl.name {
				doubt = doubt.And(reading.HeldOf("ditto-not-read", "“"+t+"” stands in a column of names. A mark that repeats what is above is not read for names. Please write it out."))
			} else {
				any = true
				continue
			}
		}
		texts[i], any = t, true
		if first < 0 {
			first = c
		}
	}
	if !any {
		return
	}
	verbatim := strings.Join(present(texts), " ")
	if pl.carry { // parts left blank or marked repeat the part above
		for i := range texts {
			if texts[i] == "" && pl.has && i < len(pl.parts) && pl.column.part != whole {
				texts[i] = pl.parts[i]
			}
		}
	}
	v := pl.value
	v.Kind = notebook.Text
	v.Doubt = doubt
	v.Ref = notebook.Ref{Col: max(first, pl.joined[0]) + 1, Row: r.Number}
	if first >= 0 {
		v.Ref.Col = first + 1
	}
	switch pl.column.meaning {
	case Date:
		v.Text = s.joinDate(pl, texts)
	case GridRef:
		var lost reading.Verdict
		v.Text, lost = joinGridText(pl, s, texts)
		if lost.State != reading.Fair {
			v.Doubt = v.Doubt.And(lost)
		}
	case Recorder, Determiner, Verifier:
		v.Text = strings.Join(present(texts), "; ")
	default:
		v.Text = strings.Join(present(texts), " ")
	}
	if v.Text == "" {
		return
	}
	if len(pl.joined) > 1 {
		v.Verbatim = verbatim
	}
	if v.Verbatim == v.Text {
		v.Verbatim = ""
	}
	if pl.date {
		s.completeDate(&v)
		s.dateNew = pl.differs(&v)
	}
	d.Values = append(d.Values, v)
	*mask |= pl.bit
	pl.seen, pl.explicit = true, texts[0] != ""
	if pl.carry {
		pl.last, pl.has, pl.parts = v, true, texts
	}
}

func present(texts []string) []string {
	var out []string
	for _, t := range texts {
		if t != "" {
			out = append(out, t)
		}
	}
	return out
}

// joinDate joins day, month and year columns.
func (s *listState) joinDate(pl *cellPlan, texts []string) string {
	if strings.Trim(texts[0], "?- ") == "" {
		texts = texts[1:] // a day that nobody knew
	}
	texts = present(texts)
	numbers := true
	for _, t := range texts {
		if _, ok := isInt(t); !ok {
			numbers = false
		}
	}
	if numbers {
		return strings.Join(texts, "/")
	}
	if pl.column.part == whole && len(texts) == 2 { // a date and its year
		if y, ok := isInt(texts[1]); ok && !scanDate(texts[0]).hasYear() {
			return addYear(texts[0], y)
		}
	}
	return strings.Join(texts, " ")
}

// joinGridText joins letters and figures, or easting and northing. Figures of
// unequal length have lost their leading zeros.
func joinGridText(pl *cellPlan, s *listState, texts []string) (string, reading.Verdict) {
	var doubt reading.Verdict
	n := len(texts)
	if n >= 2 && s.isPair(pl) && texts[n-2] != "" && texts[n-1] != "" {
		e, nn := texts[n-2], texts[n-1]
		_, okE := isInt(e)
		_, okN := isInt(nn)
		if okE && okN && len(e) != len(nn) && n == 3 {
			size := max(len(e), len(nn))
			pe, pn := strings.Repeat("0", size-len(e))+e, strings.Repeat("0", size-len(nn))+nn
			doubt = reading.QueryOf("leading-zero-lost", "The easting “"+e+"” and the northing “"+nn+"” have different numbers of figures: the spreadsheet has probably dropped a leading zero. It is read as "+pe+" "+pn+".", texts[0]+" "+pe+" "+pn)
			e, nn = pe, pn
		}
		return strings.Join(present(append(append([]string{}, texts[:n-2]...), e, nn)), " "), doubt
	}
	if n == 2 && len(texts[0]) > 2 && allDigits(texts[1]) {
		return figuresInSquare(texts[0], texts[1])
	}
	if f := texts[n-1]; n == 2 && len(texts[0]) == 2 && allDigits(f) && len(f)%2 == 1 {
		original := texts[0] + "0" + f
		return original, reading.QueryOf("leading-zero-lost", "“"+f+"” has an odd number of figures: the spreadsheet has probably dropped a leading zero. It is read as "+original+".", original)
	}
	return strings.Join(present(texts), ""), doubt
}

// isPair reports whether the last two joined columns are easting and northing.
func (s *listState) isPair(pl *cellPlan) bool {
	last := pl.joined[len(pl.joined)-1]
	return s.plans[s.byCol[last]].column.part == partNorthing
}

// split takes the value just added apart.
func (w *walker) split(s *listState, d *Draft, pl *cellPlan, mask *uint64) {
	v := &d.Values[len(d.Values)-1]
	all := v.Text
	said := all
	if v.Verbatim != "" {
		said = v.Verbatim
	}
	switch pl.column.split {
	case splitNameCount:
		name, count, ok := splitNameCountText(all)
		if !ok {
			return
		}
		v.Text, v.Verbatim = name, said
		c := *v
		c.Meaning, c.Text = Count, count
		d.Values = append(d.Values, c)
		*mask |= s.bits[Count]
	case splitMarks:
		d.splitMarked(pl.column.marks)
	case splitSiteGrid:
		a, b := gridRefIn(all)
		if a < 0 && scanGridRef(all) {
			v.Meaning = GridRef
			*mask |= s.bits[GridRef]
		}
		if a < 0 {
			return
		}
		site := trim(strings.Trim(all[:a]+" "+trim(all[b:]), " ,;-–()[]|:"))
		if s.rowYear > 0 {
			site = trim(strings.Trim(cutYear(site), " ,;-–()[]|:"))
		}
		g := *v
		g.Meaning, g.Text, g.Verbatim = GridRef, all[a:b], said
		*mask |= s.bits[GridRef]
		if site != "" {
			v.Text, v.Verbatim = site, said
			d.Values = append(d.Values, g)
		} else {
			*v = g
		}
	}
}
