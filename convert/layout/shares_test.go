package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func columnOf(texts ...string) *stats {
	var s stats
	for _, t := range texts {
		s.add(t, 0)
	}
	return &s
}

func TestAlongAxis(t *testing.T) {
	for _, text := range []string{"545810", "1,045,810", "545810.5", "545,810", "45,810.25", "E545810", "e 545810", "545810E", "288320 N", "545810 m", "545810m", "545810 metres"} {
		assert.Equal(t, 1.0, columnOf(text).alongAxis(), text)
	}
	for _, text := range []string{"52.47336", "0.14531", "-0.14531", "5458", "545.810", "5,458", "545,81", "12345678", "TL4588", "S545810", "545810 ft", "545810.", ""} {
		assert.Zero(t, columnOf(text).alongAxis(), text)
	}
	assert.Equal(t, 0.5, columnOf("545810.5", "5").alongAxis())
	assert.Zero(t, columnOf().alongAxis())
}

// Shares are of the cells, not of the texts that they have.
func TestShares(t *testing.T) {
	s := columnOf("1", "1", "1", "32", "1st")
	assert.Equal(t, 0.8, s.upTo(31), "a day may be written as 1st")
	assert.Equal(t, 0.6, s.upTo(12))
	assert.Equal(t, 0.8, s.upTo(32))
	assert.Equal(t, 1.0, s.figured())
	assert.Equal(t, 0.5, columnOf("20000", "60000", "19999", "60001").serials())
	assert.Zero(t, columnOf("020000").serials())
	for text, want := range map[string]float64{"1": 0, "12": 1, "123456789": 1, "1234567890": 1, "12345678901": 0} {
		assert.Equal(t, want, columnOf(text).longDigits(), text)
	}
	for text, want := range map[string]float64{"458883": 1, "458 883": 1, "45810-88320": 1, "45/88": 1, "4 8": 0, "458 88": 0, "458 88a": 0, "458810 883200": 0, "458": 1, " 458": 0} {
		assert.Equal(t, want, columnOf(text).refFigures(), text)
	}
	assert.Equal(t, 0.5, columnOf("458 883", "x").refFigures())
	assert.True(t, columnOf("2130", "0930", "0", "2400").allClockNumbers())
	assert.False(t, columnOf("2160").allClockNumbers())
	assert.False(t, columnOf("2401").allClockNumbers())
	assert.False(t, columnOf().allClockNumbers())
	assert.True(t, columnOf("Present", "absent", "X.").presence())
	assert.False(t, columnOf("Present", "3").presence())
}
