package convert_test

import (
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// "Peacock" is a butterfly and a moth; who is asked which, answers "butterfly",
// and means no butterfly whatever.
func TestAnAnswerThatOnlySaysOfWhichKind(t *testing.T) {
	out := t.TempDir()
	path := write(t, "season.csv", strings.Replace(season, "Buff-tip", "Peacock larvae", 1))
	job := convert.Job{Files: []string{path}, Out: out}
	require.NotZero(t, run(t, job).Summary.Held)
	fill(t, filepath.Join(out, convert.QueriesFile), func(map[string]string) string { return "butterfly" })
	assert.Zero(t, run(t, job).Summary.Held)
	found := 0
	for _, row := range table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt") {
		if row["verbatimIdentification"] == "Peacock larvae" {
			found++
			assert.Equal(t, "Aglais io", row["scientificName"])
		}
	}
	assert.NotZero(t, found)
}

// The starter list has some 500 species: who has others is told of --taxa.
func TestStarterListIsToldOf(t *testing.T) {
	text := season
	for _, name := range []string{"Scarce Silver Rustic", "Fen Lantern", "Sluice Underthing"} {
		text += "01/07/2021," + name + ",1,Sallowmere Reserve,TL4588,Ines Calloway,actinic light trap,\n"
	}
	notes := strings.Join(run(t, convert.Job{Files: []string{write(t, "season.csv", text)}}).Notes, "\n")
	assert.Contains(t, notes, "--taxa FILE")
	assert.NotContains(t, strings.Join(run(t, convert.Job{Files: []string{write(t, "season.csv", season)}}).Notes, "\n"), "--taxa")
}
