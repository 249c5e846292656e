package convert_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/project"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// limited is a notebook, a limit too low for it, and one that is just enough.
type limited struct {
	limit       string
	low, enough int
	name        string
	content     func(t *testing.T) string
	stdin       bool
}

// longSeason has a remark of 300,000 letters.
func longSeason(*testing.T) string {
	return strings.Replace(season, "light trap,\n", "light trap,"+strings.Repeat("rain ", 60_000)+"\n", 1)
}

// seasonBook is a workbook of two sheets, with merged cells.
func seasonBook(t *testing.T) string {
	f := excelize.NewFile()
	defer f.Close()
	_, err := f.NewSheet("Second")
	require.NoError(t, err)
	for _, sheet := range []string{"Sheet1", "Second"} {
		for i, line := range strings.Split(strings.TrimSpace(season), "\n") {
			var cells []any
			for cell := range strings.SplitSeq(line, ",") {
				cells = append(cells, cell)
			}
			require.NoError(t, f.SetSheetRow(sheet, fmt.Sprintf("A%d", i+1), &cells))
		}
		require.NoError(t, f.MergeCell(sheet, "A2", "A3"))
		require.NoError(t, f.MergeCell(sheet, "G2", "G4"))
	}
	b, err := f.WriteToBuffer()
	require.NoError(t, err)
	return b.String()
}

// emptyBook unpacks to 70 MB of blanks.
func emptyBook(t *testing.T) string {
	row := `<row><c t="inlineStr"><is><t>%s</t></is></c><c t="inlineStr"><is><t>%s</t></is></c></row>`
	return hostileBook(t, `<sheetData>`+fmt.Sprintf(row, "Date", "Species")+fmt.Sprintf(row, "12/6/2021", "Flame")+strings.Repeat(" ", 70<<20)+`</sheetData>`)
}

// seasonArchive is a Darwin Core Archive with a long remark.
func seasonArchive(t *testing.T) string {
	meta := `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence" fieldsTerminatedBy=","><files><location>a.csv</location></files><id index="0"/>` +
		`<field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/><field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/><field index="3" term="http://rs.tdwg.org/dwc/terms/occurrenceRemarks"/></core></archive>`
	return zipped(t, "meta.xml", meta, "a.csv", "1,2021-06-12,Noctua pronuba,"+strings.Repeat("rain ", 60_000)+"\n")
}

func plainSeason(*testing.T) string { return season }

// everyLimit has a notebook for each limit that refuses one.
var everyLimit = []limited{
	{limit: "columns", low: 7, enough: 8, name: "season.csv", content: plainSeason},
	{limit: "columns", low: 7, enough: 8, name: "season.xlsx", content: seasonBook},
	{limit: "columns", low: 3, enough: 4, name: "archive.zip", content: seasonArchive},
	{limit: "cell_bytes", low: 200_000, enough: 310_000, name: "season.csv", content: longSeason},
	{limit: "cell_bytes", low: 200_000, enough: 310_000, name: "archive.zip", content: seasonArchive},
	{limit: "cell_bytes", low: 5, enough: 100_000, name: "season.xlsx", content: seasonBook},
	{limit: "row_bytes", low: 100_000, enough: 400_000, name: "season.csv", content: longSeason},
	{limit: "row_bytes", low: 100_000, enough: 400_000, name: "archive.zip", content: seasonArchive},
	{limit: "rows", low: 3, enough: 4, name: "season.xlsx", content: seasonBook},
	{limit: "sheets", low: 1, enough: 2, name: "season.xlsx", content: seasonBook},
	{limit: "merges", low: 1, enough: 2, name: "season.xlsx", content: seasonBook},
	{limit: "spread_cells", low: 4, enough: 10, name: "season.xlsx", content: seasonBook},
	{limit: "unzipped_bytes", low: 1000, enough: 1_000_000, name: "season.xlsx", content: seasonBook},
	{limit: "unzipped_bytes", low: 1000, enough: 1_000_000, name: "archive.zip", content: seasonArchive},
	{limit: "ratio", low: 250, enough: 5000, name: "season.xlsx", content: emptyBook},
	{limit: "input_bytes", low: len(season) - 1, enough: len(season), stdin: true, content: plainSeason},
}

// TestLimitsOfTheProjectFile refuses a notebook under each limit that is too
// low for it, with the name of the limit and how to raise it, and reads it under
// one that is just high enough.
func TestLimitsOfTheProjectFile(t *testing.T) {
	tested := map[string]bool{"string_bytes": true} // more than it goes to a file, and nothing is refused
	for _, c := range everyLimit {
		tested[c.limit] = true
		t.Run(c.limit+" "+c.name, func(t *testing.T) {
			job := convert.Job{Files: []string{"-"}, Today: today}
			content := c.content(t)
			job.Stdin = strings.NewReader(content)
			folder := t.TempDir()
			if !c.stdin {
				job.Files[0] = filepath.Join(folder, c.name)
				require.NoError(t, os.WriteFile(job.Files[0], []byte(content), 0o600))
			}
			job.Project = filepath.Join(folder, "fieldfare.toml")
			set := func(value int) {
				require.NoError(t, os.WriteFile(job.Project, fmt.Appendf(nil, "[limits]\n%s = %d\n", c.limit, value), 0o600))
			}
			set(c.low)
			_, err := convert.Run(context.Background(), job)
			assert.ErrorContains(t, err, "raise "+c.limit+" under [limits] in the project file")
			set(c.enough)
			job.Stdin = strings.NewReader(content)
			result := run(t, job)
			assert.Positive(t, result.Summary.Read)
		})
	}
	limits := reflect.TypeFor[project.Limits]()
	for i := range limits.NumField() {
		name := limits.Field(i).Tag.Get("toml")
		assert.True(t, tested[name], "%s has a test", name)
		text, err := os.ReadFile("../DEVELOPERS.md")
		require.NoError(t, err)
		assert.Contains(t, string(text), "`"+name+"`", "it is written down")
	}
}
