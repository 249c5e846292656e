package people_test

import (
	"testing"

	"fieldfare/convert/people"
	"fieldfare/convert/reading"

	"github.com/stretchr/testify/assert"
)

func TestListProblems(t *testing.T) {
	l, problems := people.NewList([]people.Person{
		{Name: "Ines Calloway", Initials: []string{"IC"}},
		{Name: ""},
		{Name: "Isaac Cole", Initials: []string{"IC"}},
		{Name: "Ines Calloway", Other: []string{"Ines"}},
		{Name: "Isaac Cole", Withhold: true},
	})
	assert.Len(t, problems, 3)
	assert.Contains(t, problems[2], "“IC” stands for Ines Calloway and Isaac Cole")
	assert.Equal(t, []string{"Ines Calloway"}, l.Read("Ines", people.Options{}).RecordedBy)

	r := l.Read("IC", people.Options{})
	assert.Equal(t, reading.Query, r.State)
	assert.Empty(t, r.RecordedBy, "one of the two is not to be named")
	assert.True(t, r.Withheld)
}

// TestInitialsFromNames: a list of bare names still expands initials, but asks.
func TestInitialsFromNames(t *testing.T) {
	l, _ := people.NewList([]people.Person{{Name: "Ines Calloway"}, {Name: "Tom C. Achterberg"}})
	r := l.Read("IC & TCA", people.Options{})
	assert.Equal(t, []string{"Ines Calloway", "Tom C. Achterberg"}, r.RecordedBy)
	assert.Equal(t, reading.Query, r.State)
}

func TestNoList(t *testing.T) {
	var none *people.List
	r := none.Read("Calloway, I. & T. Achterberg", people.Options{})
	assert.Equal(t, "I. Calloway | T. Achterberg", people.Join(r.RecordedBy))
	assert.Equal(t, reading.Fair, r.State)
	assert.Equal(t, reading.Query, none.Read("self", people.Options{}).State, "nobody says whose notebooks these are")
	assert.Equal(t, []string{"Ines Calloway"}, none.Read("self", people.Options{Self: "Ines Calloway"}).RecordedBy)
}

func TestRoleOfColumn(t *testing.T) {
	l := list(t)
	r := l.Read("TA", people.Options{Role: people.Determiner})
	assert.Equal(t, []string{"Tom Achterberg"}, r.IdentifiedBy)
	assert.Empty(t, r.RecordedBy)
	r = l.Read("det. TA, conf. IC", people.Options{Role: people.Determiner})
	assert.Equal(t, []string{"Tom Achterberg"}, r.IdentifiedBy)
	assert.Equal(t, []string{"Ines Calloway"}, r.VerifiedBy)
}

// TestWithheld: whoever is not to be named is named nowhere.
func TestWithheld(t *testing.T) {
	l := list(t)
	for _, written := range []string{"RQ", "R.Q.", "Rose Quill", "ROSE QUILL", "R. Quill", "Quill, R.", "Quill, Rose", "Quill R", "Mrs Quill", "Quill", "Ros Quill", "Rose Quil",
		"IC (with RQ)", "IC per Rose Quill", "IC & RQ", "RQ det. RQ", "Rose Quill et al.", "IC for R. Quill", "Rose  Quill", "TA: RQ", "Quill Rose", "Rose Q", "Rose Quill's garden", "R=Rose Quill"} {
		r := l.Read(written, people.Options{})
		assert.True(t, r.Withheld, written)
		out := people.Join(r.RecordedBy) + people.Join(r.IdentifiedBy) + people.Join(r.VerifiedBy) + r.Remarks
		assert.NotRegexp(t, `(?i)quil|rose|\bRQ\b|R\.Q`, out, written)
	}
	for text, want := range map[string]string{
		"shown to Rose Quill in the garden":  "shown to in the garden",
		"RQ and R.Q. saw it, R Quill agreed": "and saw it, agreed",
		"Mrs Quill rang 01632 960123":        "rang",
		"RQA 12, a rose with a quill":        "RQA 12, a rose with a quill",
		"Tom was there":                      "Tom was there",
	} {
		clean, _ := l.Scrub(text)
		assert.Equal(t, want, clean)
	}
}

func TestColumns(t *testing.T) {
	name, initials, other, withhold := people.Columns([]string{"Initials", "Full name", "Also known as", "Withhold?"})
	assert.Equal(t, [4]int{1, 0, 2, 3}, [4]int{name, initials, other, withhold})
	name, _, _, withhold = people.Columns([]string{"Colour"})
	assert.Equal(t, [2]int{-1, -1}, [2]int{name, withhold})
}
