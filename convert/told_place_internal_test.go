package convert

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNameBeside(t *testing.T) {
	for answer, want := range map[string]struct {
		name   string
		placed bool
	}{
		"TL4588":                       {"", true},
		"TL 458 832":                   {"", true},
		"TL 45810 88320":               {"", true},
		"52.4747, 0.1417":              {"", true},
		"Long Drove, TL 462 879":       {"Long Drove", true},
		"Sallowmere, Carr Edge TL4581": {"Sallowmere, Carr Edge", true},
		"Sallowmere Reserve (TL4588)":  {"Sallowmere Reserve", true},
		"Sluice bridge – TL 455 884":   {"Sluice bridge", true},
		"Sluice bridge at TL 455 884":  {"Sluice bridge", true},
		"TL4588 Sallowmere Reserve":    {"Sallowmere Reserve", true},
		"TL 462 879, Long Drove":       {"Long Drove", true},
		"Sallowmere Reserve":           {"", false},
		"leave it":                     {"", false},
		"TL 458":                       {"", false},
	} {
		name, placed := nameBeside(answer)
		assert.Equal(t, want.name, name, answer)
		assert.Equal(t, want.placed, placed, answer)
	}
}
