package bdq

import (
	"math"
	"strings"
	"testing"
)

func FuzzVertical(f *testing.F) {
	for _, seed := range []string{"10-15 ftm", "Mindepth 10m, maxdepth=100m", "1,500 ft a.s.l.", "-10 - 20 m", "between 1 and 1.5 km"} {
		f.Add(seed, true)
		f.Add(seed, false)
	}
	f.Fuzz(func(t *testing.T, s string, belowZero bool) {
		low, high, ok := interpretVertical(s, belowZero)
		if !ok {
			return
		}
		a, okLow := number(low)
		b, okHigh := number(high)
		tooLong := len(low) > 64 || len(high) > 64
		if !tooLong && (!okLow || !okHigh || a > b || a < 0 && !belowZero) {
			t.Fatalf("%q gives %q and %q", s, low, high)
		}
	})
}

func FuzzCoordinates(f *testing.F) {
	for _, seed := range []string{"41 05 54S 121d 05' 34\"W", "139.92, -23.712", "S23.712 E139.92", "Lat: 23.7 S; Long: 139.9 E", "139 degrees 55.38 minutes east, 5 N"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, s string) {
		p, ok := parseCoordinates(s)
		if !ok {
			return
		}
		latitude, okLatitude := number(p.latitude.text)
		longitude, okLongitude := number(p.longitude.text)
		if !okLatitude || !okLongitude || math.Abs(latitude) > 90 || math.Abs(longitude) > 180 ||
			math.Abs(latitude-p.latitude.degrees) > 1e-6 || math.Abs(longitude-p.longitude.degrees) > 1e-6 {
			t.Fatalf("%q gives %q and %q", s, p.latitude.text, p.longitude.text)
		}
	})
}

func FuzzPolynomial(f *testing.F) {
	for _, seed := range []string{"Hakea decurrens ssp. Aff. physocarpa", "× Sorbaronia fallax", "Aus bus Smith f. f. albus", "Lasius (Chthonolasius) umbratus (Nylander, 1846)"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, part := range polynomial(s) {
			if !strings.Contains(s, part) {
				t.Fatalf("%q gives %q", s, part)
			}
		}
	})
}
