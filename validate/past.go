package validate

import (
	"fmt"
	"strconv"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/dwc"
	"fieldfare/gridref"
)

// leastPast is how many past records a hectad or site must have before a
// taxon that is new to it says anything (common practice, no source).
const leastPast = 10

// past knows which taxa have been recorded where, to tell firsts.
type past struct {
	taxa    hashes // taxon and place, for hectads and sites
	known   sorted
	records map[uint64]int32 // of each hectad and site
	asked   map[uint64]bool
}

func (p *past) add(o *dwc.Occurrence, f *Facts) {
	if o.ScientificName == "" || o.OccurrenceStatus == "absent" {
		return
	}
	if p.records == nil {
		p.records = map[uint64]int32{}
	}
	for _, place := range [...]uint64{hectadKey(f), siteKey(o)} {
		if place != 0 {
			p.records[place]++
			p.taxa.add(hash(place).text(o.ScientificName).sum())
		}
	}
}

func (p *past) settle() (err error) {
	p.known, err = p.taxa.distinct()
	p.asked = map[uint64]bool{}
	return err
}

// concerns tells whether the taxon is new to the record's hectad or site.
func (p *past) concerns(e *Entry) bool {
	if len(p.known) == 0 || e.ScientificName == "" || e.OccurrenceStatus == "absent" {
		return false
	}
	_, inHectad := p.fresh(hectadKey(e.Facts), e.ScientificName)
	_, atSite := p.fresh(siteKey(e.Occurrence), e.ScientificName)
	return inHectad || atSite
}

func (p *past) find(e *Entry) (reading.Finding, bool) {
	if len(p.known) == 0 || e.ScientificName == "" || e.OccurrenceStatus == "absent" {
		return reading.Finding{}, false
	}
	if p.first(hectadKey(e.Facts), e.ScientificName) {
		hectad := hectadOf(e.Facts)
		return queryOf(aboutRecord, written(nameOf(e.Occurrence), hectad), "first-for-hectad", fmt.Sprintf(
			"By the past records, this is the first %s for the hectad %s. Check the name and the place; if it is right, answer keep and tell of it.", nameOf(e.Occurrence), hectad)), true
	}
	if p.first(siteKey(e.Occurrence), e.ScientificName) {
		return queryOf(aboutRecord, written(nameOf(e.Occurrence), e.Locality), "first-for-site", fmt.Sprintf(
			"By the past records, this is the first %s for %s. Check the name; if it is right, answer keep.", nameOf(e.Occurrence), e.Locality)), true
	}
	return reading.Finding{}, false
}

// first tells whether the taxon is new to a place with past records, the first
// time that it is asked.
func (p *past) first(place uint64, taxon string) bool {
	key, fresh := p.fresh(place, taxon)
	if !fresh || p.asked[key] {
		return false
	}
	p.asked[key] = true
	return true
}

// fresh tells whether the past records of a place do not have the taxon.
func (p *past) fresh(place uint64, taxon string) (key uint64, fresh bool) {
	if place == 0 || p.records[place] < leastPast {
		return 0, false
	}
	key = hash(place).text(taxon).sum()
	return key, !p.known.has(key)
}

func siteKey(o *dwc.Occurrence) uint64 {
	if o.Locality == "" {
		return 0
	}
	return newHash.byte('s').folded(o.Locality).sum()
}

func hectadKey(f *Facts) uint64 {
	if h := hectadOf(f); h != "" {
		return newHash.byte('h').text(h).sum()
	}
	return 0
}

// hectadOf names the hectad of a square of the British or Irish grid, or of a
// point within half of one; empty where there is none.
func hectadOf(f *Facts) string {
	if f.Reference == "" {
		if !f.Placed || f.Radius > 5000 {
			return ""
		}
		square, err := gridref.Point{Lat: f.Latitude, Lon: f.Longitude}.Square(gridref.British, 10_000)
		if err != nil || !square.HasLand() {
			return ""
		}
		return square.String()
	}
	letters := strings.IndexAny(f.Reference, "0123456789")
	if letters < 1 || letters > 2 {
		return ""
	}
	figures := strings.TrimRight(f.Reference[letters:], "ABCDEFGHIJKLMNOPQRSTUVWXYZ")
	if len(figures) < 2 || len(figures)%2 != 0 {
		return ""
	}
	return f.Reference[:letters] + figures[:1] + figures[len(figures)/2:len(figures)/2+1]
}

// FactsOf reads what a record of an earlier submission says of date, place and
// count, for Set.Past.
func FactsOf(o *dwc.Occurrence) Facts {
	var f Facts
	f.Start, f.End, f.Dated = daysOf(o.EventDate)
	lat, errLat := strconv.ParseFloat(o.DecimalLatitude, 64)
	lon, errLon := strconv.ParseFloat(o.DecimalLongitude, 64)
	if errLat == nil && errLon == nil {
		f.Latitude, f.Longitude, f.Placed = lat, lon, true
		radius, _ := strconv.ParseFloat(o.CoordinateUncertainty, 64)
		f.Radius = float32(radius)
	}
	if r, err := gridref.Parse(o.VerbatimCoordinates); err == nil && !r.Geographic() {
		f.Reference, f.SquareSize = r.Square.String(), r.Square.Size
	}
	if n, err := strconv.ParseInt(o.IndividualCount, 10, 32); err == nil && n >= 0 {
		f.Count, f.Counted = int32(n), true
	}
	return f
}
