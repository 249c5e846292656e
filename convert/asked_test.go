package convert_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/report"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const mixed = `Date,Species,Count,Site,Grid ref,Recorder,Method
12/06/2021,Heart and Dart,12,Sallowmere Reserve,TL4588,Ines Calloway,actinic light trap
12/06/2021,Buff-tip,3,,TL48,Ines Calloway,actinic light trap
13/06/2021,Buff Ermine,several,Sallowmere Reserve,TL4588,Tom Achterberg,actinic light trap
June 2021,White Ermine,1,Sallowmere Reserve,TL4588,Tom Achterberg,actinic light trap
31/06/2021,Riband Wave,2,Sallowmere Reserve,TL4588,Tom Achterberg,actinic light trap
14/06/2021,Noctuidae,1,,TL48,Tom Achterberg,actinic light trap
`

// withProject checks a notebook with a project file beside it.
func withProject(t *testing.T, notebook, toml string) *convert.Result {
	dir := t.TempDir()
	path := filepath.Join(dir, "season.csv")
	require.NoError(t, os.WriteFile(path, []byte(notebook), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "fieldfare.toml"), []byte(toml), 0o644))
	return run(t, convert.Job{Files: []string{path}, Standard: true})
}

func TestAsked(t *testing.T) {
	result := withProject(t, mixed, `[asks]
scheme = "The Fenland Moth Group"
square_metres = 1000
date_days = 2
ranks = ["species"]
count_needed = true
`)
	a := result.Summary.Asks
	require.NotNil(t, a)
	assert.Equal(t, 6, a.Records)
	assert.Equal(t, 2, a.Met)
	assert.Equal(t, 1, a.HeldOtherwise, "the day that is none")
	assert.Equal(t, []report.Requirement{
		{Asks: "places in squares of 1 km or finer", Met: 4}, {Asks: "dates of 2 days at most", Met: 5},
		{Asks: "names of the rank species", Met: 5}, {Asks: "a count of individuals", Met: 5},
	}, a.Requirements)
	require.Len(t, a.InTheWay, 5, "one line a cause")
	assert.Equal(t, "asks-square", a.InTheWay[0].Check, "the most frequent first")
	assert.Equal(t, 2, a.InTheWay[0].Records)
	screen := result.Asked()
	assert.Contains(t, screen, "The set does not meet it yet")
	assert.Contains(t, screen, "“TL48” is a square of 10 km")
	assert.Less(t, strings.Count(screen, "\n"), 24, "one screen")
}

func TestAskedAndMet(t *testing.T) {
	result := withProject(t, season, "[asks]\nsquare_metres = 1000\nterms = [\"recordedBy\", \"occurrenceID\"]\n")
	assert.Contains(t, result.Asked(), "The set meets it: met by 4 of 4 records.")
	nothing := withProject(t, season, "[dataset]\ntitle = \"Moths\"\n")
	assert.Empty(t, nothing.Asked(), "nothing is asked for")
	assert.Nil(t, nothing.Summary.Asks)
}

// TestStandardReport: the archive's own records pass every validation that
// applies to them. A scientificNameID is not among the terms that a taxon list
// gives, and the starter list names no author of an aggregate.
func TestStandardReport(t *testing.T) {
	_, paths := demoNotebooks(t)
	result := run(t, convert.Job{Files: paths, Standard: true})
	require.NotNil(t, result.Standard)
	assert.Equal(t, result.Summary.Occurrences, result.Standard.Records())
	for _, row := range result.Standard.Failed() {
		switch row.Test.Label {
		case "VALIDATION_SCIENTIFICNAMEID_NOTEMPTY", "VALIDATION_SCIENTIFICNAMEAUTHORSHIP_NOTEMPTY":
		default:
			t.Errorf("%s: %d records do not comply", row.Test.Label, row.Counts.NotCompliant)
		}
	}
}

func TestAsksThatCannotBeMeant(t *testing.T) {
	for toml, says := range map[string]string{
		"[asks]\nterms = [\"stage\"]\n":                              "no Darwin Core term",
		"[asks]\nfrom = \"yesteryear\"\n":                            "is no date",
		"[asks]\nto = \"31/2/2020\"\n":                               "is no date",
		"[asks]\nfrom = \"2022-01-01\"\nto = \"2021-12-31\"\n":       `asks.from = "2022-01-01" is later than asks.to = "2021-12-31"`,
		"[asks]\narea = \"the fens\"\n":                              "no [[lists.area]]",
		"[[lists.area]]\nname = \"fens\"\n":                          "has no file",
		"[[lists.area]]\nname = \"fens\"\nfile = \"fens.geojson\"\n": "cannot be opened",
	} {
		dir := t.TempDir()
		path := filepath.Join(dir, "season.csv")
		require.NoError(t, os.WriteFile(path, []byte(season), 0o644))
		require.NoError(t, os.WriteFile(filepath.Join(dir, "fieldfare.toml"), []byte(toml), 0o644))
		_, err := convert.Run(t.Context(), convert.Job{Files: []string{path}, Today: today})
		assert.ErrorContains(t, err, says)
	}
}

// A rank is known however it is written; one that is not is told of.
func TestAsksForRanks(t *testing.T) {
	for _, rank := range []string{"species", "Species", "sp.", "SPECIES"} {
		result := withProject(t, mixed, "[asks]\nranks = [\""+rank+"\"]\n")
		assert.Contains(t, result.Asked(), "names of the rank species                    met by 5 of 6 records", rank)
		assert.NotContains(t, strings.Join(result.Notes, " "), "does not know")
	}
	result := withProject(t, mixed, "[asks]\nranks = [\"specie\"]\n")
	assert.Contains(t, strings.Join(result.Notes, "\n"), "The project file asks for names of the rank “specie”, which Fieldfare does not know. Check its spelling.")
}

func TestAsksForOneDayAlone(t *testing.T) {
	result := withProject(t, mixed, "[asks]\nfrom = \"2021-06-12\"\nto = \"2021-06-12\"\n")
	assert.Contains(t, result.Asked(), "dates from 12 June 2021 to 12 June 2021      met by 4 of 6 records", "June as a whole and a day that is asked about among them")
}
