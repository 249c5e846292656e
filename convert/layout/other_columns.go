package layout

import "fieldfare/convert/notebook"

// notUnderstood keeps a column whose heading says nothing known, behind its
// heading in the remarks, so that nothing of it is lost, and asks about it. One
// without a heading is left out.
func (b *block) notUnderstood(c *column) {
	name := notebook.ColumnName(c.col + 1)
	if c.heading == "" {
		b.note("column-not-understood", "Column "+name+" has no heading and is not understood and its cells are left out. Say in the project file what it holds, for example "+
			name+` = "remarks", or "ignored".`, c.col)
		return
	}
	c.sense, c.left, c.why, c.weight = sense{meaning: Remarks}, "", "its heading says nothing that is known", accepted
	b.note("column-not-understood", "Column "+name+", headed “"+c.heading+"”, is not understood. Its cells are kept in the remarks, behind its heading. Say in the project file what it holds, for example "+
		name+` = "remarks", or "ignored".`, c.col)
}

// needsHeading reports whether what stands in the column of remarks says
// nothing without its heading: "Box", "Evidence".
func (c *column) needsHeading() bool {
	if c.meaning != Remarks || c.heading == "" {
		return false
	}
	labelled := true
	for _, m := range headingSenses(c.heading, false) {
		switch {
		case m.meaning == Remarks:
			return m.labelled
		case m.meaning == Site || m.meaning == Taxon || m.meaning == Method:
			labelled = false // a second column of places, kept as it stands
		}
	}
	return labelled
}
