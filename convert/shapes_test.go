package convert_test

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/compare"
	"fieldfare/dwc"
	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// visits has a trap night with two traps, an hour, a night with nothing, and
// a walk.
const visits = `Date,Time,Species,Count,Site,Grid ref,Recorder,Method,Effort,Temperature (°C),Comments
12/06/2021,22:30,Heart and Dart,12,Sallowmere Reserve,TL4588,Ines Calloway,125W MV Robinson trap,"2 traps, 6 hours",11,"one ""very"" worn	🦋"
12/06/2021,22:30,Buff-tip,2,Sallowmere Reserve,TL4588,Ines Calloway,125W MV Robinson trap,"2 traps, 6 hours",11,
19/06/2021,22:30,no moths,,Sallowmere Reserve,TL4588,Ines Calloway,125W MV Robinson trap,,8,cold
26/06/2021,,Elephant Hawk-moth,1,Long Drove,TF4912,Tom Achterberg,walk,,,
`

const described = `title = "Moths of the fen"
licence = "CC0"
date = "2024-03-01"
abstract = "Moths of a fen."
[[dataset.creator]]
given = "Ines"
surname = "Calloway"
[[dataset.contact]]
given = "Ines"
surname = "Calloway"
`

// shaped converts the visits with the settings of [dataset] before the
// description, and returns the output folder.
func shaped(t *testing.T, settings string, job convert.Job) (*convert.Result, string) {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte("[dataset]\n"+settings+described), 0o644))
	path := filepath.Join(folder, "visits.csv")
	require.NoError(t, os.WriteFile(path, []byte(visits), 0o644))
	job.Files, job.Out = []string{path}, filepath.Join(folder, "out")
	return run(t, job), job.Out
}

// valid asserts that an archive holds together, and that its descriptor and
// its metadata pass the schemas of the Darwin Core text guide and of EML 2.2.0.
func valid(t *testing.T, submission string) {
	t.Helper()
	require.NoError(t, dwc.ValidateArchive(submission, func(f dwc.ArchiveFault) { t.Errorf("%+v", f) }))
	xmllint := need.Tool(t, "xmllint", "apt-get install libxml2-utils")
	folder := t.TempDir()
	unzip(t, submission, folder)
	for schema, file := range map[string]string{"xsd/dwc/tdwg_dwc_text.xsd": "meta.xml", "xsd/eml-2.2.0/eml.xsd": "eml.xml"} {
		c := exec.Command(xmllint, "--nonet", "--noout", "--schema", need.ReferenceFile(t, schema), filepath.Join(folder, "unpacked", file))
		c.Env = append(os.Environ(), "XML_CATALOG_FILES="+need.ReferenceFile(t, "xsd/catalog.xml"))
		said, err := c.CombinedOutput()
		require.NoError(t, err, string(said))
	}
}

func TestEveryShapeIsValid(t *testing.T) {
	_, earlier := shaped(t, "", convert.Job{})
	old := filepath.Join(earlier, convert.SubmissionFile)
	for name, c := range map[string]struct {
		settings string
		job      convert.Job
		file     string
	}{
		"as it comes":            {"", convert.Job{}, convert.SubmissionFile},
		"events":                 {"shape = \"event\"\n", convert.Job{}, convert.SubmissionFile},
		"occurrences":            {"shape = \"occurrence\"\n", convert.Job{}, convert.SubmissionFile},
		"nothing new":            {"", convert.Job{Against: old}, convert.SubmissionFile},
		"all changed":            {"id = \"fen\"\n", convert.Job{Against: old}, convert.SubmissionFile},
		"occurrences, changed":   {"shape = \"occurrence\"\nid = \"fen\"\n", convert.Job{Against: old}, convert.SubmissionFile},
		"the full copy":          {"", convert.Job{Exact: true}, convert.ExactFile},
		"the full, occurrences":  {"shape = \"occurrence\"\n", convert.Job{Exact: true}, convert.ExactFile},
		"the full, beside a few": {"id = \"fen\"\n", convert.Job{Exact: true, Against: old}, convert.ExactFile},
	} {
		t.Run(name, func(t *testing.T) {
			_, out := shaped(t, c.settings, c.job)
			valid(t, filepath.Join(out, c.file))
		})
	}
}

