package places

import (
	"fmt"
	"math"

	"fieldfare/convert/reading"
	"fieldfare/gridref"
)

// Agree checks a record's reference against the place that it is said to be
// at: it is a query where no part of the square lies within the tolerance, in
// metres, of the place's own square. A reference that a single slip would have
// made of one at the place is named as such. A place without a usable
// reference agrees with everything.
func Agree(place Reading, written gridref.Reading, tolerance int) reading.Verdict {
	if !place.Placed {
		return reading.Verdict{}
	}
	apart := Apart(place.Where, written)
	if apart <= float64(tolerance) {
		return reading.Verdict{}
	}
	message := fmt.Sprintf("The reference lies %s from %s, which the places list has at %s.",
		distanceInWords(apart), place.Name, place.Place.Reference)
	if s, found := slipTo(place.Where, written, tolerance); found {
		return reading.QueryOf("site-reference-disagrees", message+" "+s.sentence()+" Please check the reference and the site.", s.String())
	}
	return reading.QueryOf("site-reference-disagrees", message+" Please check the reference and the site.")
}

// Apart returns how far two places are apart at the least, in metres: the gap
// between their squares on a grid that both have, else between their centres
// on the sphere, less the uncertainties of both.
func Apart(a, b gridref.Reading) float64 {
	if !a.Geographic() && a.Square.Grid == b.Square.Grid {
		dx := gap(a.Square.Easting, a.Square.Size, b.Square.Easting, b.Square.Size)
		dy := gap(a.Square.Northing, a.Square.Size, b.Square.Northing, b.Square.Size)
		return math.Hypot(dx, dy)
	}
	p, q := a.Centre(), b.Centre()
	return max(0, onSphere(p, q)-p.Uncertainty-q.Uncertainty)
}

// gap is the distance between two stretches of a line, 0 where they touch.
func gap(a, sizeA, b, sizeB int32) float64 {
	return max(0, float64(b)-float64(a)-float64(sizeA), float64(a)-float64(b)-float64(sizeB))
}

// meanRadius is the Earth's mean radius in metres (IUGG; from memory). The
// sphere is within 0.6 % of the ellipsoid, which is enough to tell near from
// far.
const meanRadius = 6_371_008.8

// onSphere is the distance of two points by the haversine formula.
func onSphere(p, q gridref.Point) float64 {
	rad := math.Pi / 180
	s1 := math.Sin((q.Lat - p.Lat) / 2 * rad)
	s2 := math.Sin((q.Lon - p.Lon) / 2 * rad)
	h := s1*s1 + math.Cos(p.Lat*rad)*math.Cos(q.Lat*rad)*s2*s2
	return 2 * meanRadius * math.Asin(math.Sqrt(min(1, h)))
}

func distanceInWords(m float64) string {
	if m < 1000 {
		return fmt.Sprintf("%.0f m", m)
	}
	return fmt.Sprintf("%.1f km", m/1000)
}
