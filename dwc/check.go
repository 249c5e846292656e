package dwc

import (
	"fmt"
	"reflect"
	"strings"
)

// FieldFault is a term of a record that breaks what the standard says of it.
type FieldFault struct {
	// Term is the term's name.
	Term string
	// Message is one plain sentence that quotes the value.
	Message string
}

// fieldCheck is one field's validate tag, taken apart.
type fieldCheck struct {
	field    int
	term     string
	required bool
	with     int // the field whose value demands one here; -1: none
	rule     *rule
}

var occurrenceChecks = planChecks()

// planChecks takes the validate tags of Occurrence apart, once, when the
// program starts. It panics at a tag that is no rule.
func planChecks() []fieldCheck {
	typ := reflect.TypeFor[Occurrence]()
	var plan []fieldCheck
	for i := range typ.NumField() {
		tag := typ.Field(i).Tag.Get("validate")
		if tag == "" {
			continue
		}
		c := fieldCheck{field: i, term: occurrenceShape.terms[i], with: -1}
		for word := range strings.SplitSeq(tag, ",") {
			name, parameter, _ := strings.Cut(word, "=")
			switch name {
			case "omitempty":
			case "required":
				c.required = true
			case "required_with":
				other, ok := typ.FieldByName(parameter)
				if !ok {
					panic("dwc: no field " + parameter)
				}
				c.with = other.Index[0]
			default:
				r, ok := rules[name]
				if !ok {
					panic("dwc: no rule " + name)
				}
				c.rule = &r
			}
		}
		plan = append(plan, c)
	}
	return plan
}

// Check returns the terms of a record that break what the standard itself
// says of them, in the standard's order, and nil where none does. It looks at
// each term by itself, and at the pairs of which the standard says that one
// needs the other; it knows nothing of other records.
func Check(o *Occurrence) []FieldFault {
	var faults []FieldFault
	for i := range occurrenceChecks {
		c := &occurrenceChecks[i]
		value := *o.Field(c.field)
		switch {
		case value != "":
			if c.rule != nil && !c.rule.valid(value) {
				faults = append(faults, FieldFault{c.term, fmt.Sprintf("“%s” %s.", value, c.rule.words)})
			}
		case c.required:
			faults = append(faults, FieldFault{c.term, fmt.Sprintf("There is no %s: every record needs one.", c.term)})
		case c.with >= 0 && *o.Field(c.with) != "":
			faults = append(faults, FieldFault{c.term,
				fmt.Sprintf("There is no %s, which %s “%s” needs.", c.term, occurrenceShape.terms[c.with], *o.Field(c.with))})
		}
	}
	return faults
}
