package gridref

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fairForms are values that are read without a doubt: the reference, or the
// latitude and longitude, and the ways of writing it. How people write places is
// common practice, no source; what degrees, minutes and letters are worth
// follows the standards that the package page cites.
var fairForms = map[string][]string{
	"TL":           {"TL", "tl", " TL ", "(TL)", "T L"},
	"TL48":         {"TL48", "tl48", "TL 48", "TL 4 8", "TL-4-8", "TL48 (10km square)", "hectad TL48", "TL48 10km"},
	"TL48J":        {"TL48J", "tL48j", "TL 48 J", "TL 48  j", "TL.48.J", "TL48 (J)", "TL 48/J", "TL48 tetrad J", "tetrad TL48J", "TL48J (2 km)"},
	"NF0958799448": {"9587 899448", "9587.909, 899448.996"},
	"SV9149209318": {"91492 9318"},
	"TL48C":        {"TL 48 C", "TL48C", "tl48 c"},
	"TL48I":        {"TL48I", "tl48i"},
	"TL48NE":       {"TL48NE", "tl 48 ne", "TL48 N.E.", "TL48-NE", "TL48 quadrant NE", "TL48NE (5 km)"},
	"TL4881": {
		"TL4881", "tl4881", "TL 48 81", "TL 4881", "TL.48.81", "TL/48/81", "TL-48-81", "TL,48,81", "TL 48, 81", "TL48-81", "TL48–81",
		"TL 48 – 81", "TL48:81", "TL_48_81", "(TL4881)", "TL(4881)", "[TL4881]", "{TL 48 81}", "\"TL4881\"", "‘TL4881’", "TL4881.", "TL4881,",
		"-TL4881-", "TL\u00a048\u00a081", "TL\u200948\u202f81", "TL48\u200b81", "\ufeffTL4881", "ＴＬ４８８１", "T L 4 8 8 1", "T.L.48.81",
		"TL4881 approx", "TL 4881 approx.", "TL4881 (approx)", "TL4881, approximately", "approx TL4881", "c. TL4881", "ca TL4881", "~TL4881",
		"about TL 48 81", "circa TL4881", "TL4881 est.", "Grid ref: TL4881", "grid reference TL 48 81", "GR TL4881", "GR: TL4881", "NGR: TL4881",
		"NGR TL 48 81", "OSGR TL4881", "O.S. grid ref. TL4881", "OSGB36 TL4881", "GB TL4881", "TL4881 (1km)", "TL4881 monad", "TL\t48\t81", "TL\xa048\xa081",
		"TL4881, TL4881", "TL4881!", "TL4881 1km", "TL4881 1000m",
	},
	"TL483812":     {"TL483812", "TL 483 812", "tl483 812", "TL 48.3 81.2", "TL/483/812", "TL 483-812", "TL 483 812 (six figure)", "TL483812 (6 fig)", "TL483812 (100m)"},
	"TL48308120":   {"TL48308120", "TL 4830 8120", "TL-4830-8120", "TL 483.0 812.0", "TL.4830.8120"},
	"TL4830181202": {"TL4830181202", "TL 48301 81202", "tl 48301, 81202", "TL 548301 281202", "548301 281202", "E548301 N281202", "N281202 E548301"},
	"TL4530081200": {
		"545300 281200", "545300,281200", "545300, 281200", "545300;281200", "545300/281200", "545300\t281200", "545300 | 281200",
		"E545300 N281200", "N281200 E545300", "545300E 281200N", "545300mE, 281200mN", "545300m E 281200m N", "Easting 545300 Northing 281200",
		"Eastings: 545300, Northings: 281200", "E: 545300, N: 281200", "X 545300 Y 281200", "x=545300 y=281200", "545,300 281,200", "545 300 281 200",
		"E 545 300 N 281 200", "(545300, 281200)", "545300.0 281200.0", "0545300 0281200", "545300,0 281200,0", "545300 281200 approx", "545300 281200 OSGB36", "545300 281200 (BNG)",
	},
	"SV9149211318":  {"91492 11318", "SV 91492 11318", "091492 011318"},
	"H":             {"H"},
	"H12":           {"H12", "h12", "H 1 2"},
	"H12J":          {"H12J", "H 12 J", "h12j"},
	"H12NE":         {"H12NE", "H 12 ne"},
	"H1234":         {"H1234", "H 12 34", "h1234", "H.12.34", "Irish grid H 12 34", "IGR H1234", "Ireland H1234"},
	"C1234":         {"C1234", "C 12 34", "C/12/34", "c.1234"},
	"O153345":       {"O153345", "O 153 345", "o 153-345"},
	"J34747432":     {"J34747432", "J 3474 7432"},
	"S1234":         {"S1234", "S 12 34"},
	"N1234":         {"N1234", "N 12 34"},
	"WV":            {"WV"},
	"WV6548":        {"WV6548", "WV 65 48", "wv 65-48"},
	"WV655480":      {"WV655480", "WV 655 480"},
	"WA57":          {"WA57", "WA 5 7"},
	"31UCT":         {"31UCT", "31U CT"},
	"31UCT0412":     {"31UCT0412", "31U CT 04 12", "31uct0412", "31U-CT-0412", "MGRS 31UCT0412", "MGRS: 31U CT 0412"},
	"04QFJ12345678": {"4QFJ12345678", "04QFJ12345678", "4Q FJ 1234 5678"},
	"30UWV6548":     {"30UWV6548", "30U WV 65 48"},
	"ZAA0000033272": {"ZAA0000033272", "ZAA 00000 33272"},
	"31UCU0451203245": {
		"31U 304512 5803245", "31 U 304512 5803245", "304512 5803245 31U", "304512, 5803245, 31U", "UTM 31U 304512 5803245",
		"UTM zone 31U 304512 5803245", "UTM 31N 304512 5803245", "31N 304512 5803245", "304512E 5803245N (31U)", "304512mE 5803245mN 31U", "31U E 304512 N 5803245",
		"Zone 31U E:304512 N:5803245", "WGS84 31U 304512 5803245", "zone 31, 304512 5803245", "UTM 31 304512 5803245", "31U 0304512 5803245",
	},
	"55HCC3487352266": {"55H 334873 6252266", "UTM zone 55 south 334873 6252266"},
	"52.4183, 0.1234": {
		"52.4183, 0.1234", "52.4183 0.1234", "52.4183,0.1234", "52.4183; 0.1234", "52.4183/0.1234", "52.4183\t0.1234", "(52.4183, 0.1234)", "[52.4183, 0.1234]",
		"52.4183N 0.1234E", "52.4183 N, 0.1234 E", "N52.4183 E0.1234", "N 52.4183 E 0.1234", "52.4183°N, 0.1234°E", "52.4183° N 0.1234° E",
		"0.1234E, 52.4183N", "E0.1234 N52.4183", "0.1234°E 52.4183°N", "52,4183 0,1234", "52,4183; 0,1234", "52,4183, 0,1234", "52,4183,0,1234",
		"Lat 52.4183 Long 0.1234", "latitude: 52.4183, longitude: 0.1234", "Longitude 0.1234 Latitude 52.4183", "lat 52.4183 N long 0.1234 E",
		"POINT(0.1234 52.4183)", "geo:52.4183,0.1234", "+52.4183+000.1234/", "52.4183, 0.1234 WGS84", "52.4183 degrees north, 0.1234 degrees east",
		"52.4183north 0.1234east", "52.4183, 0.1234 approx", "52.4183\xb0N 0.1234\xb0E", "52.4183\xa00.1234", "５２．４１８３, ０．１２３４", "52.4183\u00a00.1234", "52.4183º N, 0.1234º E",
	},
	"52.4183, -0.1234": {
		"52.4183, -0.1234", "52.4183 -0.1234", "52.4183,-0.1234", "52.4183, −0.1234", "52.4183, –0.1234", "52.4183N 0.1234W", "52.4183 0.1234W",
		"0.1234W 52.4183N", "W0.1234, N52.4183", "52,4183;-0,1234", "52,4183 N 0,1234 W", "lat: 52.4183, lon: -0.1234", "+52.4183-000.1234/",
	},
	"52.41, 0.12": {
		"52°24'36\"N 0°7'12\"E", "52°24′36″N 0°7′12″E", "52° 24’ 36” N, 0° 07’ 12” E", "52º24'36''N 0º7'12''E", "52 24 36 N 0 7 12 E",
		"52 24 36N, 0 7 12E", "N52 24 36 E0 07 12", "52:24:36N 0:07:12E", "52d24m36sN 0d7m12sE", "52d 24m 36s N, 0d 7m 12s E",
		"52deg 24min 36sec N 0deg 7min 12sec E", "52.24.36N 0.07.12E", "52-24-36N 0-07-12E", "522436N 0000712E", "+522436+0000712/",
		"0°7'12\"E 52°24'36\"N", "N 52°24'36\", E 0°07'12\"", "52°24´36´´N 0°7´12´´E", "52\xb024\x9236\x94N 0\xb07\x9212\x94E", "52/24/36 N 0/7/12 E", "52o24'36\"N 0o7'12\"E", "52* 24' 36\" N 0* 7' 12\" E",
	},
	"52.41, -0.12":        {"52°24′36″N 0°7′12″W", "52 24 36 N 0 7 12 W", "52 24 36 -0 7 12", "522436N 0000712W", "52°24'36\" -0°7'12\""},
	"52.4101, -0.12":      {"52°24.608'N 0°7.2'W", "52 24.608N 0 7.2W", "52 24.608 N, 000 07.2 W", "52°24,608'N 0°7,2'W"},
	"52.4, 0.1167":        {"52°24'N 0°7'E", "52 24 N 0 7 E", "52° 24' N / 0° 07' E", "5224N 00007E", "52 deg 24 min N 0 deg 7 min E"},
	"53.35, -6.26":        {"53.35, -6.26", "53.35N 6.26W"},
	"40.7128, -74.006":    {"40.7128, -74.0060", "40.7128N 74.0060W"},
	"-33.8568, 151.2153":  {"-33.8568, 151.2153", "33.8568S 151.2153E"},
	"57.5, 4.2":           {"57.5N 4.2E"},
	"52.408333, 0.179444": {"52°24'30.0\"N 0°10'46.0\"E"},
}

