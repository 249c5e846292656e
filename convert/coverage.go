package convert

import (
	"cmp"
	"maps"
	"math"
	"slices"
	"strconv"

	"fieldfare/dwc"
)

// coverage is what the dataset's metadata say of the records handed in: where,
// when and of what they are. It is made from the records as they leave, so
// that it tells no more than they do.
type coverage struct {
	west, east, south, north float64
	placed                   bool
	lastPlace                [3]string
	first, last              string // days, ISO 8601
	lastDate                 string
	groups                   counts[taxonGroup]
	methods                  counts[string]
}

// taxonGroup is a higher taxon of the records.
type taxonGroup struct{ rank, name string }

// metresADegree is the length of a degree of latitude at its shortest, near
// the equator (WGS84); the box is never too small for it.
const metresADegree = 110574

func (c *coverage) add(o *dwc.Occurrence) {
	c.place(o)
	if o.EventDate != "" && o.EventDate != c.lastDate {
		c.lastDate = o.EventDate
		c.days(firstAndLast(o.EventDate))
	}
	if g := groupOf(o); g.name != "" {
		c.groups.add(g, 1)
	}
	if o.SamplingProtocol != "" {
		c.methods.add(o.SamplingProtocol, 1)
	}
}

func (c *coverage) days(first, last string) {
	if first != "" && (c.first == "" || first < c.first) {
		c.first = first
	}
	c.last = max(c.last, last)
}

// groupOf is the order of a record, or another higher taxon; without a name
// where there is none.
func groupOf(o *dwc.Occurrence) taxonGroup {
	switch {
	case o.Order != "":
		return taxonGroup{"order", o.Order}
	case o.Family != "":
		return taxonGroup{"family", o.Family}
	case o.Class != "":
		return taxonGroup{"class", o.Class}
	}
	return taxonGroup{"genus", o.Genus}
}

// with returns what both cover together, but for the taxa of the other.
func (c *coverage) with(other *coverage) *coverage {
	both := &coverage{}
	both.join(c)
	both.join(other)
	both.groups = c.groups
	return both
}

// join takes in what another covers.
func (c *coverage) join(other *coverage) {
	switch {
	case !other.placed:
	case !c.placed:
		c.placed = true
		c.west, c.east, c.south, c.north = other.west, other.east, other.south, other.north
	default:
		c.west, c.east = min(c.west, other.west), max(c.east, other.east)
		c.south, c.north = min(c.south, other.south), max(c.north, other.north)
	}
	c.days(other.first, other.last)
	c.groups.join(&other.groups)
	c.methods.join(&other.methods)
}

// counts counts things of which the next is most often the same as the last.
// The zero value is ready; it must not be copied and then added to.
type counts[K comparable] struct {
	of   map[K]*int
	last K
	n    *int // of the last
}

func (c *counts[K]) add(k K, times int) {
	if c.n == nil || k != c.last {
		if c.of == nil {
			c.of = map[K]*int{}
		}
		if c.of[k] == nil {
			c.of[k] = new(int)
		}
		c.last, c.n = k, c.of[k]
	}
	*c.n += times
}

func (c *counts[K]) join(other *counts[K]) {
	for k, n := range other.of {
		c.add(k, *n)
	}
}

// all returns what was counted.
func (c *counts[K]) all() map[K]int {
	all := make(map[K]int, len(c.of))
	for k, n := range c.of {
		all[k] = *n
	}
	return all
}

func (c *coverage) place(o *dwc.Occurrence) {
	if place := [3]string{o.DecimalLatitude, o.DecimalLongitude, o.CoordinateUncertainty}; place != c.lastPlace {
		c.lastPlace = place
	} else {
		return
	}
	lat, errLat := strconv.ParseFloat(o.DecimalLatitude, 64)
	lon, errLon := strconv.ParseFloat(o.DecimalLongitude, 64)
	if errLat != nil || errLon != nil {
		return
	}
	radius, _ := strconv.ParseFloat(o.CoordinateUncertainty, 64)
	up := radius / metresADegree
	aside := up / max(math.Cos(lat*math.Pi/180), 0.01)
	if !c.placed {
		c.placed = true
		c.west, c.east, c.south, c.north = lon, lon, lat, lat
	}
	c.west, c.east = max(min(c.west, lon-aside), -180), min(max(c.east, lon+aside), 180)
	c.south, c.north = max(min(c.south, lat-up), -90), min(max(c.north, lat+up), 90)
}

// firstAndLast returns the ends of an eventDate as days.
func firstAndLast(eventDate string) (first, last string) {
	first, last = eventDate, eventDate
	for i := range len(eventDate) {
		if eventDate[i] == '/' {
			first, last = eventDate[:i], eventDate[i+1:]
			break
		}
	}
	return day(first, "-01", "-01"), day(last, "-12", "-31")
}

// day completes a date that may be a year, a month or have a time.
func day(date, month, ofMonth string) string {
	switch {
	case len(date) >= 10:
		return date[:10]
	case len(date) == 7 && ofMonth == "-31":
		return date + "-" + strconv.Itoa(lastOf(date))
	case len(date) == 7:
		return date + ofMonth
	case len(date) == 4:
		return date + month + ofMonth
	}
	return date
}

// lastOf returns the last day of a month written as 2003-06.
func lastOf(month string) int {
	y, _ := strconv.Atoi(month[:4])
	switch month[5:] {
	case "02":
		if y%4 == 0 && (y%100 != 0 || y%400 == 0) {
			return 29
		}
		return 28
	case "04", "06", "09", "11":
		return 30
	}
	return 31
}

// commonest returns the keys of a count, the largest first.
func commonest[K comparable](counts map[K]int, text func(K) string) []K {
	return slices.SortedFunc(maps.Keys(counts), func(a, b K) int {
		return cmp.Or(cmp.Compare(counts[b], counts[a]), cmp.Compare(text(a), text(b)))
	})
}
