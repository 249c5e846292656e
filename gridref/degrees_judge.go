package gridref

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// judge makes a reading of latitude and longitude. fixed says that labels name
// the axes.
func judge(w written, lat, lon angle, fixed bool) (Reading, error) {
	for _, a := range []angle{lat, lon} {
		if a.broken != "" {
			return fault(OutOfRange, w.quoted+" "+a.broken+".")
		}
	}
	at := func(lat, lon angle) Reading {
		return Reading{Place: Point{lat.value, lon.value, uncertainty(lat.value, lat.precision, lon.precision)}}
	}
	r := at(lat, lon)
	lettered := lat.hemi != 0 && lon.hemi != 0
	if !fits(lat.value, lon.value) {
		if fits(lon.value, lat.value) && lat.hemi == 0 && lon.hemi == 0 && !fixed {
			r = at(lon, lat)
			return query(r, Swapped, fmt.Sprintf("%s makes sense only with the longitude first. It was read as %s; please confirm it.", w.quoted, r.Place)), nil
		}
		return fault(OutOfRange, fmt.Sprintf("%s is no place: latitude runs from -90 to 90 and longitude from -180 to 180.", w.quoted))
	}
	if lat.value == 0 && lon.value == 0 {
		return fault(OutOfRange, w.quoted+" is latitude 0, longitude 0, in the sea off Africa, which usually means that no place was known.")
	}
	if !lettered && !home(r.Place) {
		if likelier, code, why := atHome(lat, lon, fixed); code != "" {
			r = at(likelier[0], likelier[1])
			return query(r, code, fmt.Sprintf("%s lies outside Britain and Ireland as written, but within them %s. It was read as %s; "+
				"please confirm it.", w.quoted, why, r.Place)), nil
		}
	}
	bare := func(a angle) bool { return a.parts == 1 && a.precision >= 1 && a.hemi == 0 && !a.signed }
	if bare(lat) && bare(lon) && !fixed && !strings.Contains(w.text, "°") && !home(r.Place) {
		return fault(LettersMissing, w.quoted+" is only figures; the letters of the 100 km square are missing, such as TL before 4881.")
	}
	return lat.doubts(lon, r, w), nil
}

// doubts asks about values that are readable but odd.
func (lat angle) doubts(lon angle, r Reading, w written) Reading {
	switch {
	case lat.negative && lat.hemi != 0 || lon.negative && lon.hemi != 0:
		r = query(r, Direction, fmt.Sprintf("%s has both a sign and a letter for the direction. It was read as %s; please confirm it.", w.quoted, r.Place))
	case lat.hemi != 0 && lon.hemi == 0 && !lon.signed && lon.value != 0,
		lon.hemi != 0 && lat.hemi == 0 && !lat.signed && !home(r.Place),
		lon.parts > 1 && lon.hemi == 0 && !lon.signed && lon.value != 0:
		r = query(r, Direction, fmt.Sprintf("%s does not say north or south, and east or west, for both values. It was read as %s; please confirm it.",
			w.quoted, r.Place))
	}
	if lon.dashed {
		r = query(r, Direction, fmt.Sprintf("%s has a dash that may be a minus sign or only stand between the values. It was read as a minus, %s; "+
			"please confirm it.", w.quoted, r.Place))
	}
	if lat.precision >= 1 || lon.precision >= 1 {
		r = query(r, WholeDegrees, fmt.Sprintf("%s has whole degrees only, which may be out by a hundred kilometres. It was read as %s; "+
			"please add decimals or minutes.", w.quoted, r.Place))
	}
	return r
}

func fits(lat, lon float64) bool { return math.Abs(lat) <= 90 && math.Abs(lon) <= 180 }

// home reports whether a place lies in a 100 km square with land of these
// islands.
func home(p Point) bool {
	g := p.Serving()
	return g == British || g == Irish || g == ChannelIslands
}

// atHome looks for the one mistake that would keep a place from these islands:
// a lost or an added sign, the values swapped, or both.
func atHome(lat, lon angle, fixed bool) (found [2]angle, code, why string) {
	negated := func(a angle) angle { a.value = -a.value; return a }
	within := func(lat, lon angle) bool {
		return fits(lat.value, lon.value) && home(Point{Lat: lat.value, Lon: lon.value})
	}
	free := func(a angle) bool { return a.hemi == 0 }
	both := free(lat) && free(lon)
	switch {
	case free(lon) && within(lat, negated(lon)):
		return [2]angle{lat, negated(lon)}, SignLost, "with the longitude to the other side of Greenwich"
	case free(lat) && within(negated(lat), lon):
		return [2]angle{negated(lat), lon}, SignLost, "with the latitude north of the equator"
	case both && within(negated(lat), negated(lon)):
		return [2]angle{negated(lat), negated(lon)}, SignLost, "with both signs changed"
	case both && !fixed && within(lon, lat):
		return [2]angle{lon, lat}, Swapped, "with the two values in the other order"
	case both && !fixed && within(lon, negated(lat)):
		return [2]angle{lon, negated(lat)}, Swapped, "with the two values in the other order and the longitude west of Greenwich"
	}
	return found, "", ""
}

// parseISO6709 reads +52.4075+000.1735/ and its forms with minutes and seconds.
func parseISO6709(w written, m []string) (Reading, error, bool) {
	if len(m[2])%2 == 1 || len(m[5])%2 == 0 {
		return Reading{}, nil, false
	}
	part := func(sign, whole, fraction string, width int) angle {
		var ms []mark
		if sign == "-" {
			ms = append(ms, mark{kind: '-'})
		} else {
			ms = append(ms, mark{kind: '+'})
		}
		ms = append(ms, mark{kind: '#', number: whole[:width]})
		for i := width; i < len(whole); i += 2 {
			ms = append(ms, mark{kind: '#', number: whole[i : i+2]})
		}
		ms[len(ms)-1].number += fraction
		return newAngle(ms)
	}
	r, err := judge(w, part(m[1], m[2], m[3], 2), part(m[4], m[5], m[6], 3), true)
	return r, err, true
}

// String returns the point as latitude and longitude in degrees with as many
// decimals as its uncertainty is worth, four to seven.
func (p Point) String() string {
	decimals := 7
	if p.Uncertainty > 0 {
		decimals = min(max(5-int(math.Floor(math.Log10(p.Uncertainty)))+1, 4), 7)
	}
	figures := func(v float64) string {
		s := strconv.FormatFloat(v, 'f', decimals, 64)
		if strings.Contains(s, ".") {
			s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
		}
		if s == "-0" {
			return "0"
		}
		return s
	}
	return figures(p.Lat) + ", " + figures(p.Lon)
}
