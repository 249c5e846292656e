package people

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// together parts names of the list that stand side by side without a sign
// between them: "Ines Calloway Tom Achterberg". A name of the list with words
// behind it that are none is left as written, and asked about.
func (r *reader) together(s string) []string {
	words := strings.Fields(s)
	if r.list.empty() || len(words) < 3 || r.listed(s) {
		return []string{s}
	}
	var names []string
	for len(words) > 0 {
		n := r.fullName(words)
		if n == 0 {
			break
		}
		names = append(names, strings.Join(words[:n], " "))
		words = words[n:]
	}
	switch {
	case len(names) == 0, len(words) > 0 && furtherName[fold(words[0])]:
		return []string{s}
	case len(words) > 0:
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” is more than a name. Please check who it was.", s))
		return []string{s}
	}
	r.doubt("names-run-together", fmt.Sprintf("“%s” was read as %s. Please check.", s, strings.Join(names, " and ")))
	return names
}

// mayBeTwo: the words of a name that is not listed are too many for one, "Ines
// Calloway Tom Achterberg", or have initials between them that are behind a
// surname, "Calloway I. Achterberg T.".
func mayBeTwo(words []string) bool {
	long := 0
	for _, w := range words {
		if r, _ := utf8.DecodeRuneInString(w); !unicode.IsUpper(r) || particles[strings.ToLower(w)] {
			return false
		}
		if len(strings.Trim(w, ".")) > 1 {
			long++
		}
	}
	return long > 3 || len(words) > 2 && len(words[0]) > 2 && len(strings.Trim(words[1], ".")) == 1 && len(words[2]) > 2 && len(words) > 3
}

// furtherName are words behind a name that belong to it.
var furtherName = map[string]bool{"nee": true, "formerly": true, "jr": true, "jnr": true, "junior": true, "sr": true, "snr": true, "senior": true}

// fullName is how many of the first words are a spelling on the list that has
// two words or more; 0 for none.
func (r *reader) fullName(words []string) int {
	for n := min(len(words), 4); n >= 2; n-- {
		if r.known(strings.Join(words[:n], " ")) && !parse(strings.Join(words[:n], " ")).onlyInitials {
			return n
		}
	}
	return 0
}
