package validate

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"fieldfare/convert/reading"
)

// autofill finds runs that a spreadsheet's filling down makes: the same count
// again and again, the same date far longer than any other of the page, or a
// count, date or reference that rises by one from row to row.
//
// How long a run of one count must be follows from how common the count is on
// the rest of its page: so long that it would come about on less than one page
// in a thousand if the counts were drawn at random. Lone figures (1) need a run
// of forty. The other lengths are common practice, no source.
type autofill struct {
	sheet  int
	page   fillPage
	ranges []fillRange // in the order of their end
	next   int
}

const (
	leastRepeat  = 8  // of one count above 1
	leastOnes    = 40 // of counts of 1
	leastRising  = 6  // of counts
	leastDays    = 7  // of dates that rise by a day, each with another taxon
	leastSquares = 5  // of references that rise by one
	leastDates   = 20 // of one date
)

// fillRange is a run to be asked about: the records with these numbers.
type fillRange struct {
	first, last int
	about, text string
	verdict     reading.Verdict
}

// fillPage is the sheet at hand.
type fillPage struct {
	counted int
	counts  map[int32]int32
	same    fillRun // one count
	sames   []fillRun
	rising  fillRun // counts, value the next expected
	day     fillRun // one date
	longest fillRun // of those
	second  int     // length of the second longest
	days    int     // how many there are
	nextDay fillRun
	taxon   uint64 // of the record before, for nextDay
	square  fillRun
	letters string
	// reference is that of the record before, and figures the number in it.
	reference  string
	figures    int32
	hasFigures bool
}

// fillRun is a run of records with a value, or with values in order.
type fillRun struct {
	value       int32
	n           int
	first, last int
	subject     string // a record of it, named when the run is long enough
}

func (r *fillRun) start(n int, value int32) {
	*r = fillRun{value: value, n: 1, first: n, last: n}
}

func (r *fillRun) extend(n int) { r.n++; r.last = n }

// add takes in the n-th record.
func (a *autofill) add(n int, g *Glance) {
	if g.sheet != a.sheet {
		a.turn()
		a.sheet = g.sheet
	}
	p := &a.page
	if p.counts == nil {
		p.counts = map[int32]int32{}
	}
	a.count(n, g)
	a.date(n, g)
	a.reference(n, g.facts.reference)
}

func (a *autofill) count(at int, g *Glance) {
	p := &a.page
	if !g.facts.counted || g.facts.count == 0 {
		a.endSame()
		a.endRising()
		return
	}
	n := g.facts.count
	p.counted++
	if len(p.counts) < 1000 || p.counts[n] > 0 {
		p.counts[n]++
	}
	if p.same.n > 0 && p.same.value == n {
		if p.same.extend(at); p.same.n == leastRepeat {
			p.same.subject = strings.Clone(g.subject())
		}
	} else {
		a.endSame()
		p.same.start(at, n)
	}
	if p.rising.n > 0 && p.rising.value == n {
		p.rising.value = n + 1
		if p.rising.extend(at); p.rising.n == leastRising {
			p.rising.subject = strings.Clone(g.subject())
		}
	} else {
		a.endRising()
		p.rising.start(at, n+1)
	}
}

func (a *autofill) date(n int, g *Glance) {
	p, f := &a.page, &g.facts
	if !f.dated || f.end-f.start > 1 {
		a.endDay()
		a.endNextDay()
		p.taxon = 0
		return
	}
	day, taxon := f.start, g.taxon
	if p.day.n > 0 && p.day.value == day {
		if p.day.extend(n); p.day.n == leastDates {
			p.day.subject = strings.Clone(g.site)
		}
	} else {
		a.endDay()
		p.day.start(n, day)
	}
	if p.nextDay.n > 0 && p.nextDay.value == day && p.taxon != taxon {
		p.nextDay.value = day + 1
		if p.nextDay.extend(n); p.nextDay.n == leastDays {
			p.nextDay.subject = strings.Clone(g.site)
		}
	} else {
		a.endNextDay()
		p.nextDay.start(n, day+1)
	}
	p.taxon = taxon
}

func (a *autofill) reference(at int, reference string) {
	p := &a.page
	if reference != p.reference {
		p.reference = reference
		n, err := strconv.ParseInt(figuresOf(reference), 10, 32)
		p.figures, p.hasFigures = int32(n), err == nil
	}
	n := p.figures
	if !p.hasFigures {
		a.endSquare()
		return
	}
	letters := reference[:min(2, len(reference))]
	switch {
	case p.square.n > 0 && p.letters == letters && p.square.value == n-1:
		p.square.value = n
		if p.square.extend(at); p.square.n == leastSquares {
			p.square.subject = strings.Clone(reference)
		}
	default:
		a.endSquare()
		p.square.start(at, n)
		p.letters = letters
	}
}

