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
	withTerm string
	rule     *rule
}

var (
	occurrenceChecks  = planChecks[Occurrence](&occurrenceShape)
	eventChecks       = planChecks[Event](&eventShape)
	measurementChecks = planChecks[Measurement](&measurementShape)
)

// planChecks takes the validate tags of T apart, once, when the program
// starts. It panics at a tag that is no rule.
func planChecks[T any](s *shape) []fieldCheck {
	typ := reflect.TypeFor[T]()
	var plan []fieldCheck
	for i := range typ.NumField() {
		tag := typ.Field(i).Tag.Get("validate")
		if tag == "" {
			continue
		}
		c := fieldCheck{field: i, term: s.terms[i], with: -1}
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
				c.withTerm = s.terms[c.with]
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
func Check(o *Occurrence) []FieldFault { return check(texts(o), occurrenceChecks, nil) }

// Checker does what Check does for many records: it remembers the last value
// of each term that it found right, since records that follow one another
// share most of them. A Checker is for one goroutine; the zero value is ready.
type Checker struct{ right []string }

// Check does what the function Check does.
func (c *Checker) Check(o *Occurrence) []FieldFault {
	if c.right == nil {
		c.right = make([]string, len(occurrenceChecks))
	}
	return check(texts(o), occurrenceChecks, c.right)
}

// CheckEvent does for an event what Check does for an occurrence.
func CheckEvent(e *Event) []FieldFault { return check(texts(e), eventChecks, nil) }

// CheckMeasurement does for a measurement what Check does for an occurrence.
func CheckMeasurement(m *Measurement) []FieldFault { return check(texts(m), measurementChecks, nil) }

// check takes the texts of a record's terms, and the values of those that were
// right before, or nil.
func check(texts []string, plan []fieldCheck, right []string) []FieldFault {
	var faults []FieldFault
	for i := range plan {
		c := &plan[i]
		value := texts[c.field]
		switch {
		case value != "":
			switch {
			case c.rule == nil || right != nil && right[i] == value:
			case c.rule.valid(value):
				if right != nil {
					right[i] = value
				}
			default:
				faults = append(faults, FieldFault{c.term, fmt.Sprintf("“%s” %s.", value, c.rule.words)})
			}
		case c.required:
			faults = append(faults, FieldFault{c.term, fmt.Sprintf("There is no %s: every record needs one.", c.term)})
		case c.with >= 0 && texts[c.with] != "":
			faults = append(faults, FieldFault{c.term, fmt.Sprintf("There is no %s, which %s “%s” needs.", c.term, c.withTerm, texts[c.with])})
		}
	}
	return faults
}
