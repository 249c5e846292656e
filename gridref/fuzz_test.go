package gridref

import (
	"errors"
	"math"
	"strings"
	"testing"
)

var fuzzSeeds = []string{
	"", " ", "TL48", "TL 483 812", "tl48j", "TL48NE", "TL 545300 281200", "H 12 34", "IH1234", "WV6548", "31UCT0412",
	"ZAA0000033272", "31U 304512 5803245", "304512 5803245 31U", "545300 281200", "E545300 N281200", "545,300 281,200",
	"5453,2812", "5.453E+05 2.812E+05", "52.4183, 0.1234", "52°24'36\"N 0°7'12\"W", "52 24.608N 0 7.2W", "522436N 0000712W",
	"+52.4183-000.1234/", "52,4183 0,1234", "POINT(0.1234 52.4183)", "lat 52.4183 long -0.1234", "52.4183, 0.1234 ±10m",
	"0.3E, 52.4N", "TLO512", "TL48 12/06/2021", "TL4812 TL4913", "SE15 4NN", "12-Jun", "TL48 (10km square)", "TL4812?",
	"0.1234, 52.4183", "54.5, 3.2", "TL\u00a048\u00a053", "TL48\u200b53", "\xff\xfe", "１２３", "TL483018120212",
}

// A reading is always a place that exists; a fault always says something.
func checkReading(t *testing.T, text string, r Reading, err error) {
	t.Helper()
	if err != nil {
		var f *Fault
		if !errors.As(err, &f) || f.Code == "" || f.Message == "" {
			t.Fatalf("%q: a fault that says nothing: %v", text, err)
		}
		return
	}
	if (r.Doubt.Code == "") != (r.Doubt.Message == "") {
		t.Fatalf("%q: half a doubt: %v", text, r.Doubt)
	}
	p := r.Centre()
	if !(math.Abs(p.Lat) <= 90 && math.Abs(p.Lon) <= 180 && p.Uncertainty > 0) || math.IsInf(p.Uncertainty, 0) {
		t.Fatalf("%q: no place: %v", text, p)
	}
	if r.Geographic() {
		return
	}
	if !r.Square.Valid() {
		t.Fatalf("%q: no square: %v", text, r.Square)
	}
	ref := r.Square.String()
	again, err := Parse(ref)
	if f := (*Fault)(nil); errors.As(err, &f) && f.Code == DateOnly {
		return // 12JUN is a square too
	}
	if err != nil || again.Square.String() != ref {
		t.Fatalf("%q was read as %s, which is read as %v, %v", text, ref, again.Square, err)
	}
}

func FuzzParse(f *testing.F) {
	for _, s := range fuzzSeeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := Parse(text)
		checkReading(t, text, r, err)
	})
}

func FuzzParseNumber(f *testing.F) {
	for _, s := range append(fuzzSeeds, "TL 812", "TL 45 812") {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := ParseNumber(text)
		checkReading(t, text, r, err)
	})
}

func FuzzParsePairs(f *testing.F) {
	for _, s := range fuzzSeeds {
		if a, b, ok := strings.Cut(s, " "); ok {
			f.Add(a, b)
		}
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		r, err := ParseLatLon(a, b)
		checkReading(t, a+" | "+b, r, err)
		r, err = ParseEastingNorthing(a, b)
		checkReading(t, a+" | "+b, r, err)
	})
}
