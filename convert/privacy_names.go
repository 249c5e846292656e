package convert

import (
	"strings"
	"unicode"

	"fieldfare/convert/project"
	"fieldfare/convert/taxa"
)

// sensitiveNames finds the names of sensitive taxa among the words of a text.
type sensitiveNames struct {
	blur   map[string]int32 // side in metres, by the words of a name
	called map[string]string
	words  int // that the longest name has
}

// newSensitiveNames takes in the sensitive taxa of the lists and of the
// project file, by their scientific names, also with the genus abbreviated,
// and their vernacular names.
func newSensitiveNames(ix *taxa.Index, rules *privacyRules, p *project.Privacy) sensitiveNames {
	n := sensitiveNames{blur: map[string]int32{}, called: map[string]string{}}
	for i := range p.Taxa {
		n.add(p.Taxa[i].Name, p.Taxa[i].Name, rules.named(p.Taxa[i].Name))
	}
	if len(rules.taxa) == 0 {
		return n
	}
	for t := range ix.Taxa {
		if blur := rules.taxon(t); blur > rules.least {
			n.add(t.ScientificName, t.String(), blur)
			n.add(t.Vernacular, t.String(), blur)
			if genus, epithet, found := strings.Cut(t.ScientificName, " "); found {
				n.add(genus[:1]+" "+epithet, t.String(), blur)
			}
		}
	}
	return n
}

// shortestSensitive is the least number of letters of a name that is looked
// for in texts; shorter ones turn up by chance.
const shortestSensitive = 5

func (n *sensitiveNames) add(name, called string, blur int32) {
	words := plainWordsOf(name)
	key := strings.Join(words, " ")
	if len(key) < shortestSensitive || blur <= n.blur[key] {
		return
	}
	n.blur[key], n.called[key] = blur, called
	n.words = max(n.words, len(words))
}

// in returns the first sensitive name in a text and how far it is to be
// blurred; 0 where there is none.
func (n *sensitiveNames) in(text string) (called string, blur int32) {
	if n.words == 0 {
		return "", 0
	}
	words := plainWordsOf(text)
	for i := range words {
		for j := i + 1; j <= min(len(words), i+n.words); j++ {
			if key := strings.Join(words[i:j], " "); n.blur[key] > blur {
				called, blur = n.called[key], n.blur[key]
			}
		}
	}
	return called, blur
}

// plainWordsOf are the words of a text in lower case, without those of doubt
// ("Phalera cf. bucephala"). A plural is taken for its singular.
func plainWordsOf(text string) []string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
	kept := words[:0]
	for _, w := range words {
		switch w {
		case "cf", "aff", "nr", "agg":
			continue
		}
		if len(w) > 3 {
			w = strings.TrimSuffix(w, "s")
		}
		kept = append(kept, w)
	}
	return kept
}
