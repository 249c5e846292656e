package validate_test

import (
	"context"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/demo"
	"fieldfare/convert/report"
	"fieldfare/convert/when"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// raisedByChecks counts what the checks of this package raised, advice apart.
func raisedByChecks(t *testing.T, s *report.Summary) (n int) {
	t.Helper()
	ours := map[string]bool{}
	for _, c := range validate.Checks() {
		ours[c.Name] = c.When != validate.WhileReading
	}
	for _, c := range s.Checks {
		if ours[c.Check] && c.State != "advice" {
			t.Logf("%d %s (%s)", c.Records, c.Check, c.State)
			n += c.Records
		}
	}
	return n
}

func TestCleanSeasonIsLeftAlone(t *testing.T) {
	for year := 2017; year < 2023; year++ {
		rows := season(year)
		result := check(t, map[string]string{"season.csv": text(t, rows)})
		assert.Equal(t, len(rows), result.Summary.Read-1)
		assert.Zero(t, result.Summary.Held)
		n := raisedByChecks(t, &result.Summary)
		for _, q := range result.Questions {
			t.Log(year, q.Code, q.Written, q.Message)
		}
		assert.Less(t, float64(n), 0.02*float64(len(rows)), "queries of the checks: under 2 %%")
	}
}

func TestDemonstrationIsMostlyLeftAlone(t *testing.T) {
	paths, err := demo.Write(t.TempDir())
	require.NoError(t, err)
	result, err := convert.Run(context.Background(), convert.Job{Files: paths, Today: when.Date{Year: 2026, Month: 1, Day: 31}})
	require.NoError(t, err)
	n := raisedByChecks(t, &result.Summary)
	assert.Less(t, float64(n), 0.02*float64(result.Summary.Occurrences), "queries of the checks: under 2 %%")
}
