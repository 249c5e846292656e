// Package light computes when a day ends: sunset, and the end of civil
// twilight, for a place and a date; and asks about a light trap that is said
// to have been lit by day.
//
// The position of the sun is that of Jean Meeus, Astronomical Algorithms (2nd
// edition, Willmann-Bell, 1998), chapter 25 (solar coordinates of low
// accuracy, good to 0.01 degree) and chapter 28 (equation of time), the
// formulas that the solar calculator of the US National Oceanic and
// Atmospheric Administration uses. Sunrise and sunset are the sun's upper limb
// at the horizon, its centre 50 minutes of arc below, with refraction for a
// level horizon; civil twilight ends at six degrees below (the almanacs'
// convention, from memory: Explanatory Supplement to the Astronomical Almanac,
// chapter on sunrise and twilight). Results agree with an almanac to a minute at British
// latitudes.
package light

import (
	"math"
	"time"

	"fieldfare/convert/when"
)

// Altitudes of the sun's centre, in degrees.
const (
	horizon       = -50.0 / 60
	civilTwilight = -6.0
)

// Day is the light of one day at one place. A time is zero where the sun does
// not come to the height that day.
type Day struct {
	Dawn    time.Time // beginning of civil twilight, UTC
	Sunrise time.Time
	Sunset  time.Time
	Dusk    time.Time // end of civil twilight
}

// Of computes the light of the day around noon on a date, at a latitude (-90
// to 90) and longitude (-180 to 180, east positive) in degrees.
func Of(latitude, longitude float64, d when.Date) Day {
	return Day{
		Dawn:    crossing(latitude, longitude, d, civilTwilight, -1),
		Sunrise: crossing(latitude, longitude, d, horizon, -1),
		Sunset:  crossing(latitude, longitude, d, horizon, 1),
		Dusk:    crossing(latitude, longitude, d, civilTwilight, 1),
	}
}

// crossing finds when the sun is at an altitude, before (-1) or after (1) the
// noon of a date. The sun's declination changes through the day, so the time
// is found by repetition; four rounds settle it to a second.
func crossing(latitude, longitude float64, d when.Date, altitude float64, side float64) time.Time {
	midnight := float64(d.Days()) + 2440587.5 // Julian date of 1 January 1970, 00:00 UTC
	day := 0.5 - longitude/360                // fraction of the day, UTC
	for range 4 {
		declination, equation := sun(midnight + day)
		noon := 0.5 - longitude/360 - equation/1440
		cosine := (sine(altitude) - sine(latitude)*math.Sin(declination)) / (cosineOf(latitude) * math.Cos(declination))
		if math.IsNaN(cosine) || cosine < -1 || cosine > 1 {
			return time.Time{}
		}
		day = noon + side*math.Acos(cosine)/(2*math.Pi)
	}
	seconds := math.Round(day * 86400)
	return time.Unix(int64(d.Days())*86400+int64(seconds), 0).UTC()
}

// sun returns the sun's declination, in radians, and the equation of time, in
// minutes, at a Julian date.
func sun(julian float64) (declination, equation float64) {
	t := (julian - 2451545) / 36525
	longitude := 280.46646 + t*(36000.76983+t*0.0003032) // mean longitude, degrees
	anomaly := 357.52911 + t*(35999.05029-t*0.0001537)   // mean anomaly, degrees
	eccentricity := 0.016708634 - t*(0.000042037+t*0.0000001267)
	centre := sine(anomaly)*(1.914602-t*(0.004817+t*0.000014)) +
		sine(2*anomaly)*(0.019993-t*0.000101) + sine(3*anomaly)*0.000289
	node := 125.04 - 1934.136*t
	apparent := longitude + centre - 0.00569 - 0.00478*sine(node)
	obliquity := 23.4392911 - t*(0.0130042+t*(0.00000016-t*0.000000504)) + 0.00256*cosineOf(node)
	declination = math.Asin(sine(obliquity) * sine(apparent))

	y := math.Tan(radians(obliquity) / 2)
	y *= y
	e := eccentricity
	equation = y*sine(2*longitude) - 2*e*sine(anomaly) + 4*e*y*sine(anomaly)*cosineOf(2*longitude) -
		y*y/2*sine(4*longitude) - 5*e*e/4*sine(2*anomaly)
	return declination, equation * 4 * 180 / math.Pi
}

func radians(degrees float64) float64  { return degrees * math.Pi / 180 }
func sine(degrees float64) float64     { return math.Sin(radians(degrees)) }
func cosineOf(degrees float64) float64 { return math.Cos(radians(degrees)) }
