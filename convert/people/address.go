package people

import (
	"regexp"
	"strings"
)

var (
	// A piece of a list of names that is a house or a street, not a person.
	dwelling = regexp.MustCompile(`^(The\s.*|.*\b(Cottages?|House|Farm|Farmhouse|Road|Rd|Street|Avenue|Ave|Crescent|Terrace|Gardens|Barn|Rectory|Vicarage|Lodge|Bungalow))\.?$`)
	// Words that end the names of streets and are surnames too.
	lane = regexp.MustCompile(`^\p{Lu}\p{L}+\s(Lane|Close|Row|Drive|Court|Way|Drove|Hill|Green)$`)
)

// withoutAddress cuts a private address off a list of names: "Ines Calloway,
// Rose Cottage, Mill Lane, Elm".
func (r *reader) withoutAddress(list []string) []string {
	for i := 1; i < len(list); i++ {
		w := list[i]
		if r.known(w) || isGroup(w) {
			continue
		}
		followed := i+1 < len(list) && !strings.Contains(list[i+1], " ") && !isInitials(list[i+1])
		if dwelling.MatchString(w) || lane.MatchString(w) && followed {
			r.out.Removed = append(r.out.Removed, strings.Join(list[i:], ", "))
			r.doubt("contact-removed", contactRemoved)
			return list[:i]
		}
	}
	return list
}
