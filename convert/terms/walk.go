package terms

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/gridref"
)

// Why a cell is left out.
const (
	notUnderstood = "column not understood"
	repeatedTerm  = "term stated in another column"
)

// Walk yields what became of every row: one draft, or why there is none.
func (p *Page) Walk(s notebook.Sheet, fn func(*layout.Outcome) error) error {
	var out layout.Outcome
	drafts := make([]layout.Draft, 1)
	return s.Walk(func(r *notebook.Row) error {
		out = layout.Outcome{Row: r, Left: map[string]int{}}
		switch {
		case r.Number == p.heads:
			out.Skip, out.Used = "headings", withText(r)
			if p.leftOut == "" {
				out.Notes = p.notUnderstood()
			}
		case p.leftOut != "":
			out.Skip = p.leftOut
			out.Left[p.leftOut] = withText(r)
		case p.entry.Skips(r.Number):
			out.Skip = layout.LeftOut
			out.Left[layout.LeftOut] = withText(r)
		default:
			d := layout.Draft{Row: r.Number, Values: drafts[0].Values[:0]}
			p.draft(r, &d, &out)
			if len(d.Values) == 0 {
				out.Skip = "blank"
			} else {
				drafts[0] = d
				out.Drafts = drafts
			}
		}
		if r.Repaired != "" && p.archive {
			out.Notes = append(out.Notes, layout.Note{Verdict: reading.QueryOf("row-repaired", r.Repaired+" Check the row in the archive."), Ref: notebook.Ref{Col: 1, Row: r.Number}, Text: firstText(r)})
			r.Repaired = "" // said
		}
		return fn(&out)
	})
}

// withText counts the cells with text.
func withText(r *notebook.Row) int {
	n := 0
	for i := range r.Cells {
		if strings.TrimSpace(r.Cells[i].Text) != "" {
			n++
		}
	}
	return n
}

func firstText(r *notebook.Row) string {
	for i := range r.Cells {
		if text := strings.TrimSpace(r.Cells[i].Text); text != "" {
			return text
		}
	}
	return ""
}

func (p *Page) draft(r *notebook.Row, d *layout.Draft, out *layout.Outcome) {
	squared := p.squared(r)
	var further []int // columns of terms that a record has no place for
	for i := range r.Cells {
		cell := &r.Cells[i]
		text := strings.TrimSpace(cell.Text)
		if text == "" {
			continue
		}
		if i >= len(p.columns) || p.columns[i].meaning == "" {
			if i < len(p.columns) && p.columns[i].ignored {
				out.Left[layout.LeftOut]++
			} else {
				out.Left[notUnderstood]++
			}
			continue
		}
		c := &p.columns[i]
		if c.first >= 0 && strings.TrimSpace(r.Cells[c.first].Text) != "" {
			out.Left[repeatedTerm]++
			continue
		}
		out.Used++
		if c.about != "" {
			continue // told with its measurement
		}
		if c.term == "" && c.meaning == layout.Term {
			further = append(further, i)
			continue
		}
		v := layout.Value{Meaning: c.meaning, Text: text, Raw: cell.Raw, Kind: cell.Kind, Heading: c.heading, Ref: notebook.Ref{Col: i + 1, Row: r.Number}, From: layout.FromCell}
		if c.term != "" {
			v.Heading = c.term
		}
		if squared {
			switch c.meaning {
			case layout.Latitude, layout.Longitude, layout.Uncertainty:
				v.Meaning = layout.Term
			}
			if c.term == "verbatimCoordinates" {
				v.Meaning = layout.GridRef
			}
		}
		if c.term == "" {
			p.measurements(r, i, v, d)
			continue
		}
		d.Values = append(d.Values, v)
	}
	if len(further) > 0 {
		p.further(r, further, d)
	}
	if len(d.Values) == 0 {
		return
	}
	if p.value(r, "eventDate") == "" {
		p.dateOfParts(r, d)
	}
	p.addFacts(d)
	// An event of its own, of an archive whose core are events.
	d.Empty = p.value(r, "eventID") != "" && p.value(r, "occurrenceID") == "" && p.value(r, "scientificName") == "" &&
		p.value(r, "vernacularName") == "" && p.value(r, "verbatimIdentification") == "" && p.value(r, "individualCount") == ""
}

