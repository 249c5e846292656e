package taxa_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// mothList makes a workbook as somebody keeps a list: a sheet about it, a title
// over the headings, families merged down the side, and some mistakes.
func mothList(t *testing.T) string {
	f := excelize.NewFile()
	require.NoError(t, f.SetSheetName("Sheet1", "About"))
	require.NoError(t, f.SetSheetRow("About", "A1", &[]any{"Moths that Ines Calloway expects at Sallowmere"}))
	_, err := f.NewSheet("Moths")
	require.NoError(t, err)
	for i, r := range [][]any{
		{"Our moths of Sallowmere"},
		{},
		{"Family", "No.", "Species", "Author", "English name", "Flight", "Highest count", "Sensitive to", "Accepted name"},
		{"Noctuidae", 1, "Noctua pronuba", "(Linnaeus, 1758)", "Large Yellow Underwing", "5-11"},
		{"", 2, "Noctua comes", "Hübner, 1813", "Lesser Yellow Underwing", "summer"},
		{"", 3, "Noctua orbona", "(Hufnagel, 1766)", "Lunar Yellow Underwing", "Jun, Aug-Sep", "", "shy"},
		{"Erebidae", 3, "Euproctis similis", "(Fuessly, 1775)", "Yellow-tail", "Jul-Aug", "a lot"},
		{"", "", "Porthesia similis", "", "", "", "", "", "Euproctis similis"},
		{"", "", "Leucoma salicis", "", "", "", "", "", "Stilpnotia salicis"},
		{"", "", "", "", "White-spotted Nobody"},
		{"Noctuidae", 6, "Noctua comes", "Hübner, 1813", "Lesser Yellow Underwing"},
	} {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		require.NoError(t, f.SetSheetRow("Moths", cell, &r))
	}
	for _, area := range []string{"A4:A6", "A7:A9"} {
		first, last, _ := strings.Cut(area, ":")
		require.NoError(t, f.MergeCell("Moths", first, last))
	}
	require.NoError(t, f.MergeCell("Moths", "A1", "I1"))
	path := filepath.Join(t.TempDir(), "moths.xlsx")
	require.NoError(t, f.SaveAs(path))
	return path
}

// testdata/moths.xls and moths.ods are the workbook of mothList as LibreOffice
// Calc 7.4 saves it.
func TestListInEveryKindOfWorkbook(t *testing.T) {
	for _, path := range []string{mothList(t), "testdata/moths.xls", "testdata/moths.ods"} {
		name := filepath.Base(path)
		t.Run(name, func(t *testing.T) {
			l, problems, err := taxa.Load(path)
			require.NoError(t, err)
			require.Equal(t, 5, l.Len())
			for written, want := range map[string]string{
				"Lesser Yellow Underwing": "Noctua comes", "Porthesia similis": "Euproctis similis", "Noctua orbona": "Noctua orbona", "1": "Noctua pronuba",
			} {
				got, r := match(written, l)
				assert.Equal(t, want, got, "%s: %s", written, r.Message)
			}
			assert.Equal(t, "(Linnaeus, 1758)", l.Taxon(0).Authorship)
			assert.Equal(t, "Noctuidae", l.Taxon(2).Family, "merged down")
			assert.Equal(t, 10000, l.Taxon(2).SensitiveTo)
			assert.Equal(t, "June and August to September", l.Taxon(2).Flight.String())

			var where []string
			for _, p := range problems {
				assert.Equal(t, name, p.Source)
				where = append(where, strings.TrimPrefix(p.Where(), name+", sheet “Moths”, ")+": "+p.Message)
			}
			for i, want := range []string{
				"cell F5: The flight months of Noctua comes, “summer”,",
				"cell H6: Noctua orbona is marked “shy” as sensitive",
				"cell G7: The highest count of Euproctis similis, “a lot”,",
				"cell E10: “White-spotted Nobody” has no scientific name",
				"cell C11: Noctua comes is on the list twice as an accepted name: on this line and on line 5.",
				"cell I9: Leucoma salicis is a synonym of “Stilpnotia salicis”",
				"cell B7: The number “3” of Euproctis similis stands on line 6 too",
			} {
				require.Greater(t, len(where), i)
				assert.True(t, strings.HasPrefix(where[i], want), "%s\n%s", want, where[i])
			}
			assert.Len(t, where, 7)
		})
	}
}

func TestWhereAProblemOfATextListIs(t *testing.T) {
	_, problems := load(t, "list.csv", "Name,Flight\nNoctua comes,summer\n")
	require.Len(t, problems, 1)
	assert.Equal(t, "list.csv, line 2", problems[0].Where())
}

// What a list is, its content says, whatever its name ends in.
func TestListNamedLikeAnotherKind(t *testing.T) {
	data, err := os.ReadFile("testdata/moths.xls")
	require.NoError(t, err)
	l, _ := load(t, "moths.csv", string(data))
	assert.Equal(t, 5, l.Len())
	l, problems := load(t, "moths.xls", "Name\tFlight\nNoctua comes\tsummer\n")
	assert.Equal(t, 1, l.Len())
	require.Len(t, problems, 1)
	assert.Equal(t, "moths.xls, cell B2", problems[0].Where())
}

func TestListThatCannotBeRead(t *testing.T) {
	for name, content := range map[string]string{"moths.xls": "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1 cut off", "moths.ods": "PK\x03\x04 cut off", "moths.xlsx": ""} {
		_, _, err := taxa.Load(write(t, name, content))
		require.Error(t, err, name)
		assert.Contains(t, err.Error(), name)
		for _, jargon := range []string{"zip:", "EOF", "OLE"} {
			assert.NotContains(t, err.Error(), jargon)
		}
	}
}
