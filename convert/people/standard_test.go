package people_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"fieldfare/convert/people"
	"fieldfare/convert/reading"
	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestStandardExamples reads Darwin Core's own examples of recordedBy and
// identifiedBy (Biodiversity Information Standards, term versions of 2026,
// CC BY 4.0): each must come back as it stands.
func TestStandardExamples(t *testing.T) {
	f, err := os.Open(need.ReferenceFile(t, "dwc/darwin_core_terms.csv"))
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	seen := 0
	for _, row := range rows[1:] {
		if !strings.HasPrefix(row[0], "http://rs.tdwg.org/dwc/terms/") || row[1] != "recordedBy" && row[1] != "identifiedBy" {
			continue
		}
		for _, example := range strings.Split(row[6], ";") {
			example = strings.Trim(example, "` ")
			var none *people.List
			r := none.Read(example, people.Options{})
			assert.Equal(t, example, people.Join(r.RecordedBy))
			assert.Equal(t, reading.Fair, r.State, r.Message)
			seen++
		}
	}
	assert.GreaterOrEqual(t, seen, 8)
}