// addFacts gives a row what the project file says of all of them and the row
// does not say itself.
func (p *Page) addFacts(d *layout.Draft) {
	for _, name := range slices.Sorted(maps.Keys(p.entry.Facts)) {
		m, ok := layout.FactMeaning(name)
		if _, said := d.Get(m); ok && !said {
			d.Values = append(d.Values, layout.Value{Meaning: m, Text: strings.TrimSpace(p.entry.Facts[name]), From: layout.FromProject})
		}
	}
}

func (p *Page) value(r *notebook.Row, term string) string {
	i, found := p.at[term]
	if !found || i >= len(r.Cells) {
		return ""
	}
	return strings.TrimSpace(r.Cells[i].Text)
}

// dateOfParts gives a row its date from year, month and day, or else from
// what was written.
func (p *Page) dateOfParts(r *notebook.Row, d *layout.Draft) {
	term := "year"
	text := p.value(r, "year")
	if text == "" {
		term = "verbatimEventDate"
		text = p.value(r, term)
	}
	if text == "" {
		return
	}
	v := layout.Value{Meaning: layout.Date, Text: text, Heading: term, From: layout.FromCell, Ref: notebook.Ref{Col: p.at[term] + 1, Row: r.Number}}
	if term == "year" {
		v.Text, v.Verbatim = joinedDate(text, p.value(r, "month"), p.value(r, "day")), text
	}
	d.Values = append(d.Values, v)
}

// joinedDate puts the parts of a date together as the reader of dates takes
// them: figures as ISO 8601 has them, other words as people write them. What is
// neither is told apart by its names, so that it is asked about and no figure
// is taken for another part. A day without a month is left out: it says nothing.
func joinedDate(year, month, day string) string {
	m, numbered := twoFigures(month)
	d, plain := twoFigures(day)
	switch {
	case month == "":
		return year
	case numbered && len(year) == 4 && day == "":
		return fmt.Sprintf("%s-%02d", year, m)
	case numbered && len(year) == 4 && plain:
		return fmt.Sprintf("%s-%02d-%02d", year, m, d)
	case numbered && m >= 1 && m <= 12:
		return strings.TrimSpace(fmt.Sprintf("%s %s %s", day, time.Month(m), year))
	case strings.ContainsAny(month, "0123456789"):
		return strings.TrimSuffix(fmt.Sprintf("year %s, month %s, day %s", year, month, day), ", day ")
	}
	return strings.TrimSpace(day + " " + month + " " + year)
}

// twoFigures reads a number of one or two figures.
func twoFigures(s string) (int, bool) {
	n, err := strconv.ParseUint(s, 10, 8)
	return int(n), err == nil && len(s) <= 2
}

// squared tells whether the row's place is read from its grid reference: it
// has one, and its latitude and longitude, where stated, are those of the
// square's centre.
func (p *Page) squared(r *notebook.Row) bool {
	text := p.value(r, "verbatimCoordinates")
	if text == "" {
		return false
	}
	lat, lon := p.value(r, "decimalLatitude"), p.value(r, "decimalLongitude")
	if lat == "" && lon == "" {
		return true
	}
	reading, err := gridref.Parse(text)
	if err != nil || reading.Geographic() {
		return false
	}
	y, errLat := strconv.ParseFloat(lat, 64)
	x, errLon := strconv.ParseFloat(lon, 64)
	if errLat != nil || errLon != nil {
		return false
	}
	c := reading.Centre()
	// Half a metre: more than rounding to six decimals takes away.
	return math.Abs(c.Lat-y) < 5e-6 && math.Abs(c.Lon-x)*math.Cos(y*math.Pi/180) < 5e-6
}