func TestEventsSayWhatTheNotebookSays(t *testing.T) {
	result, out := shaped(t, "", convert.Job{})
	assert.Zero(t, result.Summary.VisitsLeft)
	assert.Equal(t, 3, result.Summary.Occurrences)
	nights := map[string]map[string]string{}
	for _, e := range table(t, filepath.Join(out, convert.SubmissionFile), "event.txt") {
		nights[e["eventType"]+" "+e["eventDate"]+" "+e["locality"]] = e
	}
	require.Len(t, nights, 5, "two nights, a walk, and the seasons of two places")
	for at, e := range nights {
		if !strings.HasPrefix(at, "trapNight") {
			continue
		}
		assert.Equal(t, "125W MV Robinson trap", e["samplingProtocol"], "as written")
		assert.True(t, strings.HasPrefix(e["eventTime"], "22:30"), e["eventTime"])
		if strings.Contains(at, "-06-12") {
			assert.Equal(t, []string{"2", "trap", "2 traps, 6 hours"}, []string{e["sampleSizeValue"], e["sampleSizeUnit"], e["samplingEffort"]})
		} else {
			assert.Contains(t, at, "2021-06-19", "the night with nothing is there")
			assert.Empty(t, e["sampleSizeValue"])
		}
	}
}

// An archive of occurrences has no place for a night with nothing caught,
// which is said; what it has reads back as it was.
func TestOccurrencesAloneReadBack(t *testing.T) {
	result, out := shaped(t, "shape = \"occurrence\"\n", convert.Job{})
	assert.Equal(t, 3, result.Summary.Occurrences)
	assert.Equal(t, 1, result.Summary.VisitsLeft)
	assert.Contains(t, result.Closing(), "1 visit with nothing found left out")
	text, err := os.ReadFile(filepath.Join(out, convert.SummaryFile))
	require.NoError(t, err)
	var summary map[string]any
	require.NoError(t, json.Unmarshal(text, &summary))
	assert.EqualValues(t, 1, summary["empty_visits_left_out"])
	readsBack(t, filepath.Join(out, convert.SubmissionFile), 3)
}

// A night with nothing caught is there again when the archive is read back.
func TestEmptyVisitsReadBack(t *testing.T) {
	_, out := shaped(t, "", convert.Job{})
	first := filepath.Join(out, convert.SubmissionFile)
	again := readsBack(t, first, 3+1)
	assert.ElementsMatch(t, eventIDs(table(t, first, "event.txt")), eventIDs(table(t, again, "event.txt")))
}

func eventIDs(rows []map[string]string) []string {
	var list []string
	for _, r := range rows {
		list = append(list, r["eventID"]+" "+r["eventDate"]+" "+r["samplingProtocol"]+" "+r["sampleSizeValue"])
	}
	return list
}

// readsBack converts a submission and asserts that the result says the same of
// so many occurrences and empty visits.
func readsBack(t *testing.T, submission string, records int) string {
	t.Helper()
	out := t.TempDir()
	run(t, convert.Job{Files: []string{submission}, Out: out})
	again := filepath.Join(out, convert.SubmissionFile)
	diff, err := compare.Submissions(submission, again)
	require.NoError(t, err)
	assert.Empty(t, diff.New)
	assert.Empty(t, diff.Changed)
	assert.Empty(t, diff.Withdrawn)
	assert.Equal(t, records, diff.Same)
	return again
}

// The box of the metadata holds the records and has two decimals.
func TestTheBoxIsRoundedOutwards(t *testing.T) {
	_, out := shaped(t, "", convert.Job{})
	folder := t.TempDir()
	unzip(t, filepath.Join(out, convert.SubmissionFile), folder)
	eml, err := os.ReadFile(filepath.Join(folder, "unpacked", "eml.xml"))
	require.NoError(t, err)
	assert.Regexp(t, `<westBoundingCoordinate>-?\d+(\.\d{1,2})?</westBoundingCoordinate>`, string(eml))
	assert.Regexp(t, `<northBoundingCoordinate>\d+(\.\d{1,2})?</northBoundingCoordinate>`, string(eml))
	assert.Contains(t, string(eml), "Ines Calloway (2024). Moths of the fen.", "the citation, where none is given")
}
