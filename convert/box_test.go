package convert_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/dwc"
	"fieldfare/gridref"

	"github.com/paulmach/orb/encoding/wkt"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// boxed converts rows of a list and returns the archive's metadata, its EML and
// its core's rows.
func boxed(t *testing.T, rows, privacy string) (*dwc.Dataset, string, []map[string]string) {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte("[dataset]\n"+described+privacy), 0o644))
	path := filepath.Join(folder, "list.csv")
	require.NoError(t, os.WriteFile(path, []byte("Date,Species,Count,Site,Grid ref,Recorder,Method\n"+rows), 0o644))
	out := filepath.Join(folder, "out")
	run(t, convert.Job{Files: []string{path}, Out: out})
	submission := filepath.Join(out, convert.SubmissionFile)
	a, err := dwc.OpenArchive(submission)
	require.NoError(t, err)
	defer a.Close()
	m, err := a.Metadata()
	require.NoError(t, err)
	unzip(t, submission, folder)
	eml, err := os.ReadFile(filepath.Join(folder, "unpacked", "eml.xml"))
	require.NoError(t, err)
	return m, string(eml), table(t, submission, "event.txt")
}

// The box holds the square of every record and visit, whole, and its dates are
// those of the first and the last.
func TestTheBoxHoldsEverySquare(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 12 {
		var rows strings.Builder
		for n := range 1 + r.IntN(4) {
			figures := 1 + r.IntN(4)
			reference := "T" + string("LFMG"[r.IntN(4)])
			for range 2 * figures {
				reference += strconv.Itoa(r.IntN(10))
			}
			name := "Heart and Dart"
			if n == 0 {
				name = "no moths"
			}
			fmt.Fprintf(&rows, "%d/06/20%d,%s,,Drove %d,%s,Ines Calloway,actinic light trap\n", 1+r.IntN(28), 10+r.IntN(10), name, n, reference)
		}
		rows.WriteString("1/07/2021,Heart and Dart,1,The Sluice,TL4588,Ines Calloway,actinic light trap\n")
		m, _, events := boxed(t, rows.String(), "")
		require.True(t, m.Geographic.HasBox)
		for _, e := range events {
			assert.LessOrEqual(t, m.Temporal.Begin[:4], e["year"])
			assert.GreaterOrEqual(t, m.Temporal.End[:4], e["year"])
			shape, err := wkt.Unmarshal(e["footprintWKT"])
			require.NoError(t, err, "%v", e)
			b := shape.Bound()
			assert.True(t, m.Geographic.West <= b.Left() && b.Right() <= m.Geographic.East && m.Geographic.South <= b.Bottom() && b.Top() <= m.Geographic.North,
				"%v is not in %+v", e["verbatimCoordinates"], m.Geographic)
		}
	}
}

// Wherever in its blurred square a record was, the metadata are the same, to
// the byte, so that they cannot tell.
func TestTheMetadataTellNoMoreThanTheBlurredSquare(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	sensitive := "[[privacy.taxon]]\nname = \"Heart and Dart\"\nsquare_metres = 10000\n"
	others := "1/07/2021,Buff-tip,1,The Sluice,TL4588,Ines Calloway,actinic light trap\n"
	seen := ""
	for range 12 {
		square := gridref.Square{Grid: gridref.British, Easting: 540000 + 100*int32(r.IntN(100)), Northing: 290000 + 100*int32(r.IntN(100)), Size: 100}
		_, eml, _ := boxed(t, fmt.Sprintf("12/06/2021,Heart and Dart,2,Hidden %d,%s,Ines Calloway,actinic light trap\n", r.IntN(1000), square)+others, sensitive)
		if seen == "" {
			seen = eml
			continue
		}
		require.Equal(t, seen, eml, square.String())
	}
}
