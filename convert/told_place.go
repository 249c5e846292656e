package convert

import (
	"strings"
	"unicode"

	"fieldfare/gridref"
)

// nameBeside returns the name of a place that an answer gives beside its
// reference, before or behind it: "Long Drove" of "Long Drove, TL 462 879". It
// is empty where the reference stands alone; placed tells whether there is one.
func nameBeside(answer string) (name string, placed bool) {
	whole, err := gridref.Parse(answer)
	if err != nil {
		return "", false
	}
	same := func(words []string) bool {
		part, err := gridref.Parse(strings.Trim(strings.Join(words, " "), between))
		return err == nil && part.Square == whole.Square && part.Place == whole.Place
	}
	words := strings.Fields(answer)
	for n := 1; n < len(words); n++ {
		last, first := words[len(words)-n:], words[:n]
		switch {
		case same(last):
			return asName(words[:len(words)-n]), true
		case same(first):
			return asName(words[n:]), true
		}
	}
	return "", true
}

// between may stand between the name of a place and its reference.
const between = " ,;:()[]–—-"

// asName is what the words name, or empty where they are no name.
func asName(words []string) string {
	name := strings.Trim(strings.Join(words, " "), between)
	name = strings.TrimSuffix(name, " at")
	for _, c := range name {
		if unicode.IsUpper(c) {
			return name
		}
	}
	return ""
}
