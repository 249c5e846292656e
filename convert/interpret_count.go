package convert

import (
	"slices"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/convert/tally"
)

// count reads the counts, sexes and stages into one part for each occurrence.
// Where nothing was seen the draft is no record, and skip says so.
func (in *interpreter) count(d *draft) (parts []tally.Part, skip string) {
	if d.Empty {
		return []tally.Part{{}}, ""
	}
	status, stated := d.Get(layout.Status)
	if stated && saysAbsent(in.text(status)) {
		// The column says so itself, so a count of 0 is no "not recorded".
		var parts []tally.Part
		if c, found := d.Get(layout.Count); found {
			parts = tally.Read(in.text(c), tally.Options{ZeroIsAbsence: true}).Parts
		}
		if len(parts) == 0 {
			parts = []tally.Part{{}}
		}
		in.status(d, status, parts)
		return parts, ""
	}
	if parts, skip = in.counts(d); skip != "" {
		return nil, skip
	}
	parts = in.each(d, parts, layout.Sex, tally.ReadSex, func(p *tally.Part) *string { return &p.Sex })
	parts = in.each(d, parts, layout.Stage, tally.ReadStage, func(p *tally.Part) *string { return &p.LifeStage })
	parts = in.besideName(d, parts)
	if stated {
		in.status(d, status, parts)
	}
	return parts, ""
}

// counts reads the columns of counts, as one where there are several.
func (in *interpreter) counts(d *draft) (parts []tally.Part, skip string) {
	if len(d.shape.counts) == 0 {
		return []tally.Part{{}}, ""
	}
	columns, counts := in.columns[:0], in.counted[:0]
	o := tally.Options{ZeroIsAbsence: in.project.Reading.ZeroIsAbsence}
	for _, i := range d.shape.counts {
		v := &d.Values[i]
		counts = append(counts, v)
		o.Date = o.Date || v.Kind == notebook.Date
		columns = append(columns, tally.Column{Text: in.text(v), Sex: v.Sex, Stage: v.Stage})
	}
	in.columns, in.counted = columns, counts
	if in.answers.Len() > 0 && len(counts) > 1 {
		whole := joined(" + ", counts...)
		if text, answered := in.instead(&whole); answered {
			columns = []tally.Column{{Text: text}}
		}
	}
	r := in.tally(columns, o)
	if r.State != reading.Fair {
		whole := joined(" + ", counts...)
		if _, stated := d.Get(layout.Status); r.State == reading.Skipped && stated {
			r = tally.Reading{Parts: []tally.Part{{IndividualCount: "0"}}} // present, and none: that is asked about
		}
		in.note(d, r.Verdict, &whole)
		if r.State == reading.Skipped {
			return nil, "nothing seen (" + columns[0].Text + ")"
		}
	}
	if len(r.Parts) == 0 {
		return []tally.Part{{}}, ""
	}
	return r.Parts, ""
}

// besideName lays what stood beside the name ("larva", "2m 1f", "x3") over the
// parts. What says nothing of number, sex or stage is a remark.
func (in *interpreter) besideName(d *draft, parts []tally.Part) []tally.Part {
	if d.beside == "" {
		return parts
	}
	r := tally.Read(d.beside, tally.Options{})
	if r.State != reading.Fair {
		r = tally.ReadSex(d.beside) // a letter that may be a word elsewhere
	}
	if r.State != reading.Fair || len(r.Parts) == 0 || r.Parts[0].Absent {
		d.o.OccurrenceRemarks = joinRemarks(d.o.OccurrenceRemarks, d.beside)
		return parts
	}
	counted := len(parts) != 1 || parts[0].IndividualCount != "" || parts[0].OrganismQuantity != ""
	own, ownExact := (tally.Reading{Parts: parts}).Individuals()
	said, saidExact := r.Individuals()
	numbers := r.Parts[0].IndividualCount != "" || r.Parts[0].OrganismQuantity != ""
	switch {
	case !counted && numbers, counted && numbers && ownExact && saidExact && own == said && len(parts) == 1:
		return r.Parts
	case counted && numbers:
		in.besideDisagrees(d, "The number beside the name (“"+d.beside+"”) is not the count in its own column. The column is kept; check which is right.")
		return parts
	}
	q := &r.Parts[0]
	for i := range parts {
		p := &parts[i]
		for _, f := range []struct{ own, said *string }{{&p.Sex, &q.Sex}, {&p.LifeStage, &q.LifeStage}, {&p.Caste, &q.Caste}, {&p.Vitality, &q.Vitality}} {
			switch {
			case *f.own == "":
				*f.own = *f.said
			case *f.said != "" && *f.own != *f.said:
				in.besideDisagrees(d, "The words beside the name (“"+d.beside+"”) say “"+*f.said+"”, and the record says “"+*f.own+"” elsewhere. The latter is kept; check which is right.")
			}
		}
		p.Remarks = joinRemarks(p.Remarks, q.Remarks)
	}
	return parts
}

