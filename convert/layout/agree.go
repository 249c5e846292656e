package layout

import "strings"

// agree judges how well what stands in a column fits a sense: above zero it
// supports it, far below it rules it out. An empty column fits everything.
// The figures order the senses among themselves and against the weights of
// headings (own practice, settled on the notebooks under testdata).
func agree(s sense, st *stats) int {
	if st.n == 0 {
		return 0
	}
	few := st.n < 3
	words := st.share(lookWords)
	whole := st.share(lookInt)
	dates := st.shares(lookDate, lookDay, lookMonth, lookYear)
	grid := st.share(lookGrid)
	rule := func(no bool) int {
		if no {
			return -90
		}
		return 0
	}
	switch s.part {
	case partDay:
		if f := float64(st.by[bit(lookSmall)]) / float64(st.n); f >= 0.8 {
			return 20
		}
		if st.upToOrNight() >= 0.5 && st.longest <= 7 {
			return 15 // nights and question marks among the days
		}
		if dates >= 0.6 {
			return -40
		}
		return -90
	case partMonth:
		if st.share(lookMonth) >= 0.7 || st.share(lookMonth)+st.upTo(12) >= 0.9 || st.romans() >= 0.9 { // “Jul” here, 7 there
			return 20
		}
		return -90
	case partYear:
		if st.share(lookYear) >= 0.7 {
			return 25
		}
		if st.upTo(99) >= 0.9 {
			return 5
		}
		return -90
	case partWeekday:
		if words > 0.8 && st.longest <= 10 && len(st.distinct) <= 14 {
			return 10
		}
		return -90
	case partEasting, partNorthing, partFigures:
		if st.longDigits() >= 0.8 {
			return 30
		}
		return -90
	case partLetters:
		if st.share(lookLetters) >= 0.8 {
			return 40
		}
		return -60
	case partGenus, partEpithet, partSubspecies:
		return rule(words < 0.6 || grid > 0.4)
	}
	switch s.meaning {
	case Date, EndDate:
		if f := dates + st.share(lookPair); f >= 0.6 {
			return 30
		} else if st.serials() >= 0.6 || st.sixFigures() {
			return 5 // days as a spreadsheet counts them, or 030718
		} else if st.upTo(31) >= 0.8 {
			return -10 // days of a month named elsewhere
		} else if f < 0.2 && !few {
			return -80
		} else if f == 0 {
			return -60
		}
		return 0
	case Time, EndTime:
		if st.share(lookTime) >= 0.5 {
			return 30
		}
		if st.fractions() >= 0.7 {
			return 20
		}
		if st.allClockNumbers() {
			return 0
		}
		return -90
	case GridRef:
		if grid >= 0.5 {
			return 40
		}
		if st.longDigits() >= 0.5 {
			return 5
		}
		if grid == 0 && st.share(lookLetters) >= 0.8 {
			return -20
		}
		return rule(grid < 0.2 && (!few || grid == 0))
	case Latitude, Longitude, Uncertainty, Elevation, Temperature:
		return rule(words > 0.5 && !few || grid > 0.5 || dates > 0.5 && st.numbers*2 < st.n)
	case Taxon, Scientific, Vernacular:
		return agreeName(s.meaning, st, words, whole, dates, grid)
	case Count:
		f := st.share(lookCount)
		switch {
		case (st.by[bit(lookDate)]-st.by[bit(lookRealDate)])*5 > st.n*3:
			return -90 // 14/8/13 is no count
		case f >= 0.7 && st.sequential() && st.n >= 4:
			return -30
		case f >= 0.7:
			return 15
		case st.share(lookRealDate) > 0 && f+st.share(lookRealDate) >= 0.7:
			return 0
		case st.share(lookDay) > 0 && st.share(lookDate) == 0 && st.shares(lookDay, lookCount, lookPair, lookMonth) >= 0.9:
			return -15 // 2-4 became 2 April
		case grid > 0.4 || dates > 0.6 || f < 0.3 && (words > 0.6 || st.namesWithCounts() >= 0.5):
			return -90
		}
		return -10
	case Sex:
		return rule(st.longest > 16 || whole > 0.5 || len(st.distinct) > 8)
	case Stage:
		return rule(whole > 0.3 || st.figured() > 0.3 || dates > 0.5 || grid > 0.5 || st.share(lookTaxon) > 0.6 && len(st.distinct) > 6)
	case Recorder, Determiner, Verifier:
		switch {
		case st.share(lookPerson) >= 0.5:
			return 20
		case st.share(lookPlace) >= 0.5 && st.share(lookPerson) < 0.2:
			return -90
		case whole > 0.3 || dates > 0.3 || grid > 0.3 || st.share(lookTick) > 0.5 || st.share(lookBinomial) > 0.3:
			return -90
		case st.share(lookTaxon) > 0.5 && st.share(lookKnownTaxon) > 0.2:
			return -60
		}
		return 0
	case Site:
		switch {
		case whole > 0.8 && grid == 0:
			return -60
		case grid > 0.6 || dates > 0.6 || st.share(lookBinomial) > 0.4 || st.share(lookKnownTaxon) > 0.4:
			return -90
		case methodShare(st) >= 0.5:
			return -90
		case st.share(lookPlace) >= 0.3:
			return 20
		}
		return 0
	case TaxonNumber:
		switch {
		case st.sequential():
			return -70
		case st.numbers*2 > st.n:
			return 10
		}
		return rule(words > 0.5 || dates > 0.5 || grid > 0.5)
	case Group:
		if st.share(lookGroup) >= 0.4 {
			return 30
		}
		if st.share(lookTaxon) >= 0.4 {
			return -60
		}
		return rule(whole > 0.5 || dates > 0.5 || grid > 0.5 || st.share(lookBinomial) > 0.4)
	case Status:
		return rule(!st.presence())
	case RecordID:
		switch {
		case st.n >= 4 && len(st.distinct) < min(st.n, maxDistinct)*9/10:
			return -90
		case st.sequential():
			return -50
		case dates > 0.5 || words > 0.5 && st.share(lookTaxon|lookPlace|lookPerson) > 0.3:
			return -90
		case grid > 0.7:
			return -20
		}
		return 15
	case Method:
		if methodShare(st) >= 0.4 {
			return 20
		}
		return rule(dates > 0.7 || grid > 0.7 || st.share(lookBinomial) > 0.5)
	case County, Country:
		return rule(words < 0.5 || dates > 0.7 || grid > 0.7 || st.share(lookBinomial) > 0.5)
	case Habitat, Weather, Authorship, Basis, Certainty:
		return rule(dates > 0.7 || grid > 0.7 || st.share(lookBinomial) > 0.5)
	case ViceCounty:
		return rule(dates > 0.7 || grid > 0.7 || st.big > 0)
	case Measurement:
		return rule(st.numbers == 0 && st.share(lookCount) == 0 && !few && words > 0.5)
	case Effort:
		return rule(grid > 0.5 || dates > 0.7)
	case Ignored:
		return agreeIgnored(s, st, words)
	}
	return 0
}

