package layout

// agree judges how well what stands in a column fits a sense: above zero it
// supports it, far below it rules it out. An empty column fits everything.
// The figures order the senses among themselves and against the weights of
// headings (own practice, settled on the notebooks under testdata).
func agree(s sense, st *stats) int {
	if st.n == 0 {
		return 0
	}
	c := contents{
		stats: st,
		few:   st.n < 3,
		words: st.share(lookWords),
		ints:  st.share(lookInt),
		dates: st.shares(lookDate, lookDay, lookMonth, lookYear),
		grid:  st.share(lookGrid),
	}
	if s.part != whole {
		return c.asPart(s.part)
	}
	return c.asMeaning(s)
}

// contents is what stands in a column, with the shares that most senses ask
// for.
type contents struct {
	*stats
	few                      bool
	words, ints, dates, grid float64
}

// unless rules a sense out where the contents cannot have it, and says nothing
// for it otherwise.
func unless(impossible bool) int {
	if impossible {
		return -90
	}
	return 0
}

// asPart judges a column as a part of a date, a reference or a name.
func (c contents) asPart(p part) int {
	switch p {
	case partDay:
		if f := c.share(lookSmall); f >= 0.8 {
			return 20
		}
		if c.upToOrNight() >= 0.5 && c.longest <= 7 {
			return 15 // nights and question marks among the days
		}
		if c.dates >= 0.6 {
			return -40
		}
		return -90
	case partMonth:
		if c.share(lookMonth) >= 0.7 || c.share(lookMonth)+c.upTo(12) >= 0.9 || c.romans() >= 0.9 { // “Jul” here, 7 there
			return 20
		}
		return -90
	case partYear:
		if c.share(lookYear) >= 0.7 {
			return 25
		}
		if c.upTo(99) >= 0.9 {
			return 5
		}
		return -90
	case partWeekday:
		if c.words > 0.8 && c.longest <= 10 && len(c.distinct) <= 14 {
			return 10
		}
		return -90
	case partEasting, partNorthing:
		if c.longDigits() >= 0.8 || c.alongAxis() >= 0.8 {
			return 30
		}
		return -90
	case partFigures:
		if c.refFigures() >= 0.8 {
			return 30
		}
		return -90
	case partLetters:
		if c.share(lookLetters) >= 0.8 {
			return 40
		}
		return -60
	case partGenus, partEpithet, partSubspecies:
		return unless(c.words < 0.6 || c.grid > 0.4)
	}
	return 0
}

// asMeaning judges a column as a value of its own.
func (c contents) asMeaning(s sense) int {
	switch s.meaning {
	case Date, EndDate:
		return c.asDate()
	case Time, EndTime:
		return c.asTime()
	case GridRef:
		return c.asReference()
	case Latitude, Longitude, Uncertainty, Elevation, Temperature:
		return unless(c.words > 0.5 && !c.few || c.grid > 0.5 || c.dates > 0.5 && c.numbers*2 < c.n)
	case Taxon, Scientific, Vernacular:
		return c.asName(s.meaning)
	case Count:
		return c.asCount()
	case Sex:
		return unless(c.longest > 16 || c.ints > 0.5 || len(c.distinct) > 8)
	case Stage:
		return unless(c.ints > 0.3 || c.figured() > 0.3 || c.dates > 0.5 || c.grid > 0.5 || c.share(lookTaxon) > 0.6 && len(c.distinct) > 6)
	case Recorder, Determiner, Verifier:
		return c.asPerson()
	case Site:
		return c.asSite()
	case TaxonNumber:
		return c.asTaxonNumber()
	case Group:
		return c.asGroup()
	case Status:
		return unless(!c.presence())
	case RecordID:
		return c.asRecordID()
	case Method:
		if methodShare(c.stats) >= 0.4 {
			return 20
		}
		return unless(c.dates > 0.7 || c.grid > 0.7 || c.share(lookBinomial) > 0.5)
	case County, Country:
		return unless(c.words < 0.5 || c.dates > 0.7 || c.grid > 0.7 || c.share(lookBinomial) > 0.5)
	case Habitat, Weather, Authorship, Basis, Certainty:
		return unless(c.dates > 0.7 || c.grid > 0.7 || c.share(lookBinomial) > 0.5)
	case ViceCounty:
		return unless(c.dates > 0.7 || c.grid > 0.7 || c.big > 0)
	case Measurement:
		return unless(c.numbers == 0 && c.share(lookCount) == 0 && !c.few && c.words > 0.5)
	case Effort:
		return unless(c.grid > 0.5 || c.dates > 0.7)
	case Ignored:
		return c.asIgnored(s.leave)
	}
	return 0
}
