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

// inProject converts a notebook beside a project file, a places list and a
// people list, and returns what was handed in.
func inProject(t *testing.T, name, notebook, project string) (*convert.Result, []map[string]string) {
	t.Helper()
	folder := t.TempDir()
	for file, text := range map[string]string{
		name:             notebook,
		"fieldfare.toml": "[lists]\nplaces = \"places.csv\"\npeople = \"people.csv\"\n" + project,
		"places.csv":     "Name,Also written,Grid reference,Private\nTinker's Row,garden,TF 491 012,yes\nLong Drove,,TL 462 879,\nCarr Edge,,TL 4581 8832,\nSallowmere,,TL 45 88,\n",
		"people.csv":     "Name,Initials\nInes Calloway,IC\nTom Achterberg,TA\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, file), []byte(text), 0o644))
	}
	out := filepath.Join(folder, "out")
	result := run(t, convert.Job{Files: []string{filepath.Join(folder, name)}, Out: out})
	return result, table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt")
}

// TestTitleWithMoreThanAPlace: the recorder and the lamp behind a place are no
// part of its name, and a recorder on the list is known without a word before.
func TestTitleWithMoreThanAPlace(t *testing.T) {
	for title, want := range map[string][3]string{
		"Long Drove, June 2023 - 125W MV, Tom Achterberg":                        {"Long Drove", "Tom Achterberg", "125W MV"},
		"Sallowmere 2023. Ines Calloway and Tom Achterberg. 15W actinic Skinner": {"Sallowmere", "Ines Calloway | Tom Achterberg", "15W actinic Skinner"},
	} {
		_, rows := inProject(t, "season.csv", "\""+title+"\",,\n,,\nDate,Species,Count\n12/6/2023,Buff-tip,1\n13/6/2023,Buff Ermine,2\n", "")
		require.Len(t, rows, 2)
		assert.Equal(t, want, [3]string{rows[0]["locality"], rows[0]["recordedBy"], rows[0]["samplingProtocol"]}, title)
	}
}

// TestMothNamedLikeAGarden: a name on the taxon list tells no place, though a
// remark with the same word does.
func TestMothNamedLikeAGarden(t *testing.T) {
	result, rows := inProject(t, "season.csv", "Date,Species,Count,Site,Recorder,Comments\n"+
		"12/6/2023,Garden Carpet,1,Carr Edge,IC,\n13/6/2023,Garden Carpet,1,Carr Edge,IC,in the garden\n", "")
	require.Len(t, rows, 2)
	assert.Equal(t, 1, result.Summary.Query)
	for _, row := range rows {
		if row["eventDate"] == "2023-06-12" {
			assert.Equal(t, "Carr Edge", row["locality"])
		} else {
			assert.Empty(t, row["locality"])
			assert.NotEmpty(t, row["dataGeneralizations"])
		}
	}
}

