package convert

import (
	"testing"

	"fieldfare/convert/identity"
	"fieldfare/convert/layout"
	"fieldfare/convert/spool"

	"github.com/stretchr/testify/assert"
)

// TestStepsStandTogetherInTheFingerprint: what a step reads enters it as one
// piece, so nothing else may stand between.
func TestStepsStandTogetherInTheFingerprint(t *testing.T) {
	seen, last := map[spool.Kind]bool{}, layout.Meaning("")
	for _, m := range contentMeanings {
		kind, ok := kindOf(m)
		before, had := kindOf(last)
		if last = m; !ok || had && before == kind {
			continue
		}
		assert.False(t, seen[kind], "%s stands apart from others that one step reads", m)
		seen[kind] = true
	}
}

// TestFingerprintIsOfTheValuesInTheirOrder: whichever pieces of it were
// recalled.
func TestFingerprintIsOfTheValuesInTheirOrder(t *testing.T) {
	value := func(m layout.Meaning, text string) layout.Value {
		return layout.Value{Meaning: m, Text: text, From: layout.FromCell}
	}
	fromProject := value(layout.Site, "Long Drove")
	fromProject.From = layout.FromProject
	males := value(layout.Count, "3")
	males.Sex = "male"
	d := draft{Draft: &layout.Draft{Values: []layout.Value{
		value(layout.GridRef, "TL4588"), value(layout.Taxon, "Heart and Dart"), males, value(layout.Weather, "mild"),
		value(layout.EndDate, "14/6/21"), value(layout.Date, "12/6/21"), fromProject, value(layout.Count, "1234567890x"), value(layout.Site, "Carr Edge"),
	}}}
	want := identity.Content([]string{
		"date", "12/6/21", "", "", "end date", "14/6/21", "", "", "name", "Heart and Dart", "", "",
		"count", "3", "male", "", "count", "1234567890x", "", "", "site", "Carr Edge", "", "", "grid reference", "TL4588", "", "",
	})
	var in interpreter
	d.shape = in.shapes.of(&d)
	assert.Equal(t, want, in.content(&d))
	for kind := range spool.Kinds {
		d.facets[kind] = &facet{written: in.written(nil, &d, spool.Kind(kind))}
		assert.Equal(t, want, in.content(&d), "recalled up to %d", kind)
	}
}
