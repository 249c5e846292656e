package reading_test

import (
	"fmt"
	"testing"

	"fieldfare/convert/reading"

	"github.com/stretchr/testify/assert"
)

func ExampleVerdict_And() {
	weekday := reading.QueryOf("weekday-disagrees", "12 June 2021 was a Saturday.")
	day := reading.HeldOf("no-such-day", "The calendar has no 31 June.", "30 June 2021", "1 July 2021")
	both := weekday.And(day)
	fmt.Println(both.State, both.Code)
	fmt.Println(both.Message)
	fmt.Println(both.Candidates)
	// Output:
	// held no-such-day weekday-disagrees
	// The calendar has no 31 June. 12 June 2021 was a Saturday.
	// [30 June 2021 1 July 2021]
}

func TestAndLosesNothing(t *testing.T) {
	fair := reading.Verdict{}
	query := reading.QueryOf("a", "One.", "x")
	other := reading.QueryOf("b", "Two.", "y")
	assert.Equal(t, fair, fair.And(fair))
	assert.Equal(t, query, query.And(fair))
	assert.Equal(t, query, fair.And(query))
	assert.Equal(t, query, query.And(query), "said once")
	both := query.And(other)
	assert.Equal(t, reading.Verdict{State: reading.Query, Code: "a b", Message: "One. Two.", Candidates: []string{"x"}}, both)
	assert.Equal(t, both, both.And(query), "nor is a part of it said again")

	long := reading.QueryOf("stage-out-of-season", "")
	short := reading.HeldOf("out-of-season", "")
	assert.Equal(t, "out-of-season stage-out-of-season", short.And(long).Code, "one is no part of the other")
	assert.Equal(t, "out-of-season stage-out-of-season", long.And(short).Code, "the worse comes first")
}

func TestStates(t *testing.T) {
	assert.Less(t, reading.Fair, reading.Query)
	assert.Less(t, reading.Query, reading.Held)
	assert.Less(t, reading.Held, reading.Skipped)
	for state, word := range map[reading.State]string{reading.Fair: "fair", reading.Query: "query", reading.Held: "held", reading.Skipped: "skipped"} {
		assert.Equal(t, word, state.String())
	}
	assert.Equal(t, reading.Fair, reading.Worst(nil))
	assert.Equal(t, reading.Held, reading.Worst([]reading.Finding{{}, {Verdict: reading.HeldOf("a", "")}, {Verdict: reading.QueryOf("b", "")}}))
}
