package convert_test

import (
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/demo"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The demonstration's records pass every validation of the standard
// (Biodiversity Data Quality Interest Group of TDWG) that applies to them.
func TestDemonstrationPassesTheStandard(t *testing.T) {
	paths, err := demo.Write(t.TempDir())
	require.NoError(t, err)
	result := run(t, convert.Job{Files: paths, Standard: true})
	require.Greater(t, result.Standard.Records(), 700)
	for _, row := range result.Standard.Failed() {
		assert.Fail(t, row.Test.Label, "%d records", row.Counts.NotCompliant)
	}
}
