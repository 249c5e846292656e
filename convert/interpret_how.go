package convert

import (
	"strings"

	"fieldfare/convert/layout"
)

// how reads the method and the effort, each of which may stand in several
// columns.
func (in *interpreter) how(d *draft) {
	o := &d.o
	var how method
	for i := range d.Values {
		v := &d.Values[i]
		switch {
		case v.Meaning == layout.Method && isNumber(v.Text) && numberOfTraps[strings.ToLower(v.Heading)]:
			how.efforts = append(how.efforts, labelled(v, in.free(d, v)))
		case v.Meaning == layout.Method:
			how.add(v, in.free(d, v))
		case v.Meaning == layout.Effort:
			how.efforts = append(how.efforts, effort(v, in.free(d, v)))
		}
	}
	if o.SamplingProtocol = how.protocol(); o.SamplingProtocol == "" {
		o.SamplingProtocol = in.project.Reading.Method
	}
	d.facts.Light = isLight(o.SamplingProtocol)
	o.SamplingEffort = strings.Join(how.efforts, "; ")
	if !d.sheet.stated { // else it has terms of its own
		sampleSize(o, o.SamplingProtocol, counted(o.SamplingEffort))
	}
}

// method is how something was recorded, as the columns of a row have it.
type method struct{ others, lamps, traps, efforts []string }

// numberOfTraps are the headings of columns that may hold a trap or how many
// there were.
var numberOfTraps = map[string]bool{"traps": true}

// add takes in a value by what its heading speaks of.
func (m *method) add(v *layout.Value, text string) {
	heading := strings.ToLower(v.Heading)
	if isNumber(text) && heading != "" { // which alone says of what
		if strings.HasPrefix(heading, "watt") || heading == "w" {
			text += "W"
		} else {
			text = labelled(v, text)
		}
	}
	list := &m.others
	for _, of := range []struct {
		words string
		list  *[]string
	}{{"lamp light bulb watt", &m.lamps}, {"trap", &m.traps}} {
		for word := range strings.FieldsSeq(of.words) {
			if strings.Contains(heading, word) {
				list = of.list
			}
		}
	}
	*list = append(*list, text)
}

// protocol joins the method, the lamp before the trap that it lights, as in
// "125W MV Robinson trap". What another part says already is not said again.
func (m *method) protocol() string {
	parts := append([]string{}, m.others...)
	if lit := strings.Join(append(append([]string{}, m.lamps...), m.traps...), " "); lit != "" {
		parts = append(parts, lit)
	}
	var said []string
	for i, part := range parts {
		again := false
		for j, other := range parts {
			again = again || i != j && (len(part) < len(other) || i < j && len(part) == len(other)) && strings.Contains(strings.ToLower(other), strings.ToLower(part))
		}
		if !again {
			said = append(said, part)
		}
	}
	return strings.Join(said, ", ")
}

func isNumber(text string) bool {
	return text != "" && strings.Trim(text, "0123456789.") == ""
}
