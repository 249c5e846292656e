package places

import (
	"fmt"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/gridref"
)

// Sites gathers where each site's records are said to be, to find those far
// from the others. The zero value is ready; it is not for use by several
// goroutines at once.
type Sites struct {
	bySite    map[string]map[gridref.Square]*int
	names     folded
	last      siteSquare // of the last record
	lastCount *int
}

type siteSquare struct {
	site   string
	square gridref.Square
}

// folded remembers the folded forms of names: sites are few, and their records
// many.
type folded map[string]string

const foldedKept = 4096

func (f *folded) of(name string) string {
	if key, known := (*f)[name]; known {
		return key
	}
	if *f == nil || len(*f) >= foldedKept {
		*f = folded{}
	}
	key := fold(name)
	(*f)[strings.Clone(name)] = key
	return key
}

// Add counts one record of a site, under the name that goes out. References
// that are no square of a grid are left out.
func (s *Sites) Add(site string, square gridref.Square) {
	if s.lastCount == nil || site != s.last.site || square != s.last.square {
		key := s.names.of(site)
		if key == "" || square.Grid == gridref.NoGrid {
			return
		}
		s.last, s.lastCount = siteSquare{site, square}, s.count(key, square)
	}
	*s.lastCount++
}

// count returns the count of a square of a site, by the site's folded name.
func (s *Sites) count(key string, square gridref.Square) *int {
	if s.bySite == nil {
		s.bySite = map[string]map[gridref.Square]*int{}
	}
	if s.bySite[key] == nil {
		s.bySite[key] = map[gridref.Square]*int{}
	}
	n := s.bySite[key][square]
	if n == nil {
		n = new(int)
		s.bySite[key][square] = n
	}
	return n
}

// Join takes in what others have gathered of other records.
func (s *Sites) Join(other *Sites) {
	for key, squares := range other.bySite {
		for square, n := range squares {
			*s.count(key, square) += *n
		}
	}
}

// Usual has the square in which most records of each site lie; of several
// equally used ones the finest, then the first by its reference. It is for one
// goroutine.
type Usual struct {
	square map[string]gridref.Square
	names  folded
	// last is that of the last record, fair whether it lay within so many metres.
	last   siteSquare
	within int
	fair   bool
}

// Again returns the same for another goroutine.
func (u *Usual) Again() *Usual { return &Usual{square: u.square} }

// Settle looks through what has been added.
func (s *Sites) Settle() *Usual {
	u := &Usual{square: make(map[string]gridref.Square, len(s.bySite))}
	for site, squares := range s.bySite {
		var best gridref.Square
		have := 0
		for q, n := range squares {
			if *n > have || *n == have && before(q, best) {
				best, have = q, *n
			}
		}
		u.square[site] = best
	}
	return u
}

func before(a, b gridref.Square) bool {
	if a.Size != b.Size {
		return a.Size < b.Size
	}
	return a.String() < b.String()
}

// Check compares a record's square with the one in which most records of its
// site lie: further apart than the tolerance, in metres, is a query.
func (u *Usual) Check(site string, square gridref.Square, tolerance int) reading.Verdict {
	if u.fair && tolerance == u.within && site == u.last.site && square == u.last.square {
		return reading.Verdict{}
	}
	v := u.check(site, square, tolerance)
	u.last, u.within, u.fair = siteSquare{site, square}, tolerance, v.State == reading.Fair
	return v
}

func (u *Usual) check(site string, square gridref.Square, tolerance int) reading.Verdict {
	usual, ok := u.square[u.names.of(site)]
	if !ok || usual == square || square.Grid == gridref.NoGrid {
		return reading.Verdict{}
	}
	apart := Apart(gridref.Reading{Square: usual}, gridref.Reading{Square: square})
	if apart <= float64(tolerance) {
		return reading.Verdict{}
	}
	here := gridref.Reading{Square: square}
	message := fmt.Sprintf("“%s” is at %s here, but at %s on other rows, %s away.", site, square, usual, distanceInWords(apart))
	if s, found := slipTo(gridref.Reading{Square: usual}, here, tolerance); found {
		message += " " + s.sentence()
	}
	return reading.QueryOf("site-references-apart", message+" Please check which is right, or give the places different names.")
}