func agreeName(m Meaning, st *stats, words, whole, dates, grid float64) int {
	if whole > 0.4 || dates > 0.4 || grid > 0.5 || st.share(lookTick) > 0.5 || st.share(lookTime) > 0.5 {
		return -90
	}
	if st.share(lookPerson) > 0.7 {
		return -60
	}
	binomial, taxon := st.share(lookBinomial), st.share(lookTaxon)
	known := st.share(lookKnownTaxon)
	switch {
	case m == Taxon && taxon < 0.4 && words < 0.3 && st.namesWithCounts() >= 0.5:
		return 20
	case m == Scientific && binomial >= 0.5, m == Vernacular && taxon >= 0.4 && binomial < 0.3:
		return 35
	case m == Vernacular && binomial > 0.7:
		return -40
	case taxon >= 0.4 || known >= 0.3:
		return 30
	case st.share(lookPlace) > 0.6 && taxon < 0.1:
		return -75
	case words < 0.3 && taxon < 0.1:
		return -60
	}
	return 0
}

// namesWithCounts is the part of the cells that are a name and a count in one.
func (s *stats) namesWithCounts() float64 {
	n, all := 0, 0
	for t, k := range s.distinct {
		all += k
		if splits(t) {
			n += k
		}
	}
	return float64(n) / float64(max(1, all))
}

func agreeIgnored(s sense, st *stats, words float64) int {
	switch s.leave {
	case leaveRowNumber:
		if st.sequential() {
			return 60
		}
		return -90
	case leaveTotal, leaveCumulative:
		if st.numbers*2 >= st.n {
			return -20
		}
		return -90
	}
	if words > 0.5 {
		return 0
	}
	return -60
}

// presence reports whether the cells say present or absent, and nothing else.
func (s *stats) presence() bool {
	for t := range s.distinct {
		switch strings.ToLower(strings.Trim(t, " .")) {
		case "present", "absent", "p", "a", "y", "n", "yes", "no", "seen", "not seen", "0", "1", "x", "true", "false", "not found", "found", "✓", "nil":
		default:
			return false
		}
	}
	return true
}

// upTo is the part of the cells that are whole numbers from 1 to the limit.
func (s *stats) upTo(limit int) float64 {
	if s.n == 0 {
		return 0
	}
	fit, all := 0, 0
	for t, n := range s.distinct {
		all += n
		if v, ok := isInt(t); ok && v >= 0 && v <= limit || limit == 31 && dayNumber(t) > 0 {
			fit += n
		}
	}
	return float64(fit) / float64(max(all, 1))
}

// longDigits is the part of the cells that are figures of a reference: three
// to seven digits.
func (s *stats) longDigits() float64 {
	if s.n == 0 {
		return 0
	}
	n := 0
	for w := 2; w <= 10; w++ {
		n += s.lengths[w]
	}
	return float64(n) / float64(s.n)
}

// serials is the part of the cells that are days as a spreadsheet counts
// them, from 1955 to 2064.
func (s *stats) serials() float64 {
	n, all := 0, 0
	for t, k := range s.distinct {
		all += k
		if v, ok := isInt(t); ok && len(t) == 5 && v >= 20000 && v <= 60000 {
			n += k
		}
	}
	return float64(n) / float64(max(1, all))
}

// allClockNumbers: 2130, 930: times without a colon.
func (s *stats) allClockNumbers() bool {
	for t := range s.distinct {
		if n, ok := isInt(t); !ok || n > 2400 || n%100 > 59 {
			return false
		}
	}
	return s.n > 0
}

// bit is the place of a look in stats.by.
func bit(l look) int {
	for i := range 32 {
		if l>>i&1 == 1 {
			return i
		}
	}
	return 0
}
