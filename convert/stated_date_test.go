package convert_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// On a page of terms the date may be stated twice over. Where its year, month
// or day are others, that is asked about; the whole date is handed in.
func TestPartsOfADateThatDisagree(t *testing.T) {
	for _, c := range []struct{ date, year, month, day, asked, leaves string }{
		{"2021-06-12", "2021", "6", "12", "", "2021 6 12"},
		{"2021-06-12", "2021", "06", "12", "", "2021 06 12"}, // as stated
		{"2021-06-12", "2020", "6", "12", "2021-06-12, year 2020", "2021 6 12"},
		{"2021-06-12", "2021", "7", "13", "2021-06-12, month 7, day 13", "2021 6 12"},
		{"2021-06-12", "", "", "13", "2021-06-12, day 13", "2021 6 12"},
		{"2021-06-12/2021-06-13", "2021", "6", "12", "", "2021 6 12"},
		{"2021-06-12/2021-06-13", "2022", "6", "12", "2021-06-12/2021-06-13, year 2022", "2021 6 "},
	} {
		result, rows := converted(t, "terms.csv", "occurrenceID,scientificName,eventDate,year,month,day,decimalLatitude,decimalLongitude,coordinateUncertaintyInMeters,recordedBy,individualCount\n"+
			"a,Agrotis exclamationis,"+c.date+","+c.year+","+c.month+","+c.day+",52.475,0.14,100,Ines Calloway,3\n")
		require.Len(t, rows, 1, c)
		assert.Equal(t, c.leaves, rows[0]["year"]+" "+rows[0]["month"]+" "+rows[0]["day"], c)
		assert.Equal(t, c.date, rows[0]["eventDate"], c)
		if c.asked == "" {
			assert.Empty(t, result.Questions, c)
			continue
		}
		require.Len(t, result.Questions, 1, c)
		assert.Equal(t, "date-parts-disagree", result.Questions[0].Code)
		assert.Equal(t, c.asked, result.Questions[0].Written)
	}
}
