package bdq_test

import (
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/validate/bdq"
)

// TestReviewed runs the cases of testdata/reviewed.tsv, which says where they
// come from.
func TestReviewed(t *testing.T) {
	data, err := os.ReadFile("testdata/reviewed.tsv")
	require.NoError(t, err)
	suite, err := bdq.New(bdq.Settings{Today: today})
	require.NoError(t, err)
	n := 0
	for line := range strings.Lines(string(data)) {
		if line[0] == '#' {
			continue
		}
		columns := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		require.Len(t, columns, 4, line)
		terms := bdq.Map{}
		for pair := range strings.SplitSeq(columns[1], "|") {
			term, value, _ := strings.Cut(pair, "=")
			if read, err := strconv.Unquote(`"` + value + `"`); err == nil {
				value = read
			}
			terms[term] = value
		}
		got, ok := suite.Run(columns[0], terms)
		require.True(t, ok, columns[0])
		assert.Equal(t, columns[2]+" "+columns[3], string(got.Status)+" "+got.ResultText(), "%s %s (%s)", columns[0], columns[1], got.Comment())
		n++
	}
	assert.Greater(t, n, 300)
}
