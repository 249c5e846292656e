package tally_test

import (
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/tally"

	"github.com/stretchr/testify/assert"
)

// TestZero: whether nothing seen is an absence is the project's to say, but a
// record that says so in words is one.
func TestZero(t *testing.T) {
	for _, written := range []string{"0", "00", "-", "—", "nil", "None", "none seen", "no larvae", "0m 0f", "FALSE"} {
		r := tally.Read(written, tally.Options{})
		assert.Equal(t, reading.Skipped, r.State, written)
		assert.Equal(t, "not-seen", r.Code, written)
		r = tally.Read(written, tally.Options{ZeroIsAbsence: true})
		assert.Equal(t, reading.Fair, r.State, written)
		assert.True(t, r.Parts[0].Absent, written)
	}
	assert.Equal(t, "", tally.Read("-", tally.Options{ZeroIsAbsence: true}).Parts[0].IndividualCount, "a dash is no number")
	assert.Equal(t, "0", tally.Read("nil", tally.Options{ZeroIsAbsence: true}).Parts[0].IndividualCount)
	assert.True(t, tally.Read("absent", tally.Options{}).Parts[0].Absent)
	assert.Equal(t, reading.Held, tally.Read("0?", tally.Options{}).State)
}

// TestDate: what a spreadsheet made a date of was a range or two numbers.
func TestDate(t *testing.T) {
	r := tally.Read("2021-12-10", tally.Options{Date: true})
	assert.Equal(t, reading.Held, r.State)
	assert.Equal(t, "date-as-count", r.Code)
	assert.Equal(t, []string{"10-12", "12-10"}, r.Candidates)
	assert.Equal(t, reading.Held, tally.Read("10/12/2021", tally.Options{Date: true}).State)
}

func TestHeadings(t *testing.T) {
	for heading, want := range map[string]string{"m": "male", "♀": "female", "Males": "male", "No. of females": "female", "Count": "", "m/f": ""} {
		assert.Equal(t, want, tally.Read("3", tally.Options{Sex: heading}).Parts[0].Sex, heading)
	}
	for heading, want := range map[string]string{"larvae": "larva", "Adults": "adult", "No. pupae": "pupa", "Count": ""} {
		assert.Equal(t, want, tally.Read("3", tally.Options{Stage: heading}).Parts[0].LifeStage, heading)
	}
	assert.Equal(t, tally.Part{OrganismQuantity: "3", OrganismQuantityType: "mines", LifeStage: "larva"}, tally.Read("3", tally.Options{Stage: "mine"}).Parts[0])
	assert.Equal(t, tally.Part{OrganismQuantity: "c.5", OrganismQuantityType: "leaf mines", LifeStage: "larva"}, tally.Read("c.5", tally.Options{Stage: "Leaf mines"}).Parts[0])
	assert.Equal(t, tally.Part{IndividualCount: "1", Sex: "female", Caste: "queen"}, tally.Read("1", tally.Options{Stage: "queen"}).Parts[0])
	assert.Equal(t, tally.Part{IndividualCount: "9", Caste: "worker"}, tally.Read("9", tally.Options{Stage: "workers"}).Parts[0])
	r := tally.Read("2 larvae", tally.Options{Stage: "adults"})
	assert.Equal(t, reading.Query, r.State)
	assert.Equal(t, "larva", r.Parts[0].LifeStage, "the cell is believed")
}

// TestPlainCountNeedsNoMemory: most cells of a table of nights are plain
// numbers, and there may be millions.
func TestPlainCountNeedsNoMemory(t *testing.T) {
	parts := make([]tally.Part, 0, 4)
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		parts, _ = tally.Append(parts[:0], "12", tally.Options{ZeroIsAbsence: true})
		parts, _ = tally.Append(parts[:0], "12", tally.Options{Sex: "male"})
	}))
}

// Numbers with commas, points and units, as practitioners met them.
func TestNumbersThatLookLikeOthers(t *testing.T) {
	for text, want := range map[string]struct {
		state reading.State
		count string
	}{
		"1,000": {reading.Fair, "1000"}, "2,000": {reading.Fair, "2000"}, "10,000": {reading.Query, "10000"}, "1,200": {reading.Fair, "1200"},
		"1.0": {reading.Fair, "1"}, "12.00": {reading.Fair, "12"}, "1.000": {reading.Held, ""}, "12,0": {reading.Fair, "12"},
		"120mm": {reading.Held, ""}, "12 per m2": {reading.Held, ""}, "3/ha": {reading.Held, ""}, "2m": {reading.Fair, "2"},
		"0-1": {reading.Query, ""}, "1st of year": {reading.Query, ""},
	} {
		r := tally.Read(text, tally.Options{})
		assert.Equal(t, want.state, r.State, "%s: %s", text, r.Message)
		if want.count != "" && assert.Len(t, r.Parts, 1, text) {
			assert.Equal(t, want.count, r.Parts[0].IndividualCount, text)
		}
	}
}
