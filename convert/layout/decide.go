package layout

import "sort"

const accepted = 30 // the least score that gives a column a meaning

// decideColumn chooses what a column means from its heading and its content.
func decideColumn(c *column, top, bottom string, terms bool) {
	type option struct {
		sense
		score int
		why   string
	}
	var options []option
	for _, m := range twoRowSenses(top, bottom, terms) {
		a := agree(m.sense, &c.stats)
		// A doubtful word needs the content's support.
		if m.weight <= weightMisspelt && a <= 0 && c.stats.n > 0 && m.weight < weightContained {
			a -= 10
		}
		options = append(options, option{m.sense, m.weight + a, m.why})
	}
	headed := false
	if ms := twoRowSenses(top, bottom, terms); len(ms) > 0 {
		headed = ms[0].weight >= weightExact-5 && !(isName(ms[0].meaning) && ms[0].meaning != TaxonNumber && agree(ms[0].sense, &c.stats) <= -60 && c.stats.numbers == c.stats.n && c.stats.upTo(500) >= 1)
	}
	for _, m := range contentSenses(&c.stats) {
		if headed && m.meaning == Date && options[0].meaning == Count && c.stats.share(lookDate) == 0 {
			continue // 2-4 became 2 April
		}
		if headed && (m.meaning == Count || m.meaning == Ignored || m.meaning == Remarks) {
			continue // figures and sentences say too little against a plain heading
		}
		options = append(options, option{m.sense, m.weight, m.why})
	}
	if top+bottom == "" && c.stats.n >= 2 && c.stats.cells(lookTick) == c.stats.n && c.stats.numbers == 0 {
		options = append(options, option{sense{meaning: Count}, 38, "its cells are ticks"})
	}
	sort.SliceStable(options, func(i, j int) bool { return options[i].score > options[j].score })
	if len(options) == 0 || options[0].score < accepted {
		c.sense = sense{meaning: Ignored}
		c.left = leaveNotUnderstood
		if c.stats.n == 0 && c.stats.ditto == 0 {
			c.left = leaveEmpty
		}
		return
	}
	c.sense, c.why, c.weight = options[0].sense, options[0].why, options[0].score
	if c.meaning == Ignored {
		c.left = c.leave
	}
}

const (
	leaveNotUnderstood = "column not understood"
	leaveEmpty         = "empty column"
	leaveSecond        = "second column of the same meaning"
)

// twoRowSenses judges headings over two rows: both together, the lower alone,
// the upper alone.
func twoRowSenses(top, bottom string, terms bool) []match {
	switch {
	case top == "":
		return headingSenses(bottom, terms)
	case bottom == "":
		return headingSenses(top, terms)
	}
	both := headingSenses(top+" "+bottom, terms)
	if len(both) > 0 && both[0].weight >= weightExact-5 {
		return both
	}
	lower, upper := headingSenses(bottom, terms), headingSenses(top, terms)
	if isUnit(bottom) && len(upper) > 0 {
		return upper
	}
	if len(lower) > 0 && lower[0].weight >= weightContained {
		for i := range upper {
			upper[i].weight -= 2 * stepDown
		}
		return append(lower, upper...)
	}
	if len(both) > 0 {
		return append(both, upper...)
	}
	return append(upper, lower...)
}

// contentSenses is what a column's content alone says.
func contentSenses(st *stats) []match {
	if st.n == 0 {
		return nil
	}
	var ms []match
	add := func(weight int, why string, s sense) { ms = append(ms, match{s, weight, why}) }
	few := st.n < 3
	if st.share(lookGrid) >= 0.6 {
		add(62, "its cells are written like grid references", sense{meaning: GridRef})
	}
	if f := st.share(lookDate); f >= 0.6 || st.share(lookDay) >= 0.6 || st.share(lookDate)+st.share(lookDay)+st.share(lookPair) >= 0.8 && f+st.share(lookDay) >= 0.3 {
		add(58, "its cells are dates", sense{meaning: Date})
	}
	if st.share(lookPair) >= 0.9 && st.n >= 2 {
		add(39, "its cells read like days and months", sense{meaning: Date})
	}
	if st.share(lookTime) >= 0.7 && st.share(lookDate) < 0.3 {
		add(40, "its cells are times of day", sense{meaning: Time})
	}
	binomial, taxon, known := st.share(lookBinomial), st.share(lookTaxon), st.share(lookKnownTaxon)
	switch {
	case known >= 0.4:
		add(60, "its cells are names on the taxon list", sense{meaning: Taxon})
	case binomial >= 0.6:
		add(56, "its cells are written like scientific names", sense{meaning: Taxon})
	case taxon >= 0.5:
		add(46, "its cells are written like names of animals or plants", sense{meaning: Taxon})
	case taxon >= 0.25 && st.share(lookWords) >= 0.8 && st.share(lookPlace) < 0.2 && len(st.distinct) >= 3:
		add(36, "several of its cells are written like names of animals or plants", sense{meaning: Taxon})
	}
	if st.share(lookGroup) >= 0.7 {
		add(45, "its cells are families or groups", sense{meaning: Group})
	}
	if st.share(lookPerson) >= 0.7 && st.share(lookTaxon) < 0.3 {
		add(42, "its cells are written like people's names", sense{meaning: Recorder})
	}
	if st.share(lookPlace) >= 0.5 && taxon < 0.4 {
		add(40, "its cells are written like places", sense{meaning: Site})
	}
	if st.sequential() && st.n >= 4 {
		add(44, "its cells count the rows", sense{meaning: Ignored, leave: leaveRowNumber})
	}
	if st.share(lookCount) >= 0.8 && st.upTo(10000) >= 0.5 && st.share(lookYear) < 0.8 {
		add(38, "its cells are counts", sense{meaning: Count})
	}
	if st.share(lookLong) >= 0.4 && !few {
		add(34, "its cells are sentences", sense{meaning: Remarks})
	}
	return ms
}
