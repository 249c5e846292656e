package bdq

import (
	"math"
	"strconv"
	"strings"
	"sync"
)

// datumShifts is the grid of lists/datum_shift.txt: by squares of 5 degrees,
// from 90 S and 180 W.
var datumShifts = sync.OnceValue(func() [36][72]int {
	var grid [36][72]int
	for i, row := range list("datum_shift.txt") {
		for j, text := range strings.Fields(row[0]) {
			metres, err := strconv.Atoi(text)
			if err != nil { // the lists are part of the program
				panic(err)
			}
			grid[i][j] = metres
		}
	}
	return grid
})

// datumShift is the most, in metres, by which a position may be misplaced when
// a datum that nobody stated is taken to be WGS 84. ok is false for a position
// that is not on the Earth.
func datumShift(latitude, longitude float64) (metres int, ok bool) {
	if !(math.Abs(latitude) <= 90 && math.Abs(longitude) <= 180) {
		return 0, false
	}
	i := min(int((latitude+90)/5), 35)
	j := min(int((longitude+180)/5), 71)
	return datumShifts()[i][j], true
}

// assumedDatum is AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT.
func assumedDatum(r *record, p *parameters) Response {
	const datum, uncertainty = "dwc:geodeticDatum", "dwc:coordinateUncertaintyInMeters"
	if !r.empty(datum) {
		return notAmended("is stated already").of(datum, r.get(datum))
	}
	assumed := Change{datum, p.datum}
	metres, ok := number(r.get(uncertainty))
	latitude, okLatitude := number(r.get("dwc:decimalLatitude"))
	longitude, okLongitude := number(r.get("dwc:decimalLongitude"))
	if ok && okLatitude && okLongitude && metres >= 1 && metres <= halfEquator {
		if shift, onEarth := datumShift(latitude, longitude); onEarth {
			if p.datum != "EPSG:4326" {
				// No datum is farther from WGS 84 than that, so none is
				// farther from another than twice as much.
				shift *= 2
			}
			sum := strconv.FormatFloat(metres+float64(shift), 'f', -1, 64)
			return amended("the assumed datum stated, and the uncertainty widened by the largest shift between datums there",
				assumed, Change{uncertainty, sum})
		}
	}
	return filledIn("is not stated; the assumed datum is proposed", assumed).of(datum, "")
}
