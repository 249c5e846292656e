package when_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

// A date in the future is held. What it may have been: the last such day, and
// the years that one slip of the hand makes into the written one.
func TestFutureDates(t *testing.T) {
	o := when.Options{Today: when.Date{Year: 2026, Month: 11, Day: 25}}
	for text, want := range map[string][]string{
		"26/11/2026": {"2025-11-26"},
		"24/11/2027": {"2026-11-24", "2025-11-24", "2024-11-24", "2023-11-24", "2022-11-24", "2021-11-24", "2020-11-24", "2017-11-24", "2007-11-24"},
		"02/02/2032": {"2026-02-02", "2023-02-02", "2022-02-02", "2012-02-02", "2002-02-02"},
		"29/02/2028": {"2024-02-29", "2020-02-29", "2008-02-29"},
	} {
		r := when.Read(text, o)
		assert.Equal(t, reading.Held, r.State, text)
		assert.Contains(t, r.Code, "future", text)
		assert.Equal(t, want, r.Candidates, text)
	}
}
