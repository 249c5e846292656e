package convert_test

import (
	"context"
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/report"
	"fieldfare/dwc"
	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const season = `Date,Species,Count,Site,Grid ref,Recorder,Method,Comments
12/06/2021,Heart and Dart,12,Sallowmere Reserve,TL4588,Ines Calloway,actinic light trap,
12/06/2021,Buff-tip,2m 1f,Sallowmere Reserve,TL4588,Ines Calloway,actinic light trap,"one ""very"" worn"
13/06/2021,Elephant Hawk-moth,several,Sallowmere Reserve,TL 45810 88320,Tom Achterberg,actinic light trap,
`

func TestOneRecordInFull(t *testing.T) {
	result, rows := converted(t, "season.csv", season)
	require.Len(t, rows, 4, "the mixed sexes are an occurrence each")
	assert.Equal(t, 3, result.Summary.Fair)
	r := rows[0]
	for term, want := range map[string]string{
		"basisOfRecord": "HumanObservation", "occurrenceStatus": "present", "eventDate": "2021-06-12",
		"year": "2021", "month": "6", "day": "12", "verbatimEventDate": "12/06/2021",
		"scientificName": "Agrotis exclamationis", "scientificNameAuthorship": "(Linnaeus, 1758)", "taxonRank": "species",
		"vernacularName": "Heart and Dart", "verbatimIdentification": "Heart and Dart",
		"kingdom": "Animalia", "order": "Lepidoptera", "family": "Noctuidae", "genus": "Agrotis",
		"individualCount": "12", "recordedBy": "Ines Calloway", "samplingProtocol": "actinic light trap",
		"locality": "Sallowmere Reserve", "countryCode": "GB", "geodeticDatum": "EPSG:4326",
		"verbatimCoordinates": "TL4588", "verbatimSRS": "EPSG:27700",
	} {
		assert.Equal(t, want, r[term], term)
	}
	// A monad's radius reaches its corner: half its diagonal, 707.1 m.
	assert.Contains(t, []string{"708", "709", "710"}, r["coordinateUncertaintyInMeters"])
	assert.True(t, strings.HasPrefix(r["footprintWKT"], "POLYGON"))
	assert.Equal(t, "male", rows[1]["sex"])
	assert.Equal(t, "2", rows[1]["individualCount"])
	assert.Equal(t, "female", rows[2]["sex"])
	assert.Equal(t, "several", rows[3]["organismQuantity"])
	assert.Empty(t, rows[3]["individualCount"], "a number is never invented")
}

func TestNoColumnIsEmptyThroughout(t *testing.T) {
	_, rows := converted(t, "season.csv", season)
	for term := range rows[0] {
		filled := false
		for _, r := range rows {
			filled = filled || r[term] != ""
		}
		assert.True(t, filled, term)
	}
}

func ids(rows []map[string]string) []string {
	var list []string
	for _, r := range rows {
		list = append(list, r["occurrenceID"])
	}
	return list
}

func TestIDsSurviveReorderingAndRenaming(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(season), "\n")
	_, first := converted(t, "season.csv", season)
	_, again := converted(t, "another name.csv", strings.Join([]string{lines[0], lines[3], lines[1], lines[2]}, "\n"))
	assert.ElementsMatch(t, ids(first), ids(again))
	columns, err := csv.NewReader(strings.NewReader(season)).ReadAll()
	require.NoError(t, err)
	var turned strings.Builder
	w := csv.NewWriter(&turned)
	for _, row := range columns {
		for i, j := 0, len(row)-1; i < j; i, j = i+1, j-1 {
			row[i], row[j] = row[j], row[i]
		}
		require.NoError(t, w.Write(row))
	}
	w.Flush()
	_, turnedRows := converted(t, "season.csv", turned.String())
	assert.ElementsMatch(t, ids(first), ids(turnedRows), "the order of the columns does not matter either")
}

func TestIDsNeverRepeat(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(season), "\n")
	result, rows := converted(t, "season.csv", strings.Join(append(lines, lines[1], lines[1]), "\n"))
	seen := map[string]bool{}
	for _, id := range ids(rows) {
		assert.False(t, seen[id])
		seen[id] = true
	}
	assert.Len(t, rows, 6)
	assert.Equal(t, 2, result.Summary.Query, "the repetitions are asked about")
}