func (in *interpreter) besideDisagrees(d *draft, message string) {
	d.o.OccurrenceRemarks = joinRemarks(d.o.OccurrenceRemarks, d.beside)
	in.noteRecord(d, reading.QueryOf("counts-disagree", message), d.o.VerbatimIdentification, d.read.name.here())
}

func (in *interpreter) tally(columns []tally.Column, o tally.Options) tally.Reading {
	if len(columns) > 1 {
		return tally.Join(columns, o)
	}
	o.Sex, o.Stage = columns[0].Sex, columns[0].Stage
	return in.memory.count(columns[0].Text, o)
}

// each lays what a column for sex or stage says over the parts. A part that
// says otherwise itself is asked about.
func (in *interpreter) each(d *draft, parts []tally.Part, m layout.Meaning, read func(string) tally.Reading, field func(*tally.Part) *string) []tally.Part {
	v, found := d.Get(m)
	if !found {
		return parts
	}
	r := in.memory.label(m, in.text(v), read)
	in.note(d, r.Verdict, v)
	if len(r.Parts) > 1 {
		// The column has counts of its own ("2 m, 1 f"): they are the parts,
		// if the count beside them is nothing more than their sum.
		total, _ := r.Individuals()
		if own, exact := (tally.Reading{Parts: parts}).Individuals(); len(parts) == 1 && (!exact || own == total) {
			return slices.Clone(r.Parts)
		}
		in.noteRecord(d, reading.QueryOf("counts-disagree", "The numbers in “"+v.Text+"” do not add up to the count beside them. The count is kept; check which is right."), string(m)+" "+v.Text, v)
		return parts
	}
	if len(r.Parts) == 0 {
		return parts
	}
	for i := range parts {
		p, said := field(&parts[i]), field(&r.Parts[0])
		switch {
		case *p == "" || *p == *said:
			*p = *said
		case *said != "":
			in.noteRecord(d, reading.QueryOf("counts-disagree", "The count says “"+*p+"” and its "+string(m)+" column “"+v.Text+"”. The count is kept; check which is right."), *p+" and "+v.Text, v)
		}
		if parts[i].Caste == "" {
			parts[i].Caste = r.Parts[0].Caste
		}
		if parts[i].Vitality == "" {
			parts[i].Vitality = r.Parts[0].Vitality
		}
		parts[i].Remarks = joinRemarks(parts[i].Remarks, r.Parts[0].Remarks)
	}
	return parts
}

// status reads a column that says present or absent.
func (in *interpreter) status(d *draft, v *layout.Value, parts []tally.Part) {
	said := *v
	for i := range parts {
		if n := parts[i].IndividualCount; n != "" && n != "0" {
			said.Text = v.Text + ", with a count of " + n
			break
		}
	}
	text, answered := in.instead(&said)
	if !answered {
		text = in.text(v)
	}
	switch {
	case saysAbsent(text):
		for i := range parts {
			if parts[i].IndividualCount != "" && parts[i].IndividualCount != "0" {
				in.note(d, reading.HeldOf("absent-with-count", "The record says absent and gives a count of "+parts[i].IndividualCount+". Say which is right.", "present", "absent"), &said)
			}
			parts[i].Absent = true
		}
	case !saysPresent(text):
		in.note(d, reading.HeldOf("status-unknown", "“"+v.Text+"” says neither present nor absent.", "present", "absent"), v)
	}
}

func saysAbsent(status string) bool {
	switch strings.ToLower(status) {
	case "absent", "a", "n", "no", "not found", "none", "notdetected", "not detected":
		return true
	}
	return false
}

func saysPresent(status string) bool {
	switch strings.ToLower(status) {
	case "present", "p", "y", "yes", "detected":
		return true
	}
	return false
}

// fillPart gives the record what the part says.
func fillPart(p *tally.Part, r *spool.Record) {
	o := &r.Occurrence
	o.IndividualCount = p.IndividualCount
	o.OrganismQuantity, o.OrganismQuantityType = p.OrganismQuantity, p.OrganismQuantityType
	o.Sex, o.LifeStage, o.Caste, o.Vitality = p.Sex, p.LifeStage, p.Caste, p.Vitality
	o.OccurrenceRemarks = joinRemarks(o.OccurrenceRemarks, p.Remarks)
	o.OccurrenceStatus = "present"
	if p.Absent {
		o.OccurrenceStatus = "absent"
	}
	if n, ok := wholeNumber(p.IndividualCount); ok {
		r.Facts.Count, r.Facts.Counted = n, true
	}
}

// wholeNumber reads a count of at most nine figures.
func wholeNumber(s string) (n int32, ok bool) {
	if s == "" || len(s) > 9 {
		return 0, false
	}
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
		n = n*10 + int32(s[i]-'0')
	}
	return n, true
}

// joinRemarks joins two remarks, leaving out what is empty or said already.
func joinRemarks(a, b string) string {
	switch {
	case b == "" || a == b:
		return a
	case a == "":
		return b
	}
	return a + "; " + b
}