func TestFairForms(t *testing.T) {
	for want, forms := range fairForms {
		for _, text := range forms {
			r, err := Parse(text)
			if assert.NoError(t, err, "%q", text) {
				assert.Equal(t, want, r.name(), "%q", text)
				assert.Empty(t, r.Doubt, "%q", text)
			}
		}
	}
}

// What is likely but not certain: common practice, no source.
func TestQueries(t *testing.T) {
	for _, tt := range []struct{ text, code, want string }{
		{"TLO512", Lookalike, "TL0512"},
		{"TL4O53", Lookalike, "TL4053"},
		{"TL48l2", Lookalike, "TL4812"},
		{"TL48I2", Lookalike, "TL4812"},
		{"SOI234", Lookalike, "SO1234"},
		{"S01234", Lookalike, "SO1234"},
		{"T14853", Lookalike, "TL4853"},
		{"5P1234", Lookalike, "SP1234"},
		{"TI4853", Lookalike, "TL4853"},
		{"31UCTO412", Lookalike, "31UCT0412"},
		{"IH1234", MeantIrish, "H1234"},
		{"I H 12 34", MeantIrish, "H1234"},
		{"NW1234", MeantIrish, "NW1234"},
		{"145300 281200", MeantIrish, "M4530081200"},
		{"NE1234", OpenSea, "NE1234"},
		{"OA12", OpenSea, "OA12"},
		{"A", OpenSea, "A"},
		{"654321 123456", Swapped, "NR2345654321"},
		{"TR5423", OpenSea, "TR5423"},
		{"K12", OpenSea, "K12"},
		{"5453,2812", PairUnits, "TL453812"},
		{"5453 2812", PairUnits, "TL453812"},
		{"545.3, 281.2", PairUnits, "TL453812"},
		{"545 281", PairUnits, "TL4581"},
		{"54530 28120", PairUnits, "TL45308120"},
		{"545300281200", PairUnits, "TL4530081200"},
		{"545300 -281200", PairUnits, "TL4530081200"},
		{"52.4183, 0.1234, 10", OtherWords, "52.4183, 0.1234"},
		{"545000 281000", PairRounded, "TL4500081000"},
		{"1151234 451234", Swapped, "HU5123451234"},
		{"5.453E+05 2.812E+05", Spreadsheet, "TL453812"},
		{"5.453e+05,2.812e+05", Spreadsheet, "TL453812"},
		{"TL48 12/06/2021", StrayDate, "TL48"},
		{"TL48 12-Jun-21", StrayDate, "TL48"},
		{"TL48 Jun-21", StrayDate, "TL48"},
		{"TL48 2021-06-12", StrayDate, "TL48"},
		{"TL48 2021-06-12 00:00:00", StrayDate, "TL48"},
		{"TL4881 12.6.21", StrayDate, "TL4881"},
		{"TL48 12th June 2021", StrayDate, "TL48"},
		{"TL4881?", Doubted, "TL4881"},
		{"TL 48 ??", Doubted, "TL48"},
		{"Sallowmere, TL 4530 8120", OtherWords, "TL45308120"},
		{"TL4530 8120 Sallowmere Reserve", OtherWords, "TL45308120"},
		{"Tinker's Row (TL4881)", OtherWords, "TL4881"},
		{"TL4881 (TL48)", TwoReferences, "TL4881"},
		{"no", OtherWords, "NO"},
		{"NA", OtherWords, "NA"},
		{"x", OtherWords, "X"},
		{"TL4881 (10km)", OtherWords, "TL4881"},
		{"TL483018120212", TooManyFigures, "TL4830112021"},
		{"0.1234, 52.4183", Swapped, "52.4183, 0.1234"},
		{"-3.5321, 50.7218", Swapped, "50.7218, -3.5321"},
		{"3.5321, 50.7218", Swapped, "50.7218, -3.5321"},
		{"91.5, 3.2", Swapped, "3.2, 91.5"},
		{"54.5123, 3.2123", SignLost, "54.5123, -3.2123"},
		{"50.7218, 3.5321", SignLost, "50.7218, -3.5321"},
		{"53.3501, 6.2601", SignLost, "53.3501, -6.2601"},
		{"-52.4183, 0.1234", SignLost, "52.4183, 0.1234"},
		{"-54.5123, 3.2123", SignLost, "54.5123, -3.2123"},
		{"52.4183N 0.1234", Direction, "52.4183, 0.1234"},
		{"52.4183N -0.1234E", Direction, "52.4183, -0.1234"},
		{"52.4183N -0.1234W", Direction, "52.4183, -0.1234"},
		{"52.4183-0.1234", Direction, "52.4183, -0.1234"},
		{"52.4183 - 0.1234", Direction, "52.4183, -0.1234"},
		{"52 24 36, 0 7 12", Direction, "52.41, 0.12"},
		{"52 1", WholeDegrees, "52, 1"},
		{"54, -2", WholeDegrees, "54, -2"},
		{"52,41 0,12", DecimalComma, "52.41, 0.12"},
		{"55S 334873 6252266", Direction, "55HCC3487352266"},
		{"zone 17, 630084 4833438", Direction, "17TPJ3008433438"},
	} {
		r, err := Parse(tt.text)
		if assert.NoError(t, err, "%q", tt.text) {
			assert.Equal(t, tt.want, r.name(), "%q", tt.text)
			assert.Equal(t, tt.code, r.Doubt.Code, "%q", tt.text)
			assert.Contains(t, r.Doubt.Message, "“", "the message quotes what was written: %q", tt.text)
		}
	}
}

