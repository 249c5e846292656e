package layout

import "strings"

// asDate judges a column as a day or its end.
func (c contents) asDate() int {
	if f := c.dates + c.share(lookPair); f >= 0.6 {
		return 30
	} else if c.serials() >= 0.6 || c.sixFigures() {
		return 5 // days as a spreadsheet counts them, or 030718
	} else if c.upTo(31) >= 0.8 {
		return -10 // days of a month named elsewhere
	} else if f < 0.2 && !c.few {
		return -80
	} else if f == 0 {
		return -60
	}
	return 0
}

// asTime judges a column as a time of day.
func (c contents) asTime() int {
	if c.share(lookTime) >= 0.5 {
		return 30
	}
	if c.fractions() >= 0.7 {
		return 20
	}
	if c.allClockNumbers() {
		return 0
	}
	return -90
}

// asReference judges a column as a grid reference.
func (c contents) asReference() int {
	if c.grid >= 0.5 {
		return 40
	}
	if c.refFigures() >= 0.5 {
		return 5
	}
	if c.grid == 0 && c.share(lookLetters) >= 0.8 {
		return -20
	}
	return unless(c.grid < 0.2 && (!c.few || c.grid == 0))
}

// asCount judges a column as a count.
func (c contents) asCount() int {
	f := c.share(lookCount)
	switch {
	case (c.cells(lookDate)-c.cells(lookRealDate))*5 > c.n*3:
		return -90 // 14/8/13 is no count
	case f >= 0.7 && c.sequential() && c.n >= 4:
		return -30
	case f >= 0.7:
		return 15
	case c.share(lookRealDate) > 0 && f+c.share(lookRealDate) >= 0.7:
		return 0
	case c.share(lookDay) > 0 && c.share(lookDate) == 0 && c.shares(lookDay, lookCount, lookPair, lookMonth) >= 0.9:
		return -15 // 2-4 became 2 April
	case c.grid > 0.4 || c.dates > 0.6 || f < 0.3 && (c.words > 0.6 || c.namesWithCounts() >= 0.5):
		return -90
	}
	return -10
}

// asPerson judges a column as the name of a person.
func (c contents) asPerson() int {
	switch {
	case c.share(lookPerson) >= 0.5:
		return 20
	case c.share(lookPlace) >= 0.5 && c.share(lookPerson) < 0.2:
		return -90
	case c.ints > 0.3 || c.dates > 0.3 || c.grid > 0.3 || c.share(lookTick) > 0.5 || c.share(lookBinomial) > 0.3:
		return -90
	case c.share(lookTaxon) > 0.5 && c.share(lookKnownTaxon) > 0.2:
		return -60
	}
	return 0
}

// asSite judges a column as the name of a place.
func (c contents) asSite() int {
	switch {
	case c.ints > 0.8 && c.grid == 0:
		return -60
	case c.grid > 0.6 || c.dates > 0.6 || c.share(lookBinomial) > 0.4 || c.share(lookKnownTaxon) > 0.4:
		return -90
	case methodShare(c.stats) >= 0.5:
		return -90
	case c.share(lookPlace) >= 0.3:
		return 20
	}
	return 0
}

// asTaxonNumber judges a column as a taxon's number on a list.
func (c contents) asTaxonNumber() int {
	switch {
	case c.sequential():
		return -70
	case c.numbers*2 > c.n:
		return 10
	case c.codes() >= 0.9 && c.share(lookKnownTaxon) < 0.3 && c.grid < 0.5:
		return 5
	}
	return unless(c.words > 0.5 || c.dates > 0.5 || c.grid > 0.5)
}

// codes is the part of the cells that are codes in letters: "MI", "Aesmix".
func (s *stats) codes() float64 {
	return s.shareWhere(func(t string) bool { return isCode(t) && (t == strings.ToUpper(t) || len(t) == 6) })
}

// asGroup judges a column as a group of taxa.
func (c contents) asGroup() int {
	if c.share(lookGroup) >= 0.4 {
		return 30
	}
	if c.share(lookTaxon) >= 0.4 {
		return -60
	}
	return unless(c.ints > 0.5 || c.dates > 0.5 || c.grid > 0.5 || c.share(lookBinomial) > 0.4)
}

// asRecordID judges a column as the id of a record.
func (c contents) asRecordID() int {
	switch {
	case c.n >= 4 && len(c.distinct) < min(c.n, maxDistinct)*9/10:
		return -90
	case c.sequential():
		return -50
	case c.dates > 0.5 || c.words > 0.5 && c.share(lookTaxon|lookPlace|lookPerson) > 0.3:
		return -90
	case c.grid > 0.7:
		return -20
	}
	return 15
}

// asName judges a column as names of taxa.
func (c contents) asName(m Meaning) int {
	if c.ints > 0.4 || c.dates > 0.4 || c.grid > 0.5 || c.share(lookTick) > 0.5 || c.share(lookTime) > 0.5 {
		return -90
	}
	if c.share(lookPerson) > 0.7 {
		return -60
	}
	binomial, taxon := c.share(lookBinomial), c.share(lookTaxon)
	known := c.share(lookKnownTaxon)
	switch {
	case m == Taxon && taxon < 0.4 && c.words < 0.3 && c.namesWithCounts() >= 0.5:
		return 20
	case m == Scientific && binomial >= 0.5, m == Vernacular && taxon >= 0.4 && binomial < 0.3:
		return 35
	case m == Vernacular && binomial > 0.7:
		return -40
	case taxon >= 0.4 || known >= 0.3:
		return 30
	case c.share(lookPlace) > 0.6 && taxon < 0.1:
		return -75
	case c.words < 0.3 && taxon < 0.1:
		return -60
	}
	return 0
}

// asIgnored judges a column as one that is left out, by why it is.
func (c contents) asIgnored(leave string) int {
	switch leave {
	case leaveRowNumber:
		if c.sequential() {
			return 60
		}
		return -90
	case leaveTotal, leaveCumulative:
		if c.numbers*2 >= c.n {
			return -20
		}
		return -90
	}
	if c.words > 0.5 {
		return 0
	}
	return -60
}
