package gridline

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"fieldfare/convert/lines"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// manyReferences are six-figure references in lettered squares of England.
func manyReferences(n int) []byte {
	random := rand.New(rand.NewPCG(1, 2))
	letters := []string{"SU", "SP", "TL", "TF", "SK", "SE", "NY", "TQ"}
	var b []byte
	for range n {
		b = fmt.Appendf(b, "%s%03d%03d\n", letters[random.IntN(len(letters))], random.IntN(1000), random.IntN(1000))
	}
	return b
}

func BenchmarkStreamCSV(b *testing.B) {
	input := manyReferences(100_000)
	table := Table(Options{})
	b.SetBytes(int64(len(input)))
	for b.Loop() {
		require.NoError(b, table.Stream(bytes.NewReader(input), io.Discard, lines.CSV))
	}
	b.ReportMetric(float64(b.N)*100_000/b.Elapsed().Seconds(), "lines/s")
}

func answers(t *testing.T, o Options, values ...string) [][]string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Table(o).Values(values, &out, lines.CSV))
	records, err := csv.NewReader(&out).ReadAll()
	require.NoError(t, err)
	require.Equal(t, strings.Split("value,state,grid,reference,easting,northing,size_m,decimalLatitude,decimalLongitude,coordinateUncertaintyInMeters,message", ","), records[0])
	require.Len(t, records, len(values)+1)
	return records[1:]
}

// The latitudes and longitudes are those of Geo::Coordinates::OSGB on the
// British grid, and of PROJ on the others, for the squares' centres.
func TestAnswers(t *testing.T) {
	for _, tt := range []struct {
		about   string
		options Options
		value   string
		want    []string // without the value and the message
	}{
		{"a reference", Options{}, "TL 483 812", []string{"fair", "British", "TL483812", "548300", "281200", "100", "52.4091617", "0.1795509", "71.9"}},
		{"Irish", Options{}, "H1234", []string{"fair", "Irish", "H1234", "212000", "334000", "1000", "54.2592233", "-7.8089391", "710"}},
		{"a query", Options{}, "TLO512", []string{"query", "British", "TL0512", "505000", "212000", "1000", "51.8012097", "-0.4713818", "709"}},
		{"nothing", Options{}, "", []string{"held", "", "", "", "", "", "", "", ""}},
		{"unreadable", Options{}, "TL48123", []string{"held", "", "", "", "", "", "", "", ""}},
		{"degrees stay degrees", Options{}, "52.4183, 0.1234", []string{"fair", "WGS84", "", "", "", "", "52.4183000", "0.1234000", "13.1"}},
		{"a coarser square", Options{Size: 10_000}, "TL 483 812", []string{"fair", "British", "TL48", "540000", "280000", "10000", "52.4437491", "0.1319619", "7077"}},
		{"approximate", Options{}, "TL 483 812 approx", []string{"fair", "British", "TL483812", "548300", "281200", "100", "52.4091617", "0.1795509", "216"}},
		{"a stated uncertainty stays", Options{Size: 1000}, "TL 483 812 ±5 km", []string{"fair", "British", "TL4881", "548000", "281000", "1000", "52.4113669", "0.1818652", "5292"}},
		{"no finer square", Options{Size: 100}, "TL48", []string{"query", "British", "TL48", "540000", "280000", "10000", "52.4437491", "0.1319619", "7077"}},
		{"quadrants and tetrads do not nest", Options{Size: 5000}, "TL48M", []string{"held", "", "", "", "", "", "", "", ""}},
		{"no tetrads in UTM", Options{Size: 2000}, "31UCT0412", []string{"held", "", "", "", "", "", "", "", ""}},
		{"a full pair is a square metre", Options{}, "545301.5 281202.25", []string{"fair", "British", "TL4530181202", "545301", "281202", "1", "52.4095524", "0.1347470", "1.9"}},
		{"or a point", Options{Point: true}, "545301.5 281202.25", []string{"fair", "British", "TL4530181202", "545301.5", "281202.25", "0", "52.4095502", "0.1347469", "1.1"}},
		{"whole kilometres are a point too", Options{Point: true}, "545000 281000", []string{"fair", "British", "TL4500081000", "545000", "281000", "0", "52.4078131", "0.1302302", "1.1"}},
		{"back", Options{ToGridref: true}, "52.4091617,0.1795509,71.9", []string{"fair", "British", "TL483812", "548300", "281200", "100", "52.4091617", "0.1795509", "71.9"}},
		{"back with spaces and a unit", Options{ToGridref: true}, "52.4091617, 0.1795509, 71.9 m", []string{"fair", "British", "TL483812", "548300", "281200", "100", "52.4091617", "0.1795509", "71.9"}},
		{"back to what is known", Options{ToGridref: true}, "52.4091617,0.1795509,100", []string{"fair", "British", "TL4881", "548000", "281000", "1000", "52.4113669", "0.1818652", "709"}},
		{"back from the figures given", Options{ToGridref: true}, "52.4092,0.1796", []string{"fair", "British", "TL483812", "548300", "281200", "100", "52.4091617", "0.1795509", "71.9"}},
		{"back to a size", Options{ToGridref: true, Size: 2000}, "52.4091617,0.1795509,10", []string{"fair", "British", "TL48V", "548000", "280000", "2000", "52.4067393", "0.1889880", "1417"}},
		{"back to more than is known", Options{ToGridref: true, Size: 10}, "52.4091617,0.1795509,710", []string{"query", "British", "TL48358125", "548350", "281250", "10", "52.4092053", "0.1796266", "8.2"}},
		{"back to Ireland", Options{ToGridref: true}, "53.3501,-6.2601,100", []string{"fair", "Irish", "O1534", "315000", "234000", "1000", "53.3483486", "-6.2663745", "710"}},
		{"back to Jersey", Options{ToGridref: true}, "49.1858,-2.1011,100", []string{"fair", "Channel Islands", "WV6548", "565000", "5448000", "1000", "49.1858046", "-2.1011345", "708"}},
		{"back anywhere", Options{ToGridref: true}, "40.7128,-74.0060,100", []string{"fair", "UTM 18N", "18TWL8307", "583000", "4507000", "1000", "40.7141888", "-74.0114179", "708"}},
		{"too rough", Options{ToGridref: true}, "52.4,0.18,90000", []string{"held", "", "", "", "", "", "", "", ""}},
		{"an uncertainty of nothing", Options{ToGridref: true}, "52.4,0.18,0", []string{"held", "", "", "", "", "", "", "", ""}},
	} {
		got := answers(t, tt.options, tt.value)[0]
		assert.Equal(t, tt.value, got[0], tt.about)
		assert.Equal(t, tt.want, got[1:10], tt.about)
		if got[1] != "fair" {
			assert.NotEmpty(t, got[10], tt.about)
		}
	}
}