func (a *autofill) endSame() {
	if p := &a.page; p.same.n >= leastRepeat {
		p.sames = append(p.sames, p.same)
	}
	a.page.same = fillRun{}
}

func (a *autofill) endRising() {
	if r := a.page.rising; r.n >= leastRising {
		a.found(r, aboutRecord, written("counts from "+strconv.Itoa(int(r.value)-r.n)+" to "+strconv.Itoa(int(r.value)-1), r.subject), "counts-repeat", fmt.Sprintf(
			"The counts of %d records in a row rise by one each, from %d to %d, as a spreadsheet makes them when a cell is dragged down. Check them against the notebook.", r.n, int(r.value)-r.n, r.value-1))
	}
	a.page.rising = fillRun{}
}

func (a *autofill) endDay() {
	p := &a.page
	switch {
	case p.day.n > p.longest.n:
		p.second, p.longest = p.longest.n, p.day
	default:
		p.second = max(p.second, p.day.n)
	}
	if p.day.n > 0 {
		p.days++
	}
	p.day = fillRun{}
}

func (a *autofill) endNextDay() {
	if r := a.page.nextDay; r.n >= leastDays {
		a.found(r, aboutRecord, written("dates rising from "+iso(r.value-int32(r.n)), r.subject), "dates-repeat", fmt.Sprintf(
			"The dates of %d records in a row rise by one day each, from %s to %s, as a spreadsheet makes them when a cell is dragged down. Check them against the notebook.", r.n, words(r.value-int32(r.n)), words(r.value-1)))
	}
	a.page.nextDay = fillRun{}
}

func (a *autofill) endSquare() {
	if r := a.page.square; r.n >= leastSquares {
		a.found(r, aboutRecord, written("references rising to "+r.subject), "references-rise", fmt.Sprintf(
			"The grid references of %d records in a row rise by one each, through %s, as a spreadsheet makes them when a cell is dragged down. Check them against the notebook.", r.n, r.subject))
	}
	a.page.square = fillRun{}
}

func (a *autofill) found(r fillRun, about, text, code, message string) {
	a.ranges = append(a.ranges, fillRange{r.first, r.last, about, text, reading.QueryOf(code, message)})
}

// turn ends a page: now it is known how common each count and how long the
// dates of the page are.
func (a *autofill) turn() {
	a.endSame()
	a.endRising()
	a.endDay()
	a.endNextDay()
	a.endSquare()
	p := &a.page
	for _, r := range p.sames {
		if p.tooLong(r) {
			a.found(r, aboutRecord, written(strconv.Itoa(int(r.value))+" in a row", r.subject), "counts-repeat", fmt.Sprintf(
				"%d records in a row all have the count %d, as when a cell is filled down. Check them against the notebook.", r.n, r.value))
		}
	}
	if r := p.longest; p.days > 5 && r.n >= leastDates && 2*r.n > 5*p.second {
		a.found(r, aboutRecord, written(iso(r.value)+" in a row", r.subject), "dates-repeat", fmt.Sprintf(
			"%d records in a row all have the date %s, and no other date of the page has more than %d, as when a cell is filled down. Check them against the notebook.", r.n, words(r.value), p.second))
	}
	a.page = fillPage{}
}

// tooLong tells whether a run of one count is longer than chance makes it.
func (p *fillPage) tooLong(r fillRun) bool {
	elsewhere := p.counted - r.n
	if r.value == 1 && (r.n < leastOnes || elsewhere < leastOnes) {
		return false
	}
	share := (float64(p.counts[r.value]) - float64(r.n) + 1) / (float64(elsewhere) + 10)
	share = min(max(share, 0.02), 1)
	return float64(p.counted)*math.Pow(share, float64(r.n)) < 0.001
}

func (a *autofill) settle() {
	a.turn()
	slices.SortStableFunc(a.ranges, func(x, y fillRange) int { return x.first - y.first })
}

func (a *autofill) find(e *Entry) []reading.Finding {
	var found []reading.Finding
	for a.next < len(a.ranges) && a.ranges[a.next].last < e.N {
		a.next++
	}
	for _, r := range a.ranges[a.next:] {
		if r.first > e.N {
			break
		}
		if e.N <= r.last {
			found = append(found, reading.Finding{Verdict: r.verdict, About: r.about, Written: r.text})
		}
	}
	return found
}
