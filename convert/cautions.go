package convert

import (
	"fmt"
	"strings"
)

// cautions say what of the dataset's description tells a private place. It is
// the recorder's own wording, so it leaves as it stands.
func (s *settings) cautions() []string {
	d := &s.project.Dataset
	parts := []struct{ name, text string }{
		{"title", d.Title}, {"abstract", d.Abstract}, {"methods", d.Methods}, {"citation", d.Citation}, {"keywords", strings.Join(d.Keywords, " | ")},
		{"rights", d.RightsHolder}, {"institution", d.Institution}, {"collection", d.Collection}, {"id", d.ID},
	}
	var list []string
	for _, p := range parts {
		for _, name := range s.privacy.names {
			if namesPlace(p.text, name) {
				list = append(list, fmt.Sprintf("The dataset's %s names “%s”, which is marked private. It leaves as it stands; word it otherwise if nobody is to know.", p.name, name))
			}
		}
	}
	return list
}

// namesPlace tells whether a text has the name, as words of its own, whatever
// its case and punctuation.
func namesPlace(text, name string) bool {
	name = spaced(name)
	return name != "  " && strings.Contains(spaced(text), name)
}

// spaced is a text's words, each between blanks.
func spaced(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" \t\n\r,;:.()[]-–—/|“”\"'’‘", r) })
	return " " + strings.Join(words, " ") + " "
}