// Published points of Ordnance Survey's OSTN15 developer pack, as points.
func TestPublishedPointsBothWays(t *testing.T) {
	for _, p := range []struct{ lat, lon, easting, northing string }{
		{"49.92226393730", "-6.29977752014", "91492.146", "11318.804"},
		{"52.25160951230", "-0.91248956970", "474335.969", "262047.755"},
		{"57.81351838410", "-8.57854456076", "9587.909", "899448.996"},
		{"59.85409913890", "-1.27486910356", "440725.073", "1107878.448"},
	} {
		there := answers(t, Options{ToGridref: true, Point: true}, p.lat+","+p.lon)[0]
		near(t, p.easting, there[4], 0.002)
		near(t, p.northing, there[5], 0.002)
		back := answers(t, Options{Point: true}, p.easting+" "+p.northing)[0]
		near(t, p.lat, back[7], 1e-7)
		near(t, p.lon, back[8], 1e-7)
	}
}

func near(t *testing.T, want, got string, tolerance float64) {
	t.Helper()
	w, err := strconv.ParseFloat(want, 64)
	require.NoError(t, err)
	g, err := strconv.ParseFloat(got, 64)
	require.NoError(t, err)
	assert.InDelta(t, w, g, tolerance)
}

func TestText(t *testing.T) {
	var out bytes.Buffer
	require.NoError(t, Table(Options{}).Values([]string{"TL 483 812", "TL 45 812", ""}, &out, lines.Text))
	assert.Equal(t, `TL 483 812: TL483812 is 52.4091617, 0.1795509 within 71.9 m
TL 45 812: held: “TL 45 812” splits its figures as 45 and 812; the easting and the northing must have the same number. A zero may have been lost. Perhaps TL045812 or TL450812?
held: No grid reference is given.
`, out.String())
}

// What the command writes it reads again.
func TestThereAndBack(t *testing.T) {
	var there, points, back bytes.Buffer
	require.NoError(t, Table(Options{}).Stream(bytes.NewReader(manyReferences(5000)), &there, lines.CSV))
	records, err := csv.NewReader(&there).ReadAll()
	require.NoError(t, err)
	for _, r := range records[1:] {
		fmt.Fprintf(&points, "%s,%s,%s\n", r[7], r[8], r[9])
	}
	require.NoError(t, Table(Options{ToGridref: true}).Stream(&points, &back, lines.CSV))
	returned, err := csv.NewReader(&back).ReadAll()
	require.NoError(t, err)
	require.Len(t, returned, len(records))
	for i := range records {
		require.Equal(t, records[i][3], returned[i][3])
	}
}
