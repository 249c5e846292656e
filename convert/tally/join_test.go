package tally_test

import (
	"fmt"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/tally"

	"github.com/stretchr/testify/assert"
)

// TestJoin: common practice, no source.
func TestJoin(t *testing.T) {
	for _, c := range []struct {
		name    string
		columns []tally.Column
		o       tally.Options
		state   reading.State
		code    string
		want    string
	}{
		{"males and females", []tally.Column{{"2", "m", ""}, {"1", "f", ""}}, tally.Options{}, reading.Fair, "",
			`[{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"}]`},
		{"one blank", []tally.Column{{"2", "♂", ""}, {"", "♀", ""}}, tally.Options{}, reading.Fair, "",
			`{"individualCount":"2","sex":"male","occurrenceStatus":"present"}`},
		{"one nought", []tally.Column{{"0", "Males", ""}, {"1", "Females", ""}, {"-", "", "larvae"}}, tally.Options{}, reading.Fair, "",
			`{"individualCount":"1","sex":"female","occurrenceStatus":"present"}`},
		{"one nought is no absence of the taxon", []tally.Column{{"0", "m", ""}, {"1", "f", ""}}, tally.Options{ZeroIsAbsence: true}, reading.Fair, "",
			`{"individualCount":"1","sex":"female","occurrenceStatus":"present"}`},
		{"all blank", []tally.Column{{"", "m", ""}, {"", "f", ""}}, tally.Options{}, reading.Skipped, "blank", ""},
		{"all nought", []tally.Column{{"0", "m", ""}, {"0", "f", ""}}, tally.Options{}, reading.Skipped, "not-seen", ""},
		{"all nought, looked for", []tally.Column{{"0", "m", ""}, {"0", "f", ""}}, tally.Options{ZeroIsAbsence: true}, reading.Fair, "",
			`{"individualCount":"0","occurrenceStatus":"absent"}`},
		{"total agrees", []tally.Column{{"2", "m", ""}, {"1", "f", ""}, {"3", "", ""}}, tally.Options{}, reading.Fair, "",
			`[{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"}]`},
		{"total is larger", []tally.Column{{"5", "", ""}, {"2", "m", ""}, {"1", "f", ""}}, tally.Options{}, reading.Query, "sum-disagrees",
			`[{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"},{"individualCount":"2","occurrenceStatus":"present"}]`},
		{"not sexed", []tally.Column{{"6", "male", ""}, {"2", "female", ""}, {"1", "unknown", ""}}, tally.Options{}, reading.Fair, "",
			`[{"individualCount":"6","sex":"male","occurrenceStatus":"present"},{"individualCount":"2","sex":"female","occurrenceStatus":"present"},{"individualCount":"1","occurrenceStatus":"present"}]`},
		{"total is smaller", []tally.Column{{"2", "m", ""}, {"1", "f", ""}, {"2", "", ""}}, tally.Options{}, reading.Query, "sum-disagrees",
			`[{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"}]`},
		{"only the total", []tally.Column{{"", "m", ""}, {"", "f", ""}, {"7", "", ""}}, tally.Options{}, reading.Fair, "",
			`{"individualCount":"7","occurrenceStatus":"present"}`},
		{"total is vague", []tally.Column{{"2", "m", ""}, {"1", "f", ""}, {"c.5", "", ""}}, tally.Options{}, reading.Query, "total-not-compared",
			`[{"individualCount":"2","sex":"male","occurrenceStatus":"present","occurrenceRemarks":"total c.5"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"}]`},
		{"total is a tick", []tally.Column{{"2", "m", ""}, {"✓", "", ""}}, tally.Options{}, reading.Fair, "",
			`{"individualCount":"2","sex":"male","occurrenceStatus":"present"}`},
		{"one is not understood", []tally.Column{{"2", "m", ""}, {"blah", "f", ""}}, tally.Options{}, reading.Held, "count-not-understood", ""},
		{"stages", []tally.Column{{"1", "", "adult"}, {"12", "", "larvae"}}, tally.Options{}, reading.Fair, "",
			`[{"individualCount":"1","lifeStage":"adult","occurrenceStatus":"present"},{"individualCount":"12","lifeStage":"larva","occurrenceStatus":"present"}]`},
		{"adults are the males and females", []tally.Column{{"5", "", "adults"}, {"3", "m", ""}, {"2", "f", ""}, {"1", "", "larvae"}}, tally.Options{}, reading.Query, "counted-twice",
			`[{"individualCount":"3","sex":"male","lifeStage":"adult","occurrenceStatus":"present"},{"individualCount":"2","sex":"female","lifeStage":"adult","occurrenceStatus":"present"},{"individualCount":"1","lifeStage":"larva","occurrenceStatus":"present"}]`},
		{"a column that is not what its heading says", []tally.Column{{"1f", "m", ""}, {"", "f", ""}}, tally.Options{}, reading.Query, "heading-disagrees",
			`{"individualCount":"1","sex":"female","occurrenceStatus":"present"}`},
		{"two counts of the same", []tally.Column{{"4", "", ""}, {"3", "", ""}}, tally.Options{}, reading.Query, "counts-added", `{"individualCount":"7","occurrenceStatus":"present"}`},
		{"only one column", []tally.Column{{"4", "", ""}}, tally.Options{}, reading.Fair, "", `{"individualCount":"4","occurrenceStatus":"present"}`},
		{"none", nil, tally.Options{}, reading.Skipped, "blank", ""},
	} {
		r := tally.Join(c.columns, c.o)
		assert.Equal(t, c.state, r.State, "%s: %s", c.name, r.Message)
		assert.Equal(t, c.code, r.Code, c.name)
		assert.Equal(t, c.want, r.JSON(), c.name)
	}
}

func ExampleJoin() {
	r := tally.Join([]tally.Column{
		{Text: "2", Sex: "♂"},
		{Text: "1", Sex: "♀"},
		{Text: "4"}, // the total
	}, tally.Options{})
	fmt.Println(r.State, r.JSON())
	fmt.Println(r.Message)
	// Output:
	// query [{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"},{"individualCount":"1","occurrenceStatus":"present"}]
	// The total is 4, but the counts beside it add up to 3. The other 1 went out without a sex or life stage; please check.
}