// TestAskedOnce: a reference that cannot be read is not asked about again for
// want of a place, nor a doubtful count as a doubtful remark.
func TestAskedOnce(t *testing.T) {
	folder := t.TempDir()
	notebook := filepath.Join(folder, "season.csv")
	require.NoError(t, os.WriteFile(notebook, []byte("Date,Species,Count,Grid ref,Recorder\n12/6/2023,Buff-tip,1,TL 45 883,Ines Calloway\n13/6/2023,Buff-tip,1?,TL 4581 8832,Ines Calloway\n"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte("[asks]\nsquare_metres = 1000\n"), 0o644))
	job := convert.Job{Files: []string{notebook}, Out: filepath.Join(folder, "out")}
	var codes []string
	for _, q := range run(t, job).Questions {
		codes = append(codes, q.Code)
	}
	assert.ElementsMatch(t, []string{"uneven-figures", "doubtful-count"}, codes)
	answer(t, job, map[string]string{"TL 45 883": "TL 458 883", "1?": "keep"})
	assert.Empty(t, run(t, job).Questions)
}

// TestPlaceNamedOnOneDayOnly: the days below it are asked about once for the
// page, and keep settles them.
func TestPlaceNamedOnOneDayOnly(t *testing.T) {
	const diary = "Carr Edge 2020,\n,\n10/11 April,cold\nEarly Grey,2\n,\n22/23 April,\"Long Drove, windy\"\nBuff Ermine,3\n,\n4/5 May,\nCommon Swift,6\n,\n8/9 May,\nPeppered Moth,1\n"
	result, rows := inProject(t, "diary.csv", diary, "self = \"Ines Calloway\"\n")
	places := map[string]string{}
	for _, row := range rows {
		places[row["vernacularName"]] = row["locality"] + ", " + row["eventDate"]
	}
	assert.Equal(t, map[string]string{"Early Grey": "Carr Edge, 2020-04-10/2020-04-11", "Buff Ermine": "Long Drove, 2020-04-22/2020-04-23",
		"Common Swift": "Carr Edge, 2020-05-04/2020-05-05", "Peppered Moth": "Carr Edge, 2020-05-08/2020-05-09"}, places)
	asked := 0
	for _, q := range result.Questions {
		if q.Code == "site-of-day" {
			asked++
			assert.Equal(t, 2, q.Records)
			assert.Equal(t, "Carr Edge on diary.csv", q.Written)
		}
	}
	assert.Equal(t, 1, asked)
}

// TestOwnNotebook: the recorder of a page that names nobody is the one whose
// notebooks these are, which is asked about once and can be kept.
func TestOwnNotebook(t *testing.T) {
	result, rows := inProject(t, "diary.csv", "Date,Species,Count,Site\n12/6/2023,Buff-tip,1,Carr Edge\n13/6/2023,Buff Ermine,1,Carr Edge\n", "self = \"Ines Calloway\"\n")
	require.Len(t, rows, 2)
	assert.Equal(t, "Ines Calloway", rows[0]["recordedBy"])
	require.Len(t, result.Questions, 1)
	assert.Equal(t, "recorder-missing", result.Questions[0].Code)
	assert.Equal(t, []string{"Ines Calloway"}, result.Questions[0].Candidates)
}

// TestVisitTwoWeathers: what differs from row to row of one visit stays with
// its records, and is told.
func TestVisitTwoWeathers(t *testing.T) {
	result, rows := inProject(t, "season.csv", "Date,Species,Count,Site,Recorder,Method,Weather\n"+
		"12/6/2023,Buff-tip,1,Carr Edge,IC,MV light,warm\n12/6/2023,Flame,1,Carr Edge,IC,MV light,\n12/6/2023,Buff Ermine,1,Carr Edge,IC,MV light,cold and wet\n"+
		"13/6/2023,Flame,1,Carr Edge,IC,MV light,warm\n13/6/2023,Buff Ermine,1,Carr Edge,IC,MV light,warm\n", "")
	said := map[string]bool{}
	for _, row := range rows {
		said[row["fieldNotes"]] = true
	}
	assert.Equal(t, map[string]bool{"Weather: warm": true, "": true, "Weather: cold and wet": true}, said)
	assert.Contains(t, strings.Join(result.Notes, "\n"), "On 1 visit the weather, field notes or habitat are written differently from row to row (first on 2023-06-12).")
}

// TestPrivatePlaceMistyped: a private place that is not on the places list may
// be a slip, and is told.
func TestPrivatePlaceMistyped(t *testing.T) {
	const notebook = "Date,Species,Count,Site,Recorder\n12/6/2023,Buff-tip,1,Carr Edge,IC\n"
	result, _ := inProject(t, "season.csv", notebook, "[[privacy.place]]\nname = \"Car Egde Lane\"\n[[privacy.place]]\nname = \"Tinker's Row\"\n")
	assert.Equal(t, []string{"“Car Egde Lane”, which the project file has as private, is not on the places list; only what is written like that is blurred."}, result.Notes)
}
