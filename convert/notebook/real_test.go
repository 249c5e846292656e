package notebook

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// testdata holds one small page as LibreOffice Calc 7.4 saved it in four
// formats: an independent writer, so that the readers are not only tested
// against our own idea of the formats.
func TestRealFiles(t *testing.T) {
	want := []string{
		"Moths at Tinker's Row|Moths at Tinker's Row|Moths at Tinker's Row|Moths at Tinker's Row",
		"",
		"Date|Name|Count|Lat|Time|Check",
		"01/06/2014|Noctua pronuba|3|52.37|22:45|6",
		"02/06/2014|Apamea monoglypha|12|52.37|12:00|#DIV/0!",
		"03/06/2014|Laothoe populi|1|52.40|00:00|ab",
		"",
		"000453|0045|TRUE|jotagamma|two\nlines  and é ♂",
	}
	for _, name := range []string{"garden.xlsx", "garden.ods", "garden.fods"} {
		t.Run(name, func(t *testing.T) {
			b := opened(t, "testdata/"+name, Options{})
			require.Len(t, b.Sheets(), 3)
			page, private, blank := b.Sheets()[0], b.Sheets()[1], b.Sheets()[2]
			assert.Equal(t, "Garden 2014", page.Name())
			assert.False(t, page.Hidden())
			assert.Equal(t, []int{4}, page.HiddenColumns())
			assert.True(t, private.Hidden())
			assert.Equal(t, []string{"", "|x"}, texts(rowsOf(t, private)))
			for _, r := range rowsOf(t, blank) {
				assert.Empty(t, r.Cells)
			}

			rows := rowsOf(t, page)
			require.Equal(t, want, texts(rows))
			for i, r := range rows {
				assert.Equal(t, i+1, r.Number)
				assert.Equal(t, r.Number == 5, r.Hidden)
				assert.False(t, r.Struck)
			}
			assert.True(t, rows[0].Cells[3].Spread)
			assert.Equal(t, Cell{Text: "01/06/2014", Raw: "2014-06-01", Kind: Date}, rows[3].Cells[0])
			assert.Equal(t, Cell{Text: "52.37", Raw: "52.369999", Kind: Number}, rows[3].Cells[3])
			assert.Equal(t, Cell{Text: "22:45", Raw: "22:45:00", Kind: Date}, rows[3].Cells[4])
			assert.Equal(t, Cell{Text: "#DIV/0!", Kind: Error}, rows[4].Cells[5])
			assert.Equal(t, Cell{Text: "Laothoe populi", Kind: Text, Struck: true}, rows[5].Cells[1])
			assert.Equal(t, Cell{Text: "1", Kind: Number, Struck: true}, rows[5].Cells[2])
			assert.Equal(t, Cell{Text: "000453", Raw: "453", Kind: Number}, rows[7].Cells[0])
			assert.Equal(t, Cell{Text: "0045", Kind: Text}, rows[7].Cells[1])
			assert.Equal(t, Cell{Text: "jotagamma", Kind: Text, PartStruck: true}, rows[7].Cells[3])
			if name != "garden.fods" { // not saved in it
				assert.Equal(t, "worn", rows[4].Cells[1].Comment)
			}
		})
	}
	t.Run("garden.csv", func(t *testing.T) {
		b := opened(t, "testdata/garden.csv", Options{})
		want[0] = "Moths at Tinker's Row"
		want[7] = "000453|0045|TRUE|jotagamma|two\nlines  and é ?" // there is no ♂ in Windows-1252
		assert.Equal(t, want, texts(rowsOf(t, b.Sheets()[0])))
		assert.Contains(t, joined(b.Notes()), "semicolons")
		assert.Contains(t, joined(b.Notes()), "Windows-1252")
	})
}
