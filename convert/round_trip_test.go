package convert_test

import (
	"path/filepath"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/compare"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// trip has trap nights, measurements, a night with nothing, points, a place
// without a reference, and remarks that are hard to write.
const trip = `Date,Species,Count,Site,Grid ref,Latitude,Longitude,Uncertainty,Recorder,Method,Temperature (°C),Forewing (mm),Comments
12/06/2021,Heart and Dart,12,Sallowmere Reserve,TL4588,,,,Ines Calloway,actinic light trap,11,,"one ""very"" worn	🦋"
12/06/2021,Buff-tip,2m 1f,Sallowmere Reserve,TL4588,,,,Ines Calloway,actinic light trap,11,31.5,"line one
line two"
14/06/2021,Elephant Hawk-moth,several,Long Drove,,52.47312,0.14562,25,Tom Achterberg,,,,
15/06/2021,Buff-tip,1,The Sluice,,,,,Tom Achterberg,,,,
`

func TestCopiesReadBackAsTheyWere(t *testing.T) {
	folder := t.TempDir()
	first := filepath.Join(folder, "first")
	result := run(t, convert.Job{Files: []string{write(t, "season.csv", trip)}, Out: first, Formats: convert.Formats()})
	require.Positive(t, result.Summary.Occurrences)
	for _, name := range []string{convert.SubmissionFile, "records.csv", "records.xlsx", "records.geojson"} {
		t.Run(name, func(t *testing.T) {
			again := filepath.Join(folder, "again "+name)
			run(t, convert.Job{Files: []string{filepath.Join(first, name)}, Out: again})
			diff, err := compare.Submissions(filepath.Join(first, convert.SubmissionFile), filepath.Join(again, convert.SubmissionFile))
			require.NoError(t, err)
			assert.Empty(t, diff.New)
			assert.Empty(t, diff.Changed)
			assert.Empty(t, diff.Withdrawn)
			assert.GreaterOrEqual(t, diff.Same, result.Summary.Occurrences)
		})
	}
}
