package convert_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What stands beside a name says of sex, stage and number what columns of
// their own would say.
func TestWordsBesideTheName(t *testing.T) {
	result, rows := converted(t, "beside.csv", `Date,Species,No,GR,Recorder
3/6/2021,Drinker larva,1,TL453812,Ines Calloway
3/6/2021,Ghost Moth male,1,TL453812,Ines Calloway
3/6/2021,Vapourer (f),1,TL453812,Ines Calloway
3/6/2021,Large Yellow Underwing x3,,TL453812,Ines Calloway
4/6/2021,Large Yellow Underwing x3,5,TL453812,Ines Calloway
5/6/2021,Heart and Dart (worn),5,TL453812,Ines Calloway
`)
	require.Len(t, rows, 6)
	for i, want := range []map[string]string{
		{"individualCount": "1", "lifeStage": "larva"},
		{"individualCount": "1", "sex": "male"},
		{"individualCount": "1", "sex": "female"},
		{"individualCount": "3"},
		{"individualCount": "5", "occurrenceRemarks": "x3"},
		{"individualCount": "5", "occurrenceRemarks": "worn"},
	} {
		for term, value := range want {
			assert.Equal(t, value, rows[i][term], "row %d, %s", i+1, term)
		}
	}
	assert.Equal(t, 1, result.Summary.Query, "the two numbers that disagree are asked about")
}

func TestStatedAbsence(t *testing.T) {
	_, rows := converted(t, "absent.csv", `occurrenceID,eventDate,scientificName,occurrenceStatus,individualCount,decimalLatitude,decimalLongitude,recordedBy
a:1,2021-06-12,Agrotis exclamationis,absent,0,52.41,0.13,Ines Calloway
`)
	require.Len(t, rows, 1)
	assert.Equal(t, "absent", rows[0]["occurrenceStatus"])
}
