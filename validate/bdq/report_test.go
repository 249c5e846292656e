package bdq_test

import (
	"bytes"
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
	"fieldfare/validate/bdq"
)

func count(t *testing.T, report *bdq.Report, label string) bdq.Counts {
	for _, row := range report.Rows() {
		if row.Test.Label == label {
			return row.Counts
		}
	}
	t.Fatalf("no test %s", label)
	return bdq.Counts{}
}

// TestReportOfCleanRecord: a record as a submission has it complies with every
// validation that applies to it.
func TestReportOfCleanRecord(t *testing.T) {
	suite, err := bdq.New(bdq.Settings{Today: today})
	require.NoError(t, err)
	report := suite.NewReport()
	report.Observe(moth())
	assert.Empty(t, report.Failed())
	assert.Equal(t, bdq.Counts{Compliant: 1}, count(t, report, "VALIDATION_EVENT_CONSISTENT"))
	assert.Equal(t, bdq.Counts{InternalUnmet: 1}, count(t, report, "VALIDATION_MINDEPTH_INRANGE"))
	assert.Equal(t, bdq.Counts{Measured: 1}, count(t, report, "MEASURE_EVENTDATE_DURATIONINSECONDS"))
	assert.Equal(t, bdq.Counts{NotIssue: 1}, count(t, report, "ISSUE_DATAGENERALIZATIONS_NOTEMPTY"))
	for test, response := range suite.RunAll(moth()) {
		assert.Empty(t, response.Changes, "%s proposes %s", test.Label, response.ResultText())
	}
}

// TestReportAddsUp: each test answers once for each record.
func TestReportAddsUp(t *testing.T) {
	suite, err := bdq.New(bdq.Settings{Today: today})
	require.NoError(t, err)
	report := suite.NewReport()
	records := []bdq.Terms{moth(), bdq.Map{}, &dwc.Occurrence{EventDate: "14/6/2024", Country: "United Kingdom", CountryCode: "UK"},
		bdq.Map{"sex": "m", "taxonRank": "sp.", "dataGeneralizations": "blurred", "decimalLatitude": "95", "decimalLongitude": "0"}}
	for _, record := range records {
		report.Observe(record)
	}
	assert.Equal(t, 4, report.Records())
	for _, row := range report.Rows() {
		c := row.Counts
		sum := c.Compliant + c.NotCompliant + c.PotentialIssue + c.NotIssue + c.Measured + c.Amended + c.FilledIn + c.NotAmended + c.InternalUnmet + c.ExternalUnmet
		assert.Equal(t, 4, sum, row.Test.Label)
	}
	assert.Equal(t, bdq.Counts{Compliant: 1, NotCompliant: 1, InternalUnmet: 2}, count(t, report, "VALIDATION_COUNTRYCODE_STANDARD"))
	assert.Equal(t, bdq.Counts{PotentialIssue: 1, NotIssue: 3}, count(t, report, "ISSUE_DATAGENERALIZATIONS_NOTEMPTY"))
	assert.Equal(t, bdq.Counts{Amended: 1, InternalUnmet: 3}, count(t, report, "AMENDMENT_SEX_STANDARDIZED"))
	assert.Equal(t, bdq.Counts{FilledIn: 3, NotAmended: 1}, count(t, report, "AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT"))

	var text bytes.Buffer
	require.NoError(t, report.WriteText(&text))
	assert.Contains(t, text.String(), "tests (TDWG) of 4 records\n")
	for _, test := range bdq.Tests() {
		assert.Contains(t, text.String(), "\n"+test.Label+" ")
	}

	data, err := json.Marshal(report)
	require.NoError(t, err)
	var read struct {
		Records int
		Tests   []struct {
			Label, GUID string
			Counts      map[string]int
		}
	}
	require.NoError(t, json.Unmarshal(data, &read))
	assert.Equal(t, 4, read.Records)
	assert.Len(t, read.Tests, 81)
	for _, test := range read.Tests {
		sum := 0
		for _, n := range test.Counts {
			sum += n
		}
		assert.Equal(t, 4, sum, test.Label)
	}
}

func TestSettings(t *testing.T) {
	_, err := bdq.New(bdq.Settings{})
	assert.ErrorContains(t, err, "day")
	for name, value := range map[string]string{
		"bdqval:earliestValidDate": "long ago", "latestValidDate": "63", "bdqval:maximumValidDepthInMeters": "deep", "bdqval:includeEventDate": "perhaps",
	} {
		_, err := bdq.New(bdq.Settings{Today: today, Parameters: map[string]string{name: value}})
		assert.ErrorContains(t, err, value, name)
	}
	_, err = bdq.New(bdq.Settings{Today: time.Now(), Parameters: map[string]string{"bdqval:earliestValidDate": " "}})
	assert.NoError(t, err, "an empty parameter leaves the default")
	suite, err := bdq.New(bdq.Settings{Today: today})
	require.NoError(t, err)
	_, ok := suite.Run("VALIDATION_NO_SUCH_TEST", bdq.Map{})
	assert.False(t, ok)
}
