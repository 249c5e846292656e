package layout

import (
	"strings"

	"fieldfare/convert/notebook"
)

// trapCounts finds columns headed by a trap or a lamp that hold its counts:
// "MV | Actinic | Total".
func (b *block) trapCounts() {
	if b.axis != nil {
		return
	}
	var traps []*column
	var plain *column
	for i := range b.cols {
		c := &b.cols[i]
		switch {
		case c.master != i || c.stats.n == 0:
		case !c.fixed && !(c.used() && c.meaning == Count && c.weight >= weightContained) && c.headsTrap() && c.stats.share(lookCount) >= 0.8 && c.stats.numbers*10 >= c.stats.n*7 && !c.stats.watts():
			traps = append(traps, c)
		case c.used() && c.meaning == Count && c.sex == "" && c.stage == "" && !isTotalHeading(c.heading):
			plain = c
		case c.used() && c.meaning == Count && c.sex+c.stage != "":
			return
		}
	}
	if len(traps) == 0 || plain != nil && !(len(traps) > 1 && b.isSum(plain, traps)) {
		return // beside counts, the number of a trap
	}
	for _, c := range traps {
		c.sense, c.left, c.trap, c.weight = sense{meaning: Count}, "", true, weightExact
		c.why = "its cells are counts, its heading names the trap"
	}
	b.leaveTotals()
}

// trapped reports whether the list counts by trap.
func (b *block) trapped() bool {
	for i := range b.cols {
		if b.cols[i].trap {
			return true
		}
	}
	return false
}

// headsTrap: the heading names a trap or lamp by kind or number. "Trap" alone
// heads its number or name.
func (c *column) headsTrap() bool {
	low := strings.ToLower(trim(c.heading))
	if low == "" || low == "trap" || strings.HasPrefix(low, "trap n") || strings.HasPrefix(low, "trap id") {
		return false
	}
	for w := range strings.FieldsSeq(low) {
		w = strings.Trim(w, ".,:()")
		if w == "trap" || methodWord(w) && w != "light" && w != "lamp" && w != "w" {
			return !strings.Contains(low, "watt") && !strings.Contains(low, "no of") && !strings.Contains(low, "number") && !strings.Contains(low, "hour") && !strings.Contains(low, "type")
		}
	}
	return false
}

// watts: the numbers are those of lamps.
func (s *stats) watts() bool {
	for t := range s.distinct {
		switch strings.TrimRight(strings.ToLower(t), " w") {
		case "6", "8", "15", "20", "22", "30", "36", "40", "60", "80", "100", "125", "160", "250", "400":
		default:
			return false
		}
	}
	return s.n >= 3 || len(s.distinct) == 1 && s.n > 1
}

// perTrap makes a draft of each trap's, or each weekday's, count on a row.
func (w *walker) perTrap(r *notebook.Row, b *block, s *listState) {
	w.base.Row, w.base.Values, w.base.Empty = r.Number, w.base.Values[:0], false
	w.fill(r, b, s, &w.base)
	rest := make([]Value, 0, len(w.base.Values))
	var counts []Value
	for _, v := range w.base.Values {
		if pl := s.planAt(v.Ref.Col - 1); v.Meaning == Count && pl != nil && pl.column.trap {
			counts = append(counts, v)
		} else {
			rest = append(rest, v)
		}
	}
	if len(counts) == 0 {
		d := w.newDraft(r)
		d.Values = append(d.Values, rest...)
	}
	for _, v := range counts {
		d := w.newDraft(r)
		d.Values = append(d.Values, rest...)
		if day := s.planAt(v.Ref.Col - 1).column.weekday; day != "" {
			d.Values = append(d.Values, v)
			onWeekday(d, day)
			continue
		}
		d.Values = append(d.Values, v, trapOf(&v, b))
	}
}

// planAt is the plan of a column from 0, nil where it has none.
func (s *listState) planAt(c int) *cellPlan {
	if c < 0 || c >= len(s.byCol) || s.byCol[c] < 0 {
		return nil
	}
	return &s.plans[s.byCol[c]]
}

// trapOf is the trap that the heading of a count names: its kind is the
// method, a bare number goes to the remarks.
func trapOf(count *Value, b *block) Value {
	v := Value{Meaning: Method, Text: count.Heading, Kind: notebook.Text, From: FromHeading, Ref: notebook.Ref{Col: count.Ref.Col, Row: b.first}}
	if len(b.headRows) > 0 {
		v.Ref.Row = b.headRows[len(b.headRows)-1]
	}
	if c := b.byCol[count.Ref.Col-1]; c >= 0 && !b.cols[c].headsTrap() {
		askUnnamed(&v, b.cols[c].fixed)
		return v
	}
	if rest, ok := strings.CutPrefix(strings.ToLower(v.Text), "trap"); ok && len(trim(rest)) <= 2 {
		v.Meaning, v.Heading = Remarks, "trap"
	}
	return v
}
