package validate

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/dwc"
)

// How far apart one person's places may be, in metres (common practice, no
// source): traps that are lit at dusk and emptied at dawn, and a day's travel.
const (
	nightApart = 50_000
	dayApart   = 150_000
)

// journeys finds people at places too far apart on one date.
//
// Each visit is a value of 40 bits for the person and day and 24 for a cell of
// 0.044 by 0.088 degrees, some 5 km. Days with cells far apart are looked at
// again, with their exact places.
type journeys struct {
	visits hashes
	last   uint64
	far    sorted // persons and days
	first  map[uint64]stay
}

// stay is the first place of a person on a day.
type stay struct {
	lat, lon   float64
	radius     float64
	sheet, row int32
	night      bool
}

const cellBits = 24

// day tells whether the record can be put on one day and one place.
func oneVisit(o *dwc.Occurrence, f *Facts) bool {
	return f.Dated && f.Placed && f.End-f.Start <= 1 && o.RecordedBy != "" && f.Radius < nightApart
}

func visitKey(person string, day int32) uint64 { return newHash.folded(person).number(day).sum() }

func cellOf(lat, lon float64) uint64 {
	north := min(max(int((lat+90)/180*4096), 0), 4095)
	east := min(max(int((lon+180)/360*4096), 0), 4095)
	return uint64(north)<<12 | uint64(east)
}

func cellCentre(cell uint64) (lat, lon float64) {
	return (float64(cell>>12&4095)+0.5)*180/4096 - 90, (float64(cell&4095)+0.5)*360/4096 - 180
}

func (j *journeys) add(visits []uint64) {
	for _, v := range visits {
		if v != j.last { // a night's records stand together
			j.visits.add(v)
			j.last = v
		}
	}
}

func (j *journeys) settle() error {
	const diagonal = 8000 // of a cell, metres
	err := j.visits.each(cellBits, func(run []uint64) {
		lat, lon := cellCentre(run[0])
		for _, v := range run[1:] {
			if v == run[0] {
				continue
			}
			if la, lo := cellCentre(v); metresApart(lat, lon, la, lo) > nightApart-2*diagonal {
				j.far = append(j.far, run[0]>>cellBits)
				return
			}
		}
	})
	j.visits.drop()
	j.first = map[uint64]stay{}
	return err
}

// concerns tells whether the record is of a day with places far apart.
func (j *journeys) concerns(k *keys, e *Entry) bool {
	if len(j.far) == 0 || !oneVisit(e.Occurrence, e.Facts) {
		return false
	}
	return slices.ContainsFunc(k.visits(e.Occurrence, e.Facts), func(v uint64) bool { return j.far.has(v >> cellBits) })
}

func (j *journeys) find(e *Entry, where func(sheet, row int) string) []reading.Finding {
	if len(j.far) == 0 || !oneVisit(e.Occurrence, e.Facts) {
		return nil
	}
	var found []reading.Finding
	f := e.Facts
	for person := range strings.SplitSeq(e.RecordedBy, " | ") {
		key := visitKey(person, f.Start)
		if !j.far.has(key >> cellBits) {
			continue
		}
		here := stay{f.Latitude, f.Longitude, float64(f.Radius), int32(e.Sheet), int32(e.Row), f.Light || f.Night}
		first, known := j.first[key]
		if !known {
			j.first[key] = here
			continue
		}
		apart := metresApart(first.lat, first.lon, here.lat, here.lon) - first.radius - here.radius
		limit, what := dayApart, "day"
		if first.night && here.night {
			limit, what = nightApart, "night"
		}
		if apart <= float64(limit) {
			continue
		}
		found = append(found, queryOf(aboutRecord, written(person, iso(f.Start)), "two-places-at-once", fmt.Sprintf(
			"%s is at %s here and %.0f km away at %s on the same %s, %s. Check the places, the date and who recorded.",
			person, siteOf(e.Occurrence, f), apart/1000, where(int(first.sheet), int(first.row)), what, words(f.Start))))
	}
	return found
}

// metresApart is the distance on a sphere of the Earth's mean radius (IUGG; from
// memory) by the haversine formula.
func metresApart(lat1, lon1, lat2, lon2 float64) float64 {
	const rad = math.Pi / 180
	a, b := math.Sin((lat2-lat1)/2*rad), math.Sin((lon2-lon1)/2*rad)
	h := a*a + math.Cos(lat1*rad)*math.Cos(lat2*rad)*b*b
	return 2 * 6_371_008.8 * math.Asin(math.Sqrt(min(1, h)))
}
