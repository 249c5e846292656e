package layout

// minAndMax takes a column headed “Max” beside one of least temperatures for
// the greatest.
func (b *block) minAndMax() {
	least := false
	for i := range b.cols {
		switch key := normHeading(b.cols[i].heading); key {
		case "min", "minimum":
			least = least || b.cols[i].used() && b.cols[i].meaning == Temperature
		}
	}
	if !least {
		return
	}
	for i := range b.cols {
		c := &b.cols[i]
		if key := normHeading(c.heading); (key == "max" || key == "maximum") && !c.fixed && c.stats.numbers > 0 {
			c.sense, c.left, c.why, c.weight = sense{meaning: Temperature}, "", "the heading “"+c.heading+"” beside the least", weightExact
		}
	}
}