// What cannot be read, and what may have been meant: common practice, no source.
func TestFaults(t *testing.T) {
	for _, tt := range []struct {
		text, code  string
		suggestions []string
	}{
		{"", Blank, nil},
		{" \u00a0\t", Blank, nil},
		{"n/a", Blank, nil},
		{"unknown", Blank, nil},
		{"?", Unreadable, nil},
		{"#REF!", Unreadable, nil},
		{"see map", Unreadable, nil},
		{"Sallowmere", Unreadable, nil},
		{"TL4", OddFigures, nil},
		{"TL48123", OddFigures, nil},
		{"H123", OddFigures, nil},
		{"31UCT04121", OddFigures, nil},
		{"TL 45 812", UnevenFigures, []string{"TL045812", "TL450812"}},
		{"TL 4530 812", UnevenFigures, []string{"TL45300812", "TL45308120"}},
		{"TL4812/13", TwoReferences, []string{"TL4812", "TL4813"}},
		{"TL48 44906", UnevenFigures, []string{"TL48"}},
		{"TL48301812021234", TooManyFigures, nil},
		{"TL 545300 381200", PairAmbiguous, []string{"TF4530081200"}},
		{"524183, 1234", PairUnits, nil},
		{"1e2, 3", Spreadsheet, nil},
		{"52° 24.6", HalfMissing, nil},
		{"UTM 304512 5803245", ZoneMissing, []string{"30U 304512 5803245", "31U 304512 5803245"}},
		{"LT4881", NoSuchSquare, []string{"TL4881"}},
		{"ZZ1234", NoSuchSquare, nil},
		{"AB12", NoSuchSquare, nil},
		{"XX", NoSuchSquare, nil},
		{"I1234", NoSuchSquare, nil},
		{"WX1234", NoSuchSquare, nil},
		{"61UCT0412", NoSuchSquare, nil},
		{"TL48O", NoSuchTetrad, []string{"TL48"}},
		{"TL4881C", NoSuchTetrad, []string{"TL4881"}},
		{"TL48NN", NoSuchTetrad, []string{"TL48"}},
		{"TL4812 TL4913", TwoReferences, []string{"TL4812", "TL4913"}},
		{"TL4812 or TL4813", TwoReferences, []string{"TL4812", "TL4813"}},
		{"TL48/TL49", TwoReferences, []string{"TL48", "TL49"}},
		{"453812", LettersMissing, nil},
		{"4881", LettersMissing, nil},
		{"44906", LettersMissing, nil},
		{"941205338812", PairUnits, nil},
		{"5.453E+05", Spreadsheet, nil},
		{"304512 5803245", ZoneMissing, []string{"30U 304512 5803245", "31U 304512 5803245"}},
		{"31C 304512 5803245", WrongZone, nil},
		{"61U 304512 5803245", OutOfRange, nil},
		{"1545300 2281200", OutOfRange, nil},
		{"12/06/2021", DateOnly, nil},
		{"2021-06-12", DateOnly, nil},
		{"12-Jun", DateOnly, nil},
		{"Jun-21", DateOnly, nil},
		{"SE15 4NN", Postcode, nil},
		{"NR12 8YZ", Postcode, nil},
		{"52.4183", HalfMissing, nil},
		{"52.4183N", HalfMissing, nil},
		{"N52.4183", HalfMissing, nil},
		{"0°7'12\"E", HalfMissing, nil},
		{"31U", HalfMissing, nil},
		{"52°60'N 0°7'E", OutOfRange, nil},
		{"52°24'70\"N 0°7'E", OutOfRange, nil},
		{"52.4, 190", OutOfRange, nil},
		{"95N 0.3E", OutOfRange, nil},
		{"0.0, 0.0", OutOfRange, nil},
		{"52.4N 51.3N", Direction, nil},
		{"ED50 31U 304512 5803245", Unreadable, nil},
	} {
		_, err := Parse(tt.text)
		var f *Fault
		if assert.ErrorAs(t, err, &f, "%q", tt.text) {
			assert.Equal(t, tt.code, f.Code, "%q", tt.text)
			assert.Equal(t, tt.suggestions, f.Suggestions, "%q", tt.text)
			assert.NotEmpty(t, f.Message)
		}
	}
}

