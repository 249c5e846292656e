package terms

import (
	"encoding/json"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
)

// measurements gives a draft the measurements of a cell, each followed by what
// other columns say of it.
func (p *Page) measurements(r *notebook.Row, at int, v layout.Value, d *layout.Draft) {
	values := notebook.SplitMeasurements(v.Text)
	about := map[int][]string{} // by column
	for i := range p.columns {
		c := &p.columns[i]
		if c.about == "" || c.heading != p.columns[at].heading || c.meaning != v.Meaning || i >= len(r.Cells) {
			continue
		}
		about[i] = notebook.SplitMeasurements(strings.TrimSpace(r.Cells[i].Text))
	}
	for n, text := range values {
		if text == "" {
			continue
		}
		v.Text = text
		d.Values = append(d.Values, v)
		for i := range p.columns {
			if texts := about[i]; n < len(texts) && texts[n] != "" {
				d.Values = append(d.Values, layout.Value{
					Meaning: layout.AboutMeasurement, Text: texts[n], Heading: p.columns[i].about, From: v.From,
					Ref: notebook.Ref{Col: i + 1, Row: r.Number},
				})
			}
		}
	}
}

// further keeps the values of terms that a record has no place for among its
// dynamic properties, as JSON, which is how Darwin Core's examples have them.
func (p *Page) further(r *notebook.Row, columns []int, d *layout.Draft) {
	properties := map[string]string{}
	for _, i := range columns {
		properties[p.columns[i].heading] = strings.TrimSpace(r.Cells[i].Text)
	}
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(properties); err != nil {
		return // texts always have a JSON
	}
	text := strings.TrimSpace(b.String())
	for i := range d.Values {
		if v := &d.Values[i]; v.Heading == "dynamicProperties" {
			v.Text, v.Verbatim = v.Text+" | "+text, v.Text
			return
		}
	}
	d.Values = append(d.Values, layout.Value{
		Meaning: layout.Term, Text: text, Heading: "dynamicProperties", From: layout.FromCell,
		Ref: notebook.Ref{Col: columns[0] + 1, Row: r.Number},
	})
}
