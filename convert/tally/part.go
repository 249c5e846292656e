package tally

import (
	"encoding/json"
	"strings"

	"fieldfare/convert/reading"
)

// IndividualsType is the organismQuantityType of a quantity of individuals
// given in words or as a range. Darwin Core: "many (organismQuantity) with
// individuals (organismQuantityType)".
const IndividualsType = "individuals"

// Part is one occurrence that a count tells of: individuals alike in sex, life
// stage, caste and vitality. The fields are the texts of Darwin Core's terms;
// an empty one means that nothing is stated.
type Part struct {
	// IndividualCount is a whole number of individuals, without separators.
	IndividualCount string
	// OrganismQuantity is a quantity that is no exact number of individuals,
	// as written; it never stands without OrganismQuantityType.
	OrganismQuantity, OrganismQuantityType string
	Sex, LifeStage, Caste                  string
	// Vitality is "dead" or "alive" where it was said.
	Vitality string
	// Absent: looked for and not found.
	Absent bool
	// Remarks is what the cell said beyond the other fields, in its own words.
	Remarks string
}

// Reading is what a cell says.
type Reading struct {
	reading.Verdict
	// Parts are the occurrences, in the order in which they were written, and
	// the sum of their counts is the count of the cell. There are none where
	// the reading is held or skipped.
	Parts []Part
}

// Options are what is known of a cell from its surroundings. The zero value
// knows nothing.
type Options struct {
	// Sex and Stage come from the column's heading, as written ("m",
	// "larvae") or as a term's value ("male", "larva"). Text that is neither
	// counts for nothing.
	Sex, Stage string
	// ZeroIsAbsence: 0, "nil" or a dash says that the taxon was looked for
	// and not found. Otherwise such a cell is no record.
	ZeroIsAbsence bool
	// Date: the spreadsheet keeps the cell as a date, so what stood there
	// before (10-12, 3/4) has been lost.
	Date bool
}

// Individuals returns the number of individuals, and whether every part has
// an exact one.
func (r Reading) Individuals() (int, bool) {
	sum := 0
	for i := range r.Parts {
		n, ok := digits(r.Parts[i].IndividualCount)
		if !ok {
			return 0, false
		}
		sum += n
	}
	return sum, len(r.Parts) > 0
}

// JSON returns the Darwin Core terms that the reading fills, as compact JSON
// with the values as text: an object for one occurrence, an array of objects
// for several, and the empty string for none.
func (r Reading) JSON() string {
	switch len(r.Parts) {
	case 0:
		return ""
	case 1:
		return r.Parts[0].json()
	}
	all := make([]string, len(r.Parts))
	for i := range r.Parts {
		all[i] = r.Parts[i].json()
	}
	return "[" + strings.Join(all, ",") + "]"
}

// quoted is a JSON string. Signs that matter only inside HTML stay as they are.
func quoted(s string) string {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if e.Encode(s) != nil {
		return `""` // no string fails to encode
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// json writes the terms in a fixed order. occurrenceStatus has the words
// present and absent, which the Biodiversity Data Quality standard's
// VALIDATION_OCCURRENCESTATUS_STANDARD takes by default.
func (p Part) json() string {
	status := "present"
	if p.Absent {
		status = "absent"
	}
	var b strings.Builder
	b.WriteByte('{')
	for _, f := range [...]struct{ term, value string }{
		{"individualCount", p.IndividualCount},
		{"organismQuantity", p.OrganismQuantity},
		{"organismQuantityType", p.OrganismQuantityType},
		{"sex", p.Sex},
		{"lifeStage", p.LifeStage},
		{"caste", p.Caste},
		{"vitality", p.Vitality},
		{"occurrenceStatus", status},
		{"occurrenceRemarks", p.Remarks},
	} {
		if f.value == "" {
			continue
		}
		if b.Len() > 1 {
			b.WriteByte(',')
		}
		b.WriteString(`"` + f.term + `":` + quoted(f.value))
	}
	b.WriteByte('}')
	return b.String()
}
