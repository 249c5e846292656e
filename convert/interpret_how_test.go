package convert_test

import (
	"path/filepath"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Lamp, trap, method and effort may stand in columns of their own; nothing of
// them is lost. How trap nights are headed is common practice, no source.
func TestMethodsInSeveralColumns(t *testing.T) {
	for name, c := range map[string]struct {
		heads, values                string
		protocol, effort, size, unit string
	}{
		"trap and lamp":        {"Trap,Lamp,Hours,Traps", "Robinson,125W MV,6,1", "125W MV Robinson", "Hours: 6; Traps: 1", "1", "trap"},
		"trap type and source": {"Trap type,Light source", "Skinner trap,40W actinic", "40W actinic Skinner trap", "", "", ""},
		"method, said twice":   {"Method,Trap", "MV,MV Robinson", "MV Robinson", "", "", ""},
		"method and bulb":      {"Method,Bulb,No. of traps", "light trap,15W actinic,3", "light trap, 15W actinic", "No. of traps: 3", "3", "trap"},
		"number of a trap":     {"Trap no.,Trap", "2,Heath 6W", "Trap no.: 2 Heath 6W", "", "", ""},
		"wattage":              {"Watts,Trap", "15,Skinner", "15W Skinner", "", "", ""},
		"one column":           {"Method", "125W MV Robinson trap", "125W MV Robinson trap", "", "", ""},
		"traps by name":        {"Traps", "2 Robinsons + 1 actinic", "2 Robinsons + 1 actinic", "", "", ""},
	} {
		t.Run(name, func(t *testing.T) {
			out := t.TempDir()
			text := "Date,Species,Count,Site,Grid ref,Recorder," + c.heads + "\n12/06/2021,Heart and Dart,12,Sallowmere Reserve,TL4588,Ines Calloway," + c.values + "\n"
			run(t, convert.Job{Files: []string{write(t, "nights.csv", text)}, Out: out})
			for _, e := range table(t, filepath.Join(out, convert.SubmissionFile), "event.txt") {
				if e["eventType"] == "season" {
					continue
				}
				require.Equal(t, c.protocol, e["samplingProtocol"])
				assert.Equal(t, []string{c.effort, c.size, c.unit}, []string{e["samplingEffort"], e["sampleSizeValue"], e["sampleSizeUnit"]})
			}
		})
	}
}
