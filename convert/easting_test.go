package convert_test

import (
	"fmt"
	"testing"

	"fieldfare/gridref"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Easting and northing in columns of their own, as instruments, maps and
// spreadsheets write them, all of one metre of TL4581088320.
func TestEastingAndNorthingInColumns(t *testing.T) {
	for _, c := range [][2]string{
		{"545810", "288320"}, {"545810.5", "288320.25"}, {"545810.0", "288320.0"}, {`"545,810"`, `"288,320"`},
		{"E545810", "N288320"}, {"E 545810", "N 288320"}, {"545810E", "288320N"}, {"545810 m", "288320 m"}, {"545810m", "288320m"},
	} {
		notebook := "Date,Species,Count,Site,Easting,Northing,Recorder\n"
		for day := 12; day < 15; day++ {
			notebook += fmt.Sprintf("%d/06/2021,Heart and Dart,%d,Sallowmere Reserve,%s,%s,Ines Calloway\n", day, day, c[0], c[1])
		}
		result, rows := converted(t, "season.csv", notebook)
		require.Len(t, rows, 3, c)
		assert.Equal(t, 3, result.Summary.Fair, c)
		assert.Equal(t, "52.4733645", rows[0]["decimalLatitude"], c)
		assert.Equal(t, "0.1453259", rows[0]["decimalLongitude"], c)
	}
}

// The letters of the square in one column and its figures in another, however
// the figures are parted: all are read, and none leaves the square alone.
func TestLettersAndFiguresInColumns(t *testing.T) {
	for _, headings := range []string{"Square,Ref", "Grid letters,Grid figures", "100km square,Grid ref", "Letters,Ref"} {
		for figures, want := range map[string]string{
			"4581088320": "TL4581088320", "45810 88320": "TL4581088320", "45818832": "TL45818832", "458883": "TL458883", "458 883": "TL458883", "458/883": "TL458883", "458-883": "TL458883",
		} {
			notebook := "Date,Species,Count,Site," + headings + ",Recorder\n"
			for day := 12; day < 15; day++ {
				notebook += fmt.Sprintf("%d/06/2021,Heart and Dart,%d,Sallowmere Reserve,TL,%s,Ines Calloway\n", day, day, figures)
			}
			result, rows := converted(t, "season.csv", notebook)
			require.Len(t, rows, 3, "%s %s", headings, figures)
			assert.Equal(t, 3, result.Summary.Fair, "%s %s", headings, figures)
			square, err := gridref.Parse(rows[0]["verbatimCoordinates"])
			require.NoError(t, err, "%s %s", headings, figures)
			assert.Equal(t, want, square.Square.String(), "%s %s", headings, figures)
		}
	}
}
