package convert_test

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const doubtful = `Date,Species,Count,Site,Grid ref,Recorder
12/06/2021,Pug sp.,1,Sallowmere Reserve,TL4583,Ines Calloway
12/06/2021,Brimstone,2,Sallowmere Reserve,TL4583,Ines Calloway
13/06/2021,Heart and Dart,3,Sallowmere Reserve,TL 458 83,Ines Calloway
14/06/2021,Heart and Dart,4,Elsewhere,TL 458 83,Ines Calloway
`

// TestSeveralCandidates: where there are several readings, “yes” is no answer,
// and no reference is suggested that lies far from its site.
func TestSeveralCandidates(t *testing.T) {
	path := write(t, "season.csv", doubtful)
	folder := filepath.Dir(path)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "places.csv"), []byte("name,reference\nSallowmere Reserve,TL4583\n"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte("[lists]\nplaces = \"places.csv\"\n"), 0o644))
	job := convert.Job{Files: []string{path}, Out: filepath.Join(folder, "out")}
	run(t, job)
	suggested := map[string]string{}
	fill(t, filepath.Join(job.Out, convert.QueriesFile), func(q map[string]string) string {
		suggested[q["Written"]] = q["Suggestion"]
		if strings.HasPrefix(q["Suggestion"], "one of: ") {
			return "yes"
		}
		return ""
	})
	require.Contains(t, suggested, "Brimstone")
	assert.Equal(t, 1, strings.Count(suggested["Brimstone"], "; "), "two candidates, both named: %s", suggested["Brimstone"])
	assert.True(t, strings.HasPrefix(suggested["Brimstone"], "one of: "), suggested["Brimstone"])
	require.Contains(t, suggested, "TL 458 83 at Sallowmere Reserve")
	assert.Equal(t, "TL458830", suggested["TL 458 83 at Sallowmere Reserve"], "TL458083 is 75 km away")
	assert.Equal(t, "one of: TL458083; TL458830", suggested["TL 458 83"], "nothing is known of the other site")

	second := run(t, job)
	notes := strings.Join(second.Notes, "\n")
	assert.Contains(t, notes, "about “Brimstone”: “yes” does not say which of several is meant")
	assert.Regexp(t, `queries\.xlsx, Questions, cell F\d`, notes)

	third := fill(t, filepath.Join(job.Out, convert.QueriesFile), func(q map[string]string) string {
		switch q["Written"] {
		case "Brimstone":
			first, _, _ := strings.Cut(strings.TrimPrefix(q["Suggestion"], "one of: "), "; ")
			return first
		case "TL 458 83":
			return "TL458083"
		case "TL 458 83 at Sallowmere Reserve":
			return "yes"
		}
		return "keep"
	})
	require.NotZero(t, third)
	last := run(t, job)
	assert.Zero(t, last.Summary.Held)
	assert.Empty(t, last.Questions)
	where := map[string]string{}
	for _, row := range table(t, filepath.Join(job.Out, convert.SubmissionFile), "occurrence.txt") {
		where[row["locality"]+row["individualCount"]] = row["decimalLatitude"]
	}
	assert.Equal(t, "52.4", where["Sallowmere Reserve3"][:4])
	assert.Equal(t, "51.7", where["Elsewhere4"][:4])
}

// TestRecordedAtTheSite: of several candidates, the one that past records have
// from the site comes first, and the question says so.
func TestRecordedAtTheSite(t *testing.T) {
	head := "Date,Species,Count,Site,Grid ref,Recorder\n"
	past := write(t, "past.csv", head+"12/06/2020,Brimstone Moth,1,Sallowmere Reserve,TL4583,Ines Calloway\n")
	earlier := convert.Job{Files: []string{past}, Out: filepath.Join(filepath.Dir(past), "out")}
	run(t, earlier)

	path := write(t, "season.csv", head+"12/06/2021,Brimstone,1,Sallowmere reserve,TL4583,Ines Calloway\n")
	first := func(project string) (string, string) {
		folder := filepath.Dir(path)
		require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte(project), 0o644))
		r := run(t, convert.Job{Files: []string{path}, Out: filepath.Join(t.TempDir(), "out")})
		for _, q := range r.Questions {
			if q.Written == "Brimstone" {
				return q.Candidates[0], q.Message
			}
		}
		t.Fatal("no question about the name")
		return "", ""
	}
	candidate, message := first("")
	assert.Equal(t, "Gonepteryx rhamni (Brimstone)", candidate)
	assert.NotContains(t, message, "recorded at the site")
	candidate, message = first("[lists]\npast = [" + strconv.Quote(filepath.Join(earlier.Out, convert.SubmissionFile)) + "]\n")
	assert.Equal(t, "Opisthograptis luteolata (Brimstone Moth)", candidate)
	assert.Contains(t, message, "Opisthograptis luteolata (Brimstone Moth) [in season, recorded at the site]")
}
