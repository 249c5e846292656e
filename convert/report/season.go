package report

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"fieldfare/dwc"
)

// tenDays is how many ten-day periods a year has: three a month, the third
// with the days from the 21st on.
const tenDays = 36

// Season gathers what the report draws. It is told of every record as it
// leaves, so that it cannot show more than leaves. Its size grows with the
// taxa, squares and sites, not with the records. The zero value is ready.
type Season struct {
	records     int // occurrences, absences apart
	absences    int
	first, last string
	years       map[int]int
	noYear      int
	taxa        map[string]*taxonCount
	squares     squareCounts
	finds       map[find]string // first date at the site
	sites       map[string]*siteYear
	fullSites   bool // not all finds could be kept
	spans       recent[string, span]
}

// taxonCount is what the report tells of one taxon.
type taxonCount struct {
	Name, Vernacular string
	Records          int
	Individuals      int
	First, Last      string
	periods          [tenDays]int
	vague            int  // records without a ten-day period
	asked            bool // a record of it lies out of its season
}

// siteYear is the first year that a site has records of.
type siteYear struct {
	site string
	year int
}

type find struct{ site, taxon string }

// mostFinds bounds what is kept of sites and their taxa.
const mostFinds = 250_000

// Sighting is what the report draws of a record, as it leaves.
type Sighting struct {
	name, vernacular, locality string
	date, year, count          string
	place                      drawnPlace
	absent, outOfSeason        bool
}

// SightingOf takes it from a record as it leaves. Blurred tells that its place
// is given less exactly than it is known, outOfSeason that its date was asked
// about.
func SightingOf(o *dwc.Occurrence, blurred, outOfSeason bool) Sighting {
	return Sighting{
		name: o.ScientificName, vernacular: o.VernacularName, locality: o.Locality, date: o.EventDate, year: o.Year, count: o.IndividualCount,
		place:  drawnPlace{o.DecimalLatitude, o.DecimalLongitude, o.CoordinateUncertainty, blurred},
		absent: o.OccurrenceStatus == "absent", outOfSeason: outOfSeason,
	}
}

// Add takes in a record.
func (s *Season) Add(r *Sighting) {
	if r.absent {
		s.absences++
		return
	}
	s.records++
	dates := s.spans.of(r.date, spanOf)
	start := dates.start
	if start != "" {
		if s.first == "" || start < s.first {
			s.first = start
		}
		s.last = max(s.last, dates.end)
	}
	year, _ := strconv.Atoi(r.year)
	if s.years == nil {
		s.years, s.taxa = map[int]int{}, map[string]*taxonCount{}
		s.finds, s.sites = map[find]string{}, map[string]*siteYear{}
	}
	if year > 0 {
		s.years[year]++
	} else {
		s.noYear++
	}
	s.taxon(r, &dates)
	s.site(r, start, year)
	s.squares.add(&r.place)
}

// span is a date as it is drawn: its first and last day, as far as they are
// known, and its ten-day period.
type span struct {
	start, end string
	period     int
	whole      bool // it lies within a period
}

func spanOf(eventDate string) span {
	var s span
	s.start, s.end, _ = strings.Cut(eventDate, "/")
	s.start = firstOf(s.start, 10)
	if s.end = firstOf(s.end, 10); len(s.end) < len(s.start) {
		s.end = s.start
	}
	s.period, s.whole = period(s.start, s.end)
	return s
}

func (s *Season) taxon(r *Sighting, dates *span) {
	name := cmp.Or(r.name, r.vernacular)
	if name == "" {
		return
	}
	t := s.taxa[name]
	if t == nil {
		t = &taxonCount{Name: strings.Clone(name), Vernacular: strings.Clone(r.vernacular)}
		s.taxa[t.Name] = t
	}
	t.Records++
	n, err := strconv.Atoi(r.count)
	if err != nil || n < 1 {
		n = 1
	}
	t.Individuals += n
	t.asked = t.asked || r.outOfSeason
	if dates.start != "" {
		if t.First == "" || dates.start < t.First {
			t.First = dates.start
		}
		t.Last = max(t.Last, dates.end)
	}
	if dates.whole {
		t.periods[dates.period]++
	} else {
		t.vague++
	}
}

// period returns the ten-day period of a date or of an interval of at most ten
// days, by its first day.
func period(start, end string) (int, bool) {
	from, errFrom := time.Parse(time.DateOnly, start)
	to, errTo := time.Parse(time.DateOnly, end)
	if errFrom != nil || errTo != nil || to.Sub(from) > 10*24*time.Hour {
		return 0, false
	}
	return 3*(int(from.Month())-1) + min((from.Day()-1)/10, 2), true
}

func (s *Season) site(r *Sighting, start string, year int) {
	if r.locality == "" || start == "" || r.name == "" || year == 0 {
		return
	}
	site := s.sites[r.locality]
	if site == nil {
		site = &siteYear{strings.Clone(r.locality), year}
		s.sites[site.site] = site
	}
	site.year = min(site.year, year)
	// Texts of a record are parts of its whole text, which must not be kept.
	k := find{site.site, s.taxa[r.name].Name}
	old, found := s.finds[k]
	if !found && len(s.finds) >= mostFinds {
		s.fullSites = true
		return
	}
	if !found || start < old {
		s.finds[k] = strings.Clone(start)
	}
}

// newFind is a taxon that a site had not had before.
type newFind struct{ Site, Name, Vernacular, Date string }

// newFinds returns the taxa first recorded at a site in the latest year of the
// records, for sites with earlier years.
func (s *Season) newFinds() (year int, list []newFind) {
	for y := range s.years {
		year = max(year, y)
	}
	for k, date := range s.finds {
		if s.sites[k.site].year < year && strings.HasPrefix(date, strconv.Itoa(year)) {
			list = append(list, newFind{k.site, k.taxon, s.taxa[k.taxon].Vernacular, date})
		}
	}
	slices.SortFunc(list, func(a, b newFind) int {
		return cmp.Or(cmp.Compare(a.Site, b.Site), cmp.Compare(a.Date, b.Date), cmp.Compare(a.Name, b.Name))
	})
	return year, list
}

// byRecords returns the taxa, those with most records first.
func (s *Season) byRecords() []*taxonCount {
	list := make([]*taxonCount, 0, len(s.taxa))
	for _, t := range s.taxa {
		list = append(list, t)
	}
	slices.SortFunc(list, func(a, b *taxonCount) int {
		return cmp.Or(cmp.Compare(b.Records, a.Records), cmp.Compare(a.Name, b.Name))
	})
	return list
}

func firstOf(s string, n int) string { return s[:min(len(s), n)] }
