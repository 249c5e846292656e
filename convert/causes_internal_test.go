package convert

import (
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every check of validate has words on the closing screen and in the report.
func TestChecksHaveWords(t *testing.T) {
	for _, c := range validate.Checks() {
		if strings.HasSuffix(c.Name, "-") || c.State == reading.Fair {
			continue // the beginning of many names, or advice
		}
		assert.NotEmpty(t, causeWords[c.Name], c.Name)
	}
	for check, words := range causeWords {
		assert.Regexp(t, `^[a-z]`, words, check)
		assert.NotRegexp(t, `[.:(]$`, words, check)
		assert.LessOrEqual(t, len(words), 70, check)
	}
}

func TestCausesAreOneACheck(t *testing.T) {
	var of causes
	for _, q := range []*report.Question{
		{Code: "no-such-day", State: reading.Held, Written: "31/32.vi.18", Records: 9},
		{Code: "uneven-figures", State: reading.Held, Written: "TL 458 83", Records: 9},
		{Code: "no-such-day weekday-disagrees", State: reading.Held, Written: "31 June 1999", Records: 1},
		{Code: "month-only", State: reading.Query, Written: "June 1999", Records: 40},
		{Code: "never-heard-of", State: reading.Query, Written: "x", Message: "“x” is odd. Look at it.", Records: 1},
		{Code: "never-heard-of", State: reading.Query, Written: "y", Message: "“y” is odd. Look at it.", Records: 1},
	} {
		of.add(q)
	}
	causes := of.sorted()
	require.Len(t, causes, 4)
	assert.Equal(t, 10, causes[0].records, "held first, most records first")
	assert.Equal(t, "a day that the calendar does not have (31/32.vi.18; 31 June 1999)", causes[0].words())
	assert.Equal(t, "a reference whose easting and northing differ in length (TL 458 83)", causes[1].words())
	assert.Equal(t, reading.Query, causes[2].state)
	assert.Equal(t, "“x” is odd. (and 1 more case like it)", causes[3].words())
}