func TestSameInputSameBytes(t *testing.T) {
	folder, paths := demoNotebooks(t)
	var outputs []map[string]string
	for _, workers := range []int{1, 2, 7} {
		out := filepath.Join(folder, "out")
		run(t, convert.Job{Files: paths, Out: out, Workers: workers})
		files := map[string]string{}
		for _, name := range []string{convert.SubmissionFile, convert.SummaryFile, convert.QueriesFile, convert.ReportFile} {
			data, err := os.ReadFile(filepath.Join(out, name))
			require.NoError(t, err)
			files[name] = string(data)
		}
		outputs = append(outputs, files)
	}
	for _, o := range outputs[1:] {
		for name := range o {
			assert.True(t, outputs[0][name] == o[name], "%s differs with the number of workers", name)
		}
	}
}

// accountsBalance asserts the promise on rows and cells.
func accountsBalance(t *testing.T, s *report.Summary) {
	t.Helper()
	assert.True(t, s.Counts.Balanced(), "%+v", s.Counts)
	var sum report.Counts
	for _, f := range s.Files {
		assert.True(t, f.Counts.Balanced(), f.File)
		var sheets report.Counts
		for _, sheet := range f.Sheets {
			assert.True(t, sheet.Counts.Balanced(), "%s %s", f.File, sheet.Sheet)
			sheets.Add(sheet.Counts)
			left := 0
			for _, n := range sheet.Cells.Left {
				left += n
			}
			assert.Equal(t, sheet.Cells.WithText, sheet.Cells.Used+left, "%s %s", f.File, sheet.Sheet)
		}
		assert.Equal(t, f.Counts, sheets, f.File)
		sum.Add(f.Counts)
	}
	assert.Equal(t, s.Counts, sum)
}

func TestEveryRowIsAccountedFor(t *testing.T) {
	_, paths := demoNotebooks(t)
	accountsBalance(t, &run(t, convert.Job{Files: paths}).Summary)
	notebooks, err := filepath.Glob("../testdata/notebooks/*")
	require.NoError(t, err)
	for _, path := range notebooks {
		if strings.HasSuffix(path, ".expected.csv") || strings.HasSuffix(path, ".md") {
			continue
		}
		t.Run(filepath.Base(path), func(t *testing.T) {
			accountsBalance(t, &run(t, convert.Job{Files: []string{path}}).Summary)
		})
	}
}

func TestDemoSubmissionIsValid(t *testing.T) {
	folder, paths := demoNotebooks(t)
	out := filepath.Join(folder, "out")
	run(t, convert.Job{Files: paths, Out: out})
	submission := filepath.Join(out, convert.SubmissionFile)
	require.NoError(t, dwc.ValidateArchive(submission, func(f dwc.ArchiveFault) { t.Errorf("%+v", f) }))

	// The descriptor against the Darwin Core text guide's schema, the metadata
	// against that of EML 2.2.0.
	xmllint := need.Tool(t, "xmllint", "apt-get install libxml2-utils")
	unzip(t, submission, out)
	for schema, file := range map[string]string{"xsd/dwc/tdwg_dwc_text.xsd": "meta.xml", "xsd/eml-2.2.0/eml.xsd": "eml.xml"} {
		c := exec.Command(xmllint, "--nonet", "--noout", "--schema", need.ReferenceFile(t, schema), filepath.Join(out, "unpacked", file))
		c.Env = append(os.Environ(), "XML_CATALOG_FILES="+need.ReferenceFile(t, "xsd/catalog.xml"))
		said, err := c.CombinedOutput()
		require.NoError(t, err, string(said))
	}
}

func TestStoppingLeavesEarlierOutputs(t *testing.T) {
	folder, paths := demoNotebooks(t)
	out := filepath.Join(folder, "out")
	run(t, convert.Job{Files: paths, Out: out})
	before, err := os.ReadFile(filepath.Join(out, convert.SubmissionFile))
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(context.Background())
	job := convert.Job{Files: paths, Out: out, Today: today, Progress: stopper{cancel}}
	_, err = convert.Run(ctx, job)
	require.ErrorIs(t, err, context.Canceled)
	after, err := os.ReadFile(filepath.Join(out, convert.SubmissionFile))
	require.NoError(t, err)
	assert.True(t, string(before) == string(after))
	entries, err := os.ReadDir(out)
	require.NoError(t, err)
	assert.Len(t, entries, 4, "nothing is left behind")
}

// stopper interrupts a run when it begins to write.
type stopper struct{ cancel func() }

func (s stopper) Stage(name string, _ int) {
	if name == "Writing" {
		s.cancel()
	}
}
func (stopper) Step(int) {}
