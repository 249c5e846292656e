package notebook

import (
	"fmt"
	"strings"
	"testing"

	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
)

func ExampleMeasurementHeading() {
	wing := dwc.Measurement{MeasurementType: "forewing length", MeasurementUnit: "mm"}
	fmt.Println(MeasurementHeading(&wing, false, ""))
	fmt.Println(MeasurementHeading(&wing, true, "measurementMethod"))
	fmt.Println(MeasurementHeading(&dwc.Measurement{MeasurementType: "wind (Beaufort)"}, true, ""))
	// Output:
	// Measurement: forewing length (mm)
	// Event measurement method: forewing length (mm)
	// Event measurement: wind (Beaufort) ()
}

func TestMeasurementHeadingsReadBack(t *testing.T) {
	for _, event := range []bool{false, true} {
		for _, further := range append(MeasurementTerms, struct{ Term, Word string }{}) {
			for _, of := range []string{"length", "a: b", "method: x", "Measurement: y", "of (it)", ""} {
				m := dwc.Measurement{MeasurementType: of, MeasurementUnit: "mm"}
				kind, term, e, ok := ParseMeasurementHeading(MeasurementHeading(&m, event, further.Term))
				assert.Equal(t, []any{of + " (mm)", further.Term, event, true}, []any{kind, term, e, ok})
			}
		}
	}
	for _, other := range []string{"", "Measurement", "Measurement length", "Measurement length: x", "measurementValue", "Measurements: x", "Site: north"} {
		_, _, _, ok := ParseMeasurementHeading(other)
		assert.False(t, ok, other)
	}
}

func FuzzSplitMeasurements(f *testing.F) {
	f.Add("24", "", "a|b")
	f.Add(`a\`, `\|`, "x")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		values := []string{a, b, c}
		for _, v := range values {
			if v != strings.TrimSpace(v) {
				t.Skip("cells and measurements are trimmed")
			}
		}
		joined := JoinMeasurements(values)
		if joined != "" {
			assert.Equal(t, values, SplitMeasurements(joined))
		}
	})
}
