package layout

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// A sheet's name is the site only where rows need one (common practice, no
// source).
func TestSiteFromSheetName(t *testing.T) {
	headings := []string{"Date", "Species", "No", "GR"}
	full := []string{"12/06/2021", "Flame", "1", "TL453812"}
	bare := []string{"13/06/2021", "Flame", "2", ""}
	for _, c := range []struct {
		sheet string
		rows  [][]string
		site  string
	}{
		{"Larkrise", [][]string{headings[:3], bare[:3]}, "Larkrise"},
		{"Larkrise", [][]string{headings, full, full}, ""},
		{"L", [][]string{headings[:3], bare[:3]}, ""},
	} {
		t.Run(c.sheet, func(t *testing.T) {
			f := excelize.NewFile()
			require.NoError(t, f.SetSheetName("Sheet1", c.sheet))
			for i, row := range c.rows {
				at, err := excelize.CoordinatesToCellName(1, i+1)
				require.NoError(t, err)
				require.NoError(t, f.SetSheetRow(c.sheet, at, &row))
			}
			path := filepath.Join(t.TempDir(), "a.xlsx")
			require.NoError(t, f.SaveAs(path))
			require.NoError(t, f.Close())
			for _, m := range readNotebook(t, path, nil) {
				if m["name"] != "" {
					assert.Equal(t, c.site, m["site"])
				}
			}
		})
	}
}

func TestDaysIn(t *testing.T) {
	for text, want := range map[string]int{
		"3/7 (12), 10/7 (20), 17/7 (31)": 3, "3/7 1, 17/7 2": 2, "3 July 12; 4th July 2": 2, "17.vii": 1,
		"12": 0, "2m 3f": 0, "TL453812": 0, "45/13": 0, "": 0, "1/2/2019": 1,
	} {
		assert.Equal(t, want, daysIn(text), text)
	}
}

func TestIsSection(t *testing.T) {
	for text, want := range map[string]bool{
		"S1": true, "Section 4": true, "Plot 2b": true, "C": true, "T12": true, "Section": false, "Garden": false,
		"S123": false, "Tinker's Row": false, "Ab": false, "": false,
	} {
		assert.Equal(t, want, isSection(text), text)
	}
}

func TestFiguresInSquare(t *testing.T) {
	for _, c := range []struct{ square, figures, want, code string }{
		{"TL48", "453812", "TL453812", ""},
		{"TL 48", "4581", "TL4581", ""},
		{"TL4581", "453812", "TL453812", ""},
		{"TL48", "553812", "TL48 553812", "square-and-figures-differ"},
		{"TL48", "45381", "TL48 45381", "square-and-figures-differ"},
		{"TL48K", "453812", "TL48K 453812", "square-and-figures-differ"},
	} {
		got, doubt := figuresInSquare(c.square, c.figures)
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.code, doubt.Code)
	}
}