// How an uncertainty is written beside a place: common practice, no source. A
// square of 100 m alone has half its diagonal, 70.7 m, and 1.1 m for the
// transformation; degrees have what one in their last place spans, 11.1 m by
// 6.8 m for 0.0001; what is only approximate has three times as much.
func TestStatedUncertainty(t *testing.T) {
	for text, metres := range map[string]float64{
		"52.4183, 0.1234 ±10m": 10, "52.4183, 0.1234 +/- 25 m": 25, "52.4183, 0.1234 (50 m)": 50, "52.4183, 0.1234 ± 1 km": 1000,
		"TL483812 ±250m": 250, "TL483812 ± 5m": 71.9, "52.4183, 0.1234": 13.1, "52.4, 0.1": 13045,
		"TL453812 approx": 216, "c. TL4581": 2127, "near TL453812": 216, "TL453812 approx ±500m": 500, "52.4183, 0.1234 approx": 39.3, "TL453812 accuracy 250m": 250,
	} {
		r, err := Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, metres, r.Centre().Uncertainty, text)
	}
}

// What two columns may hold: common practice, no source.
func TestSeparateColumns(t *testing.T) {
	type result struct{ code, want string }
	for text, want := range map[string]result{
		"TL 4812":       {"", "TL4812"},
		"TL 812":        {Spreadsheet, "TL0812"},
		"TL 45 812":     {Spreadsheet, "TL045812"},
		"TL 4530 812":   {Spreadsheet, "TL45300812"},
		"TL 453 812":    {"", "TL453812"},
		"H 5 34":        {Spreadsheet, "H0534"},
		"545300 281200": {"", "TL4530081200"},
		"TL4812":        {"", "TL4812"},
	} {
		r, err := ParseNumber(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, result{r.Doubt.Code, r.name()}, text)
	}
	for _, tt := range []struct{ easting, northing, code, want string }{
		{"545300", "281200", "", "TL4530081200"},
		{"545,300", "281,200", "", "TL4530081200"},
		{"545300.25", "281200.5", "", "TL4530081200"},
		{"E545300", "N281200", "", "TL4530081200"},
		{"545300 m", "281200 m", "", "TL4530081200"},
		{"5.453E+05", "2.812E+05", Spreadsheet, "TL453812"},
		{"5453", "2812", PairUnits, "TL453812"},
		{"145300", "281200", MeantIrish, "M4530081200"},
	} {
		r, err := ParseEastingNorthing(tt.easting, tt.northing)
		if assert.NoError(t, err, "%v", tt) {
			assert.Equal(t, tt.want, r.name(), "%v", tt)
			assert.Equal(t, tt.code, r.Doubt.Code, "%v", tt)
		}
	}
	for _, tt := range []struct{ lat, lon, code, want string }{
		{"52.4183", "0.1234", "", "52.4183, 0.1234"},
		{"52.4183", "-0.1234", "", "52.4183, -0.1234"},
		{"52,4183", "-0,1234", "", "52.4183, -0.1234"},
		{"52.4183N", "0.1234W", "", "52.4183, -0.1234"},
		{"52°24'36\"N", "0°7'12\"W", "", "52.41, -0.12"},
		{"N 52 24 36", "W 0 7 12", "", "52.41, -0.12"},
		{"Lat 52.4183", "Long 0.1234", "", "52.4183, 0.1234"},
		{"0.1234E", "52.4183N", "", "52.4183, 0.1234"},
		{"0.1234", "52.4183", Swapped, "52.4183, 0.1234"},
		{"54.5123", "3.2123", SignLost, "54.5123, -3.2123"},
	} {
		r, err := ParseLatLon(tt.lat, tt.lon)
		if assert.NoError(t, err, "%v", tt) {
			assert.Equal(t, tt.want, r.name(), "%v", tt)
			assert.Equal(t, tt.code, r.Doubt.Code, "%v", tt)
		}
	}
	for _, pair := range [][2]string{{"", ""}, {"52.4", ""}, {"", "0.1"}, {"fen", "0.1"}, {"52.4", "0.1 0.2 0.3 0.4"}, {"99", "200"}} {
		_, err := ParseLatLon(pair[0], pair[1])
		assert.Error(t, err, "%v", pair)
		_, err = ParseEastingNorthing(pair[0], pair[1])
		assert.Error(t, err, "%v", pair)
	}
}

// Whatever stands in a cell, a text beyond any place is refused at once.
func TestTooLong(t *testing.T) {
	long := strings.Repeat("TL48 ", 1_000_000)
	for name, parse := range map[string]func() (Reading, error){
		"Parse":                func() (Reading, error) { return Parse(long) },
		"ParseNumber":          func() (Reading, error) { return ParseNumber(long) },
		"ParseLatLon":          func() (Reading, error) { return ParseLatLon("52.41", long) },
		"ParseEastingNorthing": func() (Reading, error) { return ParseEastingNorthing(long, "281200") },
	} {
		_, err := parse()
		f, ok := err.(*Fault)
		require.True(t, ok, name)
		assert.Equal(t, Unreadable, f.Code, name)
		assert.Less(t, len(f.Message), 300, name)
	}
}
