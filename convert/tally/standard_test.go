package tally_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/tally"
	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestStandardExamples reads the examples that Darwin Core gives for its terms
// (Biodiversity Information Standards, term versions of 2026, CC BY 4.0).
func TestStandardExamples(t *testing.T) {
	ex := examples(t)
	for term, want := range map[string][]string{
		"individualCount": {"0", "1", "25"},
		"sex":             {"female", "male", "hermaphrodite"},
		"lifeStage":       {"larva", "juvenile", "adult"},
		"caste":           {"queen"},
		"vitality":        {"alive", "dead"},
	} {
		for _, w := range want {
			require.Contains(t, ex[term], "`"+w+"`", term)
			r := tally.Read(w, tally.Options{ZeroIsAbsence: true})
			require.Equal(t, reading.Fair, r.State, "%s %q: %s", term, w, r.Message)
			assert.Contains(t, r.JSON(), `"`+term+`":"`+w+`"`)
		}
	}
	require.Contains(t, ex["organismQuantityType"], "`many` (organismQuantity) with `individuals` (organismQuantityType)")
	assert.Equal(t, `{"organismQuantity":"many","organismQuantityType":"individuals","occurrenceStatus":"present"}`, tally.Read("many", tally.Options{}).JSON())
}

func examples(t *testing.T) map[string]string {
	f, err := os.Open(need.ReferenceFile(t, "dwc/darwin_core_terms.csv"))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	out := map[string]string{}
	for _, r := range rows[1:] {
		if strings.HasPrefix(r[0], "http://rs.tdwg.org/dwc/terms/") {
			out[r[1]] = r[6]
		}
	}
	return out
}
