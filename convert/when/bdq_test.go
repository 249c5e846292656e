package when_test

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"
	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestQualityCases reads the validation data of the Biodiversity Data Quality
// standard (TDWG BDQ Core), the cases of the tests that turn a text into an
// event date and of those that judge one.
func TestQualityCases(t *testing.T) {
	ran := map[string]int{}
	for _, c := range qualityCases(t) {
		switch c["Label"] {
		case "AMENDMENT_EVENTDATE_FROM_VERBATIM":
			if c["dwc:eventDate"] == "" {
				amended(t, c, c["dwc:verbatimEventDate"])
				ran[c["Label"]]++
			}
		case "AMENDMENT_EVENTDATE_STANDARDIZED":
			if c["dwc:eventDate"] != "" {
				amended(t, c, c["dwc:eventDate"])
				ran[c["Label"]]++
			}
		case "VALIDATION_EVENTDATE_STANDARD":
			if c["dwc:eventDate"] != "" {
				standard(t, c)
				ran[c["Label"]]++
			}
		case "AMENDMENT_EVENT_FROM_EVENTDATE":
			if c["Response.status"] == "FILLED_IN" {
				filled(t, c)
				ran[c["Label"]]++
			}
		}
	}
	require.GreaterOrEqual(t, ran["AMENDMENT_EVENTDATE_FROM_VERBATIM"], 5)
	require.GreaterOrEqual(t, ran["VALIDATION_EVENTDATE_STANDARD"], 5)
	t.Log(ran)
}

// amended compares an amendment. Where the standard leaves a text alone for
// being ambiguous (03/04/2020), this package has the notebook's own order of
// day and month to go by, and may read it.
func amended(t *testing.T, c map[string]string, text string) {
	r := when.Read(text, when.Options{Today: lastDay})
	var want map[string]string
	if c["Response.result"] != "" {
		require.NoError(t, json.Unmarshal([]byte(c["Response.result"]), &want))
	}
	switch {
	case want["dwc:eventDate"] != "":
		assert.Equal(t, want["dwc:eventDate"], r.EventDate, "%q: %s", text, r.Message)
	case when.Ambiguous(text):
	default:
		assert.Equal(t, reading.Held, r.State, "%q", text)
	}
}

// standard compares the judgement whether a text is an ISO 8601-1 date: one
// that is must be read, one that is not must not pass as it stands.
func standard(t *testing.T, c map[string]string) {
	r := when.Read(c["dwc:eventDate"], when.Options{Today: lastDay})
	if c["Response.result"] == "COMPLIANT" {
		assert.NotEqual(t, reading.Held, r.State, "%q: %s", c["dwc:eventDate"], r.Message)
		return
	}
	assert.NotEqual(t, reading.Fair, r.State, "%q: %q", c["dwc:eventDate"], r.EventDate)
}

// filled compares year, month and day, and the days of the year.
func filled(t *testing.T, c map[string]string) {
	r := when.Read(c["dwc:eventDate"], when.Options{Today: lastDay})
	var want map[string]string
	require.NoError(t, json.Unmarshal([]byte(c["Response.result"]), &want))
	number := map[string]int{
		"dwc:year": r.Year, "dwc:month": r.Month, "dwc:day": r.Day,
		"dwc:startDayOfYear": r.Start.YearDay(), "dwc:endDayOfYear": r.End.YearDay(),
	}
	for term, value := range want {
		assert.JSONEq(t, value, jsonOf(t, number[term]), "%q %s", c["dwc:eventDate"], term)
	}
}

func jsonOf(t *testing.T, n int) string {
	b, err := json.Marshal(n)
	require.NoError(t, err)
	return string(b)
}

func qualityCases(t *testing.T) []map[string]string {
	f, err := os.Open(need.ReferenceFile(t, "bdq/cases.csv"))
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	require.NoError(t, err)
	var cases []map[string]string
	for _, row := range rows[1:] {
		c := map[string]string{}
		for i, name := range rows[0] {
			if i < len(row) {
				c[name] = row[i]
			}
		}
		cases = append(cases, c)
	}
	return cases
}
