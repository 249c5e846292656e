package convert_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestRowsAreReadTheSameAmongOthers: what is remembered of other rows never
// changes the reading of one. Each row is read in a notebook of its own, and
// among its repeats and others that share some of its values.
func TestRowsAreReadTheSameAmongOthers(t *testing.T) {
	const heading = "Date,Time,Species,Scientific name,Count,Site,Grid ref,Recorder,Determiner,Stage,Method,Comments\n"
	values := [][]string{
		{"14/06/2021", "15 June 2021", "night of 16/17 June 2021", "June 2021", "31/02/2021"},
		{"22:45", "3pm", "dusk"},
		{"Large Yellow Underwing", "Heart and Dart", "Drinker", "Dark Arches (worn)", "?Silver Y", "no such moth"},
		{"Noctua pronuba", "", ""},
		{"1", "2m 1f", "several", "c. 20", "0", "7", "3 larvae"},
		{"Sallowmere Reserve", "Carr Edge", "Tinker's Row, 5 Mill Lane"},
		{"TL4588", "TL 45810 88320", "NZ99", "52.47, 0.13"},
		{"Ines Calloway", "Tom Achterberg & Ines Calloway", "Maud Pettifer det. Tom Achterberg"},
		{"Tom Achterberg", "T. Achterberg"},
		{"adult", "larva", "?"},
		{"light trap", "2 MV traps", "sugar", "by day"},
	}
	r := rand.New(rand.NewPCG(10, 1))
	const rows = 40
	lines := make([]string, rows)
	for i := range lines {
		var fields []string
		for k, of := range values {
			value := of[0] // as in most rows
			if r.IntN(len(values)) < 4 || k == 5 {
				value = of[r.IntN(len(of))]
			}
			fields = append(fields, `"`+value+`"`)
		}
		lines[i] = fmt.Sprintf("%s,remark %c%c\n", strings.Join(fields, ","), 'a'+i/26, 'a'+i%26)
	}
	byRemark := func(rows []map[string]string) map[string][]map[string]string {
		found := map[string][]map[string]string{}
		for _, row := range rows {
			for _, id := range []string{"occurrenceID", "eventID"} {
				delete(row, id) // the ids of repeats are told apart
			}
			for term, value := range row {
				if value == "" {
					delete(row, term)
				}
			}
			found[row["occurrenceRemarks"]] = append(found[row["occurrenceRemarks"]], row)
		}
		return found
	}
	among := append(append([]string{}, lines...), lines...)
	among = append(among, lines...)
	r.Shuffle(len(among), func(i, k int) { among[i], among[k] = among[k], among[i] })
	_, all := converted(t, "all.csv", heading+strings.Join(among, ""))
	got := byRemark(all)
	left := 0
	for _, line := range lines {
		_, alone := converted(t, "all.csv", heading+line)
		for remark, want := range byRemark(alone) {
			require.Len(t, got[remark], 3*len(want), line)
			left++
			for i, row := range got[remark] {
				assert.Equal(t, want[i%len(want)], row, line)
			}
		}
	}
	assert.Len(t, got, left)
	assert.Greater(t, left, rows/2, "the test is of records that leave")
}
