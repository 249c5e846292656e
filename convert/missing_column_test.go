package convert_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A page without a column of dates or names says so, and what to do.
func TestPageWithoutAColumn(t *testing.T) {
	for notebook, says := range map[string]string{
		"Species,Count,Site,Grid ref,Recorder\nHeart and Dart,3,Sallowmere Reserve,TL4588,Ines Calloway\nBuff-tip,2,Sallowmere Reserve,TL4588,Ines Calloway\n": "No column of this page could be a date. Add one, give its heading a plain word such as “Date”, or say which column it is in the project file.",
		"Date,Count,Site,Grid ref,Recorder\n12/06/2021,3,Sallowmere Reserve,TL4588,Ines Calloway\n13/06/2021,2,Sallowmere Reserve,TL4588,Ines Calloway\n":      "No column of this page could be a name. Add one, give its heading a plain word such as “Name”, or say which column it is in the project file.",
	} {
		result, _ := converted(t, "season.csv", notebook)
		require.NotEmpty(t, result.Questions)
		var said []string
		for _, q := range result.Questions {
			said = append(said, q.Message)
		}
		assert.Contains(t, said, says)
		assert.Zero(t, result.Summary.Occurrences)
	}
}
