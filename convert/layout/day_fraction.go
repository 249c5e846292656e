package layout

import (
	"fmt"
	"math"
	"strconv"

	"fieldfare/convert/notebook"
)

// dayFraction reads a part of a day, as spreadsheets store a time: 0.9166667
// is 22:00. Figures of less than two decimals say too little.
func dayFraction(text string) (clock string, ok bool) {
	if len(text) < 3 || !isDecimal(text) {
		return "", false
	}
	f, err := strconv.ParseFloat(text, 64)
	if err != nil || f < 0 || f >= 1 || text[0] == '-' || text[0] == '+' {
		return "", false
	}
	minutes := int(math.Round(f*24*60)) % (24 * 60)
	return fmt.Sprintf("%02d:%02d", minutes/60, minutes%60), true
}

// fractions is the part of the cells that are parts of a day.
func (s *stats) fractions() float64 {
	return s.shareWhere(func(t string) bool {
		_, ok := dayFraction(t)
		return ok
	})
}

// timeOfFraction writes a part of a day as a time. "0.05" among "23.15" is five
// past midnight, and no part of a day.
func timeOfFraction(v *Value, c *column) {
	if len(v.Text) <= len("0.05") && c.stats.fractions() < 0.5 {
		return
	}
	if clock, ok := dayFraction(v.Text); ok {
		v.Verbatim, v.Text, v.Raw, v.Kind = v.Text, clock, "", notebook.Text
	}
}

// noteFractions asks once about a column of times stored as parts of a day.
func (b *block) noteFractions() {
	for i := range b.cols {
		c := &b.cols[i]
		if c.used() && (c.meaning == Time || c.meaning == EndTime) && c.stats.fractions() >= 0.5 {
			b.note("times-as-fractions", "The times under “"+c.heading+"” are parts of a day, as a spreadsheet stores them, and were read as hours and minutes (0.75 is 18:00). Please check one of them.", c.col)
		}
	}
}
