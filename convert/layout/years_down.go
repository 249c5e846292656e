package layout

import "regexp"

// yearsDown reports whether a table is of one species, named above it, with
// years down its side and months across.
func (p *page) yearsDown(i int, r *keptRow, body []keptRow, cols []int) bool {
	for _, c := range cols {
		if !r.look(c).is(lookMonth) && !isTotalHeading(r.text(c)) {
			return false
		}
	}
	years, rows := 0, 0
	for j := range body {
		if l := body[j].look(r.firstBefore(cols[0], body)); l != 0 && !l.is(lookTotal) {
			rows++
			if l.is(lookYear) {
				years++
			}
		}
	}
	return years >= 2 && years == rows && p.titleNames(i)
}

// firstBefore is the column that stands left of the counts: that of the heading,
// or where there is none, of the first row.
func (r *keptRow) firstBefore(count int, body []keptRow) int {
	if r.first >= 0 && r.first < count {
		return r.first
	}
	if len(body) > 0 && body[0].first < count {
		return body[0].first
	}
	return -1
}

// monthsOnly reports whether the headings over the counts are months without a
// year, which a column of years beside them completes.
func (a *axis) monthsOnly() bool {
	n := 0
	for i := range a.cols {
		ac := &a.cols[i]
		if ac.left != "" {
			continue
		}
		v := ac.get(Date)
		if v == nil || scanDate(v.Text).hasYear() {
			return false
		}
		n++
	}
	return n > 0
}

// rowYear is the column of years that completes the dates over the counts, -1
// for none.
func (b *block) rowYear() int {
	if b.axis == nil || b.axis.species || !b.axis.monthsOnly() {
		return -1
	}
	for i := range b.cols {
		if c := &b.cols[i]; c.used() && c.master == i && c.meaning == Date && c.stats.n > 0 && c.stats.share(lookYear) >= 0.9 {
			return c.col
		}
	}
	return -1
}

// ofRowYear completes the date over a count by the year of its row, and drops
// the year itself.
func (d *Draft) ofRowYear(col int) {
	at := -1
	for i := range d.Values {
		if v := &d.Values[i]; v.Meaning == Date && v.Ref.Col == col+1 && v.From != FromHeading {
			at = i
		}
	}
	if at < 0 {
		return
	}
	year, ok := isInt(d.Values[at].Text)
	for i := range d.Values {
		if v := &d.Values[i]; ok && i != at && v.Meaning == Date && v.From == FromHeading {
			if v.Verbatim == "" {
				v.Verbatim = v.Text + " / " + d.Values[at].Text
			}
			v.Text = addYear(v.Text, year)
			d.Values = append(d.Values[:at], d.Values[at+1:]...)
			return
		}
	}
}

// yearLine is a line below a list that says of which year all of it is.
var yearLine = regexp.MustCompile(`(?i)^(?:(?:the )?year(?: was| of records?)?:?|all (?:records?|dates?|nights?|counts?)(?: are| were)?(?: from| of| in)?:?|season:?)? *((?:18|19|20)[0-9]{2})\.?$`)

// yearAtFoot takes the year of a page whose last lines say it, where nothing
// above does.
func (p *Plan) yearAtFoot(f *facts) {
	pg := p.page
	if !pg.complete || f.year > 0 {
		return
	}
	for i, lines := len(pg.rows)-1, 0; i > 1 && lines < 4; i-- {
		r := &pg.rows[i]
		if r.n == 0 {
			continue
		}
		c := r.single()
		if c < 0 {
			return
		}
		lines++
		if m := yearLine.FindStringSubmatch(r.text(c)); m != nil && pg.headsNoYear(i) {
			f.setYear(m[1], FromPage, "the line below the list")
			used := make([]bool, len(r.cells))
			for j := range used {
				used[j] = r.looks[j] != 0
			}
			p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipTitle, used: used})
			return
		}
	}
}

// headsNoYear reports whether no cell above a row is a year or a date with one.
func (p *page) headsNoYear(end int) bool {
	for i := range end {
		if p.rows[i].count(lookYear|lookDate|lookRealDate, 0, len(p.rows[i].looks)) > 0 {
			return false
		}
	}
	return true
}
