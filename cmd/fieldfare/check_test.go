package main_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCheckAnswersWhatIsAsked(t *testing.T) {
	path := write(t, "s.csv", "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n13/6/2021,Buff-tip,3,TL48,Ines Calloway\n")
	project := filepath.Join(filepath.Dir(path), "fieldfare.toml")
	require.NoError(t, os.WriteFile(project, []byte("[asks]\nscheme = \"The Fenland Moth Group\"\nsquare_metres = 1000\n"), 0o644))
	r := fieldfare(t, "", "check", path)
	assert.Equal(t, 1, r.status, "a square is coarser than asked for")
	assert.Contains(t, r.out, "places in squares of 1 km or finer")
	assert.Contains(t, r.out, "met by 1 of 2 records")

	var summary struct {
		Asks struct {
			Records, Met int
		} `json:"asks"`
	}
	r = fieldfare(t, "", "check", path, "--format", "json")
	require.NoError(t, json.Unmarshal([]byte(r.out), &summary), r.out)
	assert.Equal(t, 2, summary.Asks.Records)
	assert.Equal(t, 1, summary.Asks.Met)
}

func TestCheckPrintsTheStandardsReport(t *testing.T) {
	path := write(t, "s.csv", "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n")
	r := fieldfare(t, "", "check", path, "--standard")
	assert.Zero(t, r.status, r.err)
	assert.Contains(t, r.out, "VALIDATION_EVENTDATE_INRANGE")
	var summary struct {
		Standard struct{ Records int } `json:"standard"`
	}
	r = fieldfare(t, "", "check", path, "--standard", "--format", "json")
	require.NoError(t, json.Unmarshal([]byte(r.out), &summary), r.out)
	assert.Equal(t, 1, summary.Standard.Records)
}
