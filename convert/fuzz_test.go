package convert_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzRun takes any text through the whole of convert: it is refused in a
// sentence, or all outputs are there and every row is accounted for.
func FuzzRun(f *testing.F) {
	f.Add(season)
	f.Add(faulty)
	f.Add("Tinker's Row 2014\n,June,,July\nSpecies,12,13,3,Total\nFlame,1,x,,2\nTotal,1,1,,2\n")
	f.Add("12 June: 3 Heart and Dart, 2 Flame\n13 June: nothing\n")
	f.Add("eventDate,scientificName,decimalLatitude,decimalLongitude\n2021-06-12,Noctua pronuba,52.4,0.18\n")
	f.Add("Date,Species,Site,Count\n=1+1,\x1b[2J,\u202ex,1e9\n12/6/2021,<b>,\x00,-1\n")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 1<<14 {
			return
		}
		folder := t.TempDir()
		path, out := filepath.Join(folder, "page.csv"), filepath.Join(folder, "out")
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		result, err := convert.Run(context.Background(), convert.Job{Files: []string{path}, Out: out, Formats: convert.Formats(), Today: today, Workers: 1})
		if err != nil {
			var problem *notebook.Problem
			require.ErrorAs(t, err, &problem)
			assert.NoDirExists(t, out)
			return
		}
		accountsBalance(t, &result.Summary)
		assert.Len(t, contents(t, out), 4+len(convert.Formats()))
		assert.NotEmpty(t, result.Closing())
	})
}
