package dwc

import (
	"fmt"
	"strings"
)

// dateTerms are the terms whose values are dates, which a table's stated date
// format is about. Verbatim dates are left as they are.
var dateTerms = []string{"eventDate", "dateIdentified", "georeferencedDate", "measurementDeterminedDate", "modified"}

// datePattern is a date format that a descriptor states, such as DD/MM/YYYY:
// what stands before, between and after year, month and day, and their order.
type datePattern struct {
	stated string
	parts  []string // "Y", "M", "D", or text between
}

// parseDatePattern reads a date format of a year of four digits, a month and
// a day, in any order, each once. It returns false for any other.
func parseDatePattern(stated string) (datePattern, bool) {
	p := datePattern{stated: stated}
	seen := map[string]bool{}
	upper := strings.ToUpper(strings.TrimSpace(stated))
	for upper != "" {
		c := upper[:1]
		n := len(upper) - len(strings.TrimLeft(upper, c))
		switch c {
		case "Y", "M", "D":
			if seen[c] || c == "Y" && n != 4 || n > 4 || c != "Y" && n > 2 {
				return p, false
			}
			seen[c] = true
			p.parts = append(p.parts, c)
		default:
			p.parts = append(p.parts, upper[:n])
		}
		upper = upper[n:]
	}
	return p, len(seen) == 3
}

// isISO says whether the pattern is that of ISO 8601.
func (p datePattern) isISO() bool { return strings.Join(p.parts, "") == "Y-M-D" }

// iso returns a date in the pattern as year-month-day. A month or day may be
// one digit where the pattern has two.
func (p datePattern) iso(date string) (string, bool) {
	rest := strings.TrimSpace(date)
	var found [3]string
	for _, part := range p.parts {
		i := strings.Index("YMD", part)
		if i < 0 {
			after, ok := strings.CutPrefix(rest, part)
			if !ok {
				return "", false
			}
			rest = after
			continue
		}
		most, n := 2, 0
		if part == "Y" {
			most = 4
		}
		for n < len(rest) && n < most && isDigit(rest[n]) {
			n++
		}
		if n == 0 || part == "Y" && n < 4 {
			return "", false
		}
		found[i], rest = rest[:n], rest[n:]
	}
	iso := fmt.Sprintf("%s-%02s-%02s", found[0], found[1], found[2])
	return iso, rest == "" && isISODay(iso, true)
}

// dates turns the dates of a row into those of ISO 8601, and notes those that
// are not as stated.
func (t *DataTable) dates(row *Row) {
	for _, i := range t.dateColumns {
		c := &t.columns[i]
		if c.Index < 0 || c.Index >= len(row.values) || row.values[c.Index] == "" {
			continue
		}
		value := &row.values[c.Index]
		if iso, ok := t.pattern.iso(*value); ok {
			*value = iso
		} else if !isISODate(*value) {
			row.Notes = append(row.Notes, fmt.Sprintf("The %s “%s” is not written as %s, as stated, and was left as it is.", c.Term.Name, *value, t.pattern.stated))
		}
	}
}
