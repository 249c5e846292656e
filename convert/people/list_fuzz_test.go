package people_test

import (
	"strings"
	"testing"

	"fieldfare/convert/people"

	"github.com/stretchr/testify/assert"
)

// FuzzNewList: whatever a list of people has in its columns, there is a list,
// and a sentence for each line that cannot be used; who is not to be named is
// in no text that was scrubbed by it.
func FuzzNewList(f *testing.F) {
	f.Add("Ines Calloway", "IC", "Mrs Calloway;Ines")
	f.Add("(.*", "+[", "\\;|")
	f.Add("", "x", " ; ")
	f.Fuzz(func(t *testing.T, name, initials, other string) {
		l, problems := people.NewList([]people.Person{
			{Name: name, Initials: []string{initials}, Other: strings.Split(other, ";"), Withhold: true}, {Name: other, Other: []string{name}},
		})
		for _, p := range problems {
			assert.NotEmpty(t, p)
		}
		for _, text := range []string{name, initials, other, "with " + name + " and " + initials} {
			r := l.Read(text, people.Options{})
			for _, n := range r.RecordedBy {
				assert.NotEmpty(t, n)
			}
			clean, _ := l.Scrub(text)
			again, found := l.Scrub(clean)
			assert.Equal(t, clean, again, "%v", found)
		}
	})
}
