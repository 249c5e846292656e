package ledger_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fieldfare/convert/ledger"
)

func line(date, name, count, place, people, rest string) ledger.Line {
	return ledger.Line{Source: "moths.csv", Fields: ledger.Fields{Date: date, Name: name, Count: count, Place: place, People: people, Rest: rest}}
}

func TestMatch(t *testing.T) {
	buff := line("12/6/2021", "Buff-tip", "2", "TL4588", "Ines Calloway", "MV")
	heart := line("12/6/2021", "Heart and Dart", "12", "TL4588", "Ines Calloway", "MV")
	for _, c := range []struct {
		name        string
		gone, fresh []ledger.Line
		want        map[int]int
	}{
		{"a count", []ledger.Line{buff}, []ledger.Line{line("12/6/2021", "Buff-tip", "21", "TL4588", "Ines Calloway", "MV")}, map[int]int{0: 0}},
		{"counts that changed places stay with their names", []ledger.Line{buff, heart}, []ledger.Line{
			line("12/6/2021", "Heart and Dart", "2", "TL4588", "Ines Calloway", "MV"),
			line("12/6/2021", "Buff-tip", "12", "TL4588", "Ines Calloway", "MV"),
		}, map[int]int{0: 1, 1: 0}},
		{"a count and a remark", []ledger.Line{buff}, []ledger.Line{line("12/6/2021", "Buff-tip", "3", "TL4588", "Ines Calloway", "MV; counted again")}, map[int]int{0: 0}},
		{"a spelling and a count", []ledger.Line{heart}, []ledger.Line{line("12/6/2021", "Heart & Dart", "13", "TL4588", "Ines Calloway", "MV")}, map[int]int{0: 0}},
		{"a slip of the pen and a count", []ledger.Line{heart}, []ledger.Line{line("12/6/2021", "Hart and dart", "13", "TL4588", "Ines Calloway", "MV")}, map[int]int{0: 0}},
		{"another name and another count in the one row that changed", []ledger.Line{heart}, []ledger.Line{line("12/6/2021", "Silver Y", "3", "TL4588", "Ines Calloway", "MV")}, map[int]int{0: 0}},
		{"another name and another count beside a new row are another record", []ledger.Line{heart}, []ledger.Line{
			line("12/6/2021", "Silver Y", "3", "TL4588", "Ines Calloway", "MV"), line("19/6/2021", "Flame", "1", "TL4588", "Ines Calloway", "MV"),
		}, map[int]int{}},
		{"another night with another count in the one row that changed", []ledger.Line{buff}, []ledger.Line{line("19/6/2021", "Buff-tip", "3", "TL4588", "Ines Calloway", "MV")}, map[int]int{0: 0}},
		{"the one row left when others are known again", []ledger.Line{buff, heart}, []ledger.Line{
			line("12/6/2021", "Heart and Dart", "13", "TL4588", "Ines Calloway", "MV"), line("19/6/2021", "Buff-tip", "3", "TL4588", "Ines Calloway", "MV"),
		}, map[int]int{0: 1, 1: 0}},
		{"another night with another count beside a new row is another record", []ledger.Line{buff}, []ledger.Line{
			line("19/6/2021", "Buff-tip", "3", "TL4588", "Ines Calloway", "MV"), line("19/6/2021", "Flame", "1", "TL4588", "Ines Calloway", "MV"),
		}, map[int]int{}},
		{"another night and another name are another record", []ledger.Line{buff}, []ledger.Line{line("19/6/2021", "Flame", "2", "TL4588", "Ines Calloway", "MV")}, map[int]int{}},
		{"a slip in the name and another night in the one row that changed", []ledger.Line{heart}, []ledger.Line{line("13/6/2021", "Hart & Dart", "12", "TL4588", "Ines Calloway", "MV")}, map[int]int{0: 0}},
		{"a slip in the name and another place in the one row that changed", []ledger.Line{heart}, []ledger.Line{line("12/6/2021", "Heart and Drat", "12", "TL4589", "Ines Calloway", "MV")}, map[int]int{0: 0}},
		{"a slip in the name and another night beside a new row", []ledger.Line{heart}, []ledger.Line{
			line("13/6/2021", "Hart & Dart", "12", "TL4588", "Ines Calloway", "MV"), line("19/6/2021", "Flame", "1", "TL4588", "Ines Calloway", "MV"),
		}, map[int]int{}},
		{"two that it could be", []ledger.Line{buff, line("12/6/2021", "Buff-tip", "4", "TL4588", "Ines Calloway", "MV")},
			[]ledger.Line{line("12/6/2021", "Buff-tip", "3", "TL4588", "Ines Calloway", "MV")}, map[int]int{}},
		{"one correction is likelier than two", []ledger.Line{buff},
			[]ledger.Line{line("12/6/2021", "Buff-tip", "9", "TL4588", "Ines Calloway", "actinic"), line("12/6/2021", "Buff-tip", "3", "TL4588", "Ines Calloway", "MV")}, map[int]int{1: 0}},
	} {
		assert.Equal(t, c.want, ledger.Match(c.gone, c.fresh), c.name)
	}

	elsewhere := buff
	elsewhere.Source, elsewhere.Count = "walks.csv", "3"
	assert.Empty(t, ledger.Match([]ledger.Line{buff}, []ledger.Line{elsewhere}), "another notebook's record")

	nowhere := buff
	nowhere.Source = ""
	assert.Empty(t, ledger.Match([]ledger.Line{nowhere}, []ledger.Line{nowhere}), "a record of no notebook")

	visit := buff
	visit.Visit = true
	assert.Empty(t, ledger.Match([]ledger.Line{visit}, []ledger.Line{buff}), "a visit with nothing is no record")
	assert.Equal(t, map[int]int{0: 0}, ledger.Match([]ledger.Line{visit}, []ledger.Line{visit}))
}
