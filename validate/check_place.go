package validate

import (
	"fmt"
	"strconv"
)

// checkLand asks about a place with no land near it, which the pipeline knows
// from package land. (References whose 100 km
// letters have no land at all are held while they are read.)
func checkLand(s *subject) {
	if !s.f.AtSea {
		return
	}
	s.query(aboutPlace, s.place(), "no-land", fmt.Sprintf(
		"“%s” lies in the sea. Check the reference; the letters or the sign may be wrong, or the two values swapped.", s.place()))
}

// place is the place as written.
func (s *subject) place() string {
	o := s.o
	switch {
	case o.VerbatimCoordinates != "":
		return o.VerbatimCoordinates
	case o.VerbatimLatitude != "":
		return o.VerbatimLatitude + ", " + o.VerbatimLongitude
	}
	return siteOf(o, s.f)
}

// highest is the top of Ben Nevis in metres (Ordnance Survey, from memory).
const highest = 1345

// checkElevation asks about ground that these islands do not have.
func checkElevation(s *subject) {
	low, high := s.o.MinimumElevation, s.o.MaximumElevation
	if low == "" && high == "" {
		return
	}
	l, errLow := strconv.ParseFloat(low, 64)
	h, errHigh := strconv.ParseFloat(high, 64)
	switch {
	case errLow == nil && errHigh == nil && l > h:
		s.query(aboutHeight, written(low, high), "high-ground", fmt.Sprintf("The lower elevation, %s m, is above the higher one, %s m.", low, high))
	case s.o.CountryCode == "GB" && (errLow == nil && l > highest || errHigh == nil && h > highest):
		s.query(aboutHeight, s.o.VerbatimElevation, "high-ground", fmt.Sprintf(
			"The elevation “%s” is above the highest ground of Britain (%d m). It may be in feet, or the figures of something else.", s.o.VerbatimElevation, highest))
	}
}
