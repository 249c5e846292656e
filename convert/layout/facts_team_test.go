package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Several people in the title of a page (common practice, no source).
func TestPeopleInATitle(t *testing.T) {
	for title, want := range map[string][2]string{
		"Long Drove 4 June 2021 recorded by Ines Calloway, Tom Achterberg and Pauline Marsh": {"Ines Calloway, Tom Achterberg and Pauline Marsh", "Long Drove"},
		"Long Drove 4 June 2021 - I. Calloway, T. Achterberg":                                {"I. Calloway, T. Achterberg", "Long Drove"},
		"Long Drove, 4 June 2021, Ines Calloway, Tom Achterberg":                             {"Ines Calloway, Tom Achterberg", "Long Drove"},
		"Leg. I. Calloway, T. Achterberg":                                                    {"I. Calloway, T. Achterberg", ""},
		"Recorded by Ines Calloway, Sallowmere Reserve":                                      {"Ines Calloway", "Sallowmere Reserve"},
		"Long Drove, T. Achterberg":                                                          {"T. Achterberg", "Long Drove"},
		"Long Drove - Ines Calloway, MV trap":                                                {"Ines Calloway", "Long Drove"},
	} {
		drafts := draftsOf(t, sheetOf(title, "Species|Count|Date", "Silver Y|3|4/6/2021", "Comma|2|4/6/2021", "Drinker|2|5/6/2021"), Options{})
		assert.Len(t, drafts, 3, title)
		for _, d := range drafts {
			assert.Equal(t, want, [2]string{valueOf(d, Recorder), valueOf(d, Site)}, title)
		}
	}
}
