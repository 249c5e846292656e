package convert_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// answer fills in the questions of the output folder, by what is written.
func answer(t *testing.T, job convert.Job, answers map[string]string) {
	t.Helper()
	given := fill(t, filepath.Join(job.Out, convert.QueriesFile), func(q map[string]string) string { return answers[q["Written"]] })
	require.Equal(t, len(answers), given)
}

// TestAnswersAboutPlaces: a place keeps its name where its reference is the
// answer, and a page without places takes name and reference from one.
func TestAnswersAboutPlaces(t *testing.T) {
	folder := t.TempDir()
	named, bare := filepath.Join(folder, "named.csv"), filepath.Join(folder, "bare.csv")
	require.NoError(t, os.WriteFile(named, []byte("Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Buff-tip,1,Carr Edge,,Ines Calloway\n13/6/2021,Buff-tip,2,Carr Edge,TL 45810 88320,Ines Calloway\n"), 0o644))
	require.NoError(t, os.WriteFile(bare, []byte("Date,Species,Count,Recorder\n14/6/2021,Buff-tip,3,Ines Calloway\n"), 0o644))
	job := convert.Job{Files: []string{named, bare}, Out: filepath.Join(folder, "out")}
	first := run(t, job)
	require.Equal(t, 1, first.Summary.Held)
	answer(t, job, map[string]string{"Carr Edge": "TL4588", "(no site on bare.csv)": "Sallowmere Reserve, TL4588"})
	last := run(t, job)
	assert.Zero(t, last.Summary.Held)
	assert.Empty(t, last.Questions)
	var got []string
	for _, row := range table(t, filepath.Join(job.Out, convert.SubmissionFile), "occurrence.txt") {
		got = append(got, strings.Join([]string{row["individualCount"], row["locality"], row["verbatimCoordinates"], row["coordinateUncertaintyInMeters"]}, "|"))
	}
	assert.ElementsMatch(t, []string{"1|Carr Edge|TL4588|709", "2|Carr Edge|TL 45810 88320|2", "3|Sallowmere Reserve|TL4588|709"}, got)
}

// TestAnswersOfARenamedNotebook are asked for again, and the run says why.
func TestAnswersOfARenamedNotebook(t *testing.T) {
	folder := t.TempDir()
	text := []byte("Date,Species,Count,Recorder\n14/6/2021,Buff-tip,3,Ines Calloway\n")
	path := filepath.Join(folder, "diary.csv")
	require.NoError(t, os.WriteFile(path, text, 0o644))
	job := convert.Job{Files: []string{path}, Out: filepath.Join(folder, "out")}
	run(t, job)
	answer(t, job, map[string]string{"(no site on diary.csv)": "TL4588"})
	assert.Zero(t, run(t, job).Summary.Held)
	renamed := filepath.Join(folder, "diary 2021.csv")
	require.NoError(t, os.Rename(path, renamed))
	job.Files = []string{renamed}
	last := run(t, job)
	assert.Equal(t, 1, last.Summary.Held)
	assert.Contains(t, strings.Join(last.Notes, "\n"), "about diary.csv, which was not read")
}

// TestAgainstIsTold: the closing screen says what the set adds to.
func TestAgainstIsTold(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "walks.csv")
	const heading, one, two = "Date,Species,Count,Grid ref,Recorder\n", "12/6/2021,Buff-tip,1,TL4588,Ines Calloway\n", "13/6/2021,Heart and Dart,2,TL4588,Ines Calloway\n"
	require.NoError(t, os.WriteFile(path, []byte(heading+one), 0o644))
	job := convert.Job{Files: []string{path}, Out: filepath.Join(folder, "first")}
	run(t, job)
	require.NoError(t, os.WriteFile(path, []byte(heading+two), 0o644))
	job.Against, job.Out = filepath.Join(folder, "first", convert.SubmissionFile), filepath.Join(folder, "second")
	assert.Contains(t, run(t, job).Closing(), "1 occurrence to hand in.\nThese are new or changed since submission.zip. Of its records 1 is no longer there; withdrawn.csv lists them. Keep submission.zip for the next comparison.\n")
}
