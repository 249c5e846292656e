package convert

import (
	"testing"

	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
)

func TestSampleSize(t *testing.T) {
	for text, want := range map[string][2]string{
		"2 traps": {"2", "trap"}, "1 trap": {"1", "trap"}, "two traps": {"2", "trap"}, "2 MV traps": {"2", "trap"}, "2 x actinic trap": {"2", "trap"},
		"2x15W actinic traps": {"2", "trap"}, "3 trap nights": {"3", "trap night"}, "3 trap-nights": {"3", "trap night"}, "2 traps, 6 hours": {"2", "trap"},
		"6 hours, 2 traps": {"2", "trap"}, "Traps: 2": {"2", "trap"}, "Number of traps: 4": {"4", "trap"}, "2 nets": {"2", "net"},
		"6 hours": {}, "Hours: 6": {}, "125W MV trap": {}, "125 W MV trap": {}, "15 watt actinic trap": {}, "trap 2": {}, "2-3 traps": {}, "c. 2 traps": {}, "2 or 3 traps": {},
		"2 of 3 traps": {}, "1 MV trap + 1 actinic trap": {}, "~2 traps": {}, "MV trap": {}, "": {}, "0 traps": {}, "2 trappers": {}, "1.5 traps": {}, "2 nights MV trap": {},
	} {
		var o dwc.Occurrence
		sampleSize(&o, counted(text))
		assert.Equal(t, want, [2]string{o.SampleSizeValue, o.SampleSizeUnit}, text)
	}
	var o dwc.Occurrence
	sampleSize(&o, "MV trap", "2 traps")
	assert.Equal(t, "2", o.SampleSizeValue)
	o = dwc.Occurrence{}
	sampleSize(&o, "3 MV traps", "2 traps")
	assert.Empty(t, o.SampleSizeValue, "which of the two is right?")
}
