package reading

// Finding is a verdict about one value or one whole record, with what was
// written and where, so that somebody can be asked about it.
type Finding struct {
	Verdict
	// About says what kind of thing was read: "date", "name", "count",
	// "grid reference" and so on as in layout.Meaning, or "record" where a
	// check concerns the record as a whole.
	About string
	// Written is the value as it stands in the notebook; empty for a whole
	// record.
	Written string
	// Cells are the addresses concerned, such as "B7".
	Cells []string
}

// Worst returns the worst state among the findings, Fair where there are none.
func Worst(findings []Finding) State {
	worst := Fair
	for i := range findings {
		worst = max(worst, findings[i].State)
	}
	return worst
}
