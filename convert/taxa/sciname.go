package taxa

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// sciName is a scientific name in its parts, as a list or a page gives it.
type sciName struct {
	genus, subgenus string // capitalised as written
	epithet, infra  string // lower case
	marker          string // "ssp", "var", "f", "ab" before infra
	aggregate       bool   // agg., s.l., or several epithets
	hybrid          bool
	authorship      string
	canonical       string // without authorship, white space tidied
}

var rankMarkers = map[string]string{
	"ssp": "ssp", "subsp": "ssp", "var": "var", "v": "var", "f": "f", "fo": "f", "form": "f", "forma": "f", "morph": "f", "m": "f",
	"ab": "ab", "aberr": "ab", "aberration": "ab", "variety": "var", "subspecies": "ssp", "race": "ssp",
}

var aggregateWords = map[string]bool{"agg": true, "aggr": true, "aggregate": true, "sl": true, "sensulato": true, "complex": true, "group": true, "gp": true, "grp": true}

// splitName takes a well-written scientific name apart into name and
// authorship. The genus comes first and has a capital; epithets follow in
// lower case, as the codes have it (ICZN Article 28; ICN Article 60.2); an
// authorship follows from the first capital or bracket on.
func splitName(s string) sciName {
	if genus, epithet, ok := plainBinomial(s); ok {
		return sciName{genus: genus, epithet: epithet, canonical: s}
	}
	var n sciName
	words := strings.Fields(s)
	if len(words) > 0 && (words[0] == "×" || words[0] == "x" || words[0] == "X") && len(words) > 1 {
		n.hybrid = true
	}
	end := 0
	for i := 0; i < len(words); i++ {
		w := words[i]
		if rest, ok := strings.CutPrefix(w, "×"); ok && rest != "" && n.genus != "" {
			n.hybrid, w = true, rest // Mentha ×smithiana
		}
		bare := strings.ToLower(strings.Trim(w, ".,;"))
		switch {
		case w == "×" || w == "x" || w == "X":
			n.hybrid = true
			if n.epithet != "" {
				return n.finish(words, len(words))
			}
		case n.genus == "":
			n.genus = strings.TrimLeft(w, "×")
			n.hybrid = n.hybrid || strings.HasPrefix(w, "×")
		case n.epithet == "" && n.subgenus == "" && isSubgenus(words, i):
			n.subgenus = strings.Trim(w, "()")
		case aggregateWords[bare], bare == "s" && i+1 < len(words) && (words[i+1] == "l." || words[i+1] == "lat."):
			n.aggregate = true
			if bare == "s" {
				i++
			}
		case n.epithet != "" && rankMarkers[bare] != "" && i+1 < len(words) && startsLower(words[i+1]):
			n.marker = rankMarkers[bare]
		case startsLower(w) && !authorParticle(words, i) && !strings.ContainsAny(w, ",()[]&0123456789"):
			if strings.ContainsRune(w, '/') {
				n.aggregate = true
			}
			if n.epithet == "" {
				n.epithet = w
			} else if n.infra == "" || n.marker != "" {
				n.infra = w
			} else {
				return n.finish(words, i)
			}
		default:
			return n.finish(words, i)
		}
		end = i + 1
	}
	return n.finish(words, end)
}

// plainBinomial takes apart the commonest kind of name, two words of plain
// letters, without more ado.
func plainBinomial(s string) (genus, epithet string, ok bool) {
	cut := -1
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case 'a' <= c && c <= 'z':
		case 'A' <= c && c <= 'Z' && i == 0:
		case c == ' ' && cut < 0 && i > 1:
			cut = i
		default:
			return "", "", false
		}
	}
	if cut < 0 || len(s)-cut < 5 || s[0] > 'Z' {
		return "", "", false
	}
	genus, epithet = s[:cut], s[cut+1:]
	return genus, epithet, !aggregateWords[epithet] && !particles[epithet]
}

func (n sciName) finish(words []string, end int) sciName {
	n.canonical = strings.Join(words[:end], " ")
	n.authorship = strings.Join(words[end:], " ")
	return n
}

// isSubgenus: a bracketed capitalised word between genus and epithet (ICZN
// Article 6.1).
func isSubgenus(words []string, i int) bool {
	w := words[i]
	return len(w) > 3 && w[0] == '(' && w[len(w)-1] == ')' && !startsLower(w[1:]) &&
		i+1 < len(words) && startsLower(words[i+1]) && !authorParticle(words, i+1)
}

func startsLower(w string) bool {
	r, _ := utf8.DecodeRuneInString(w)
	return unicode.IsLower(r)
}

var particles = map[string]bool{
	"de": true, "da": true, "di": true, "du": true, "del": true, "der": true, "den": true, "des": true, "la": true, "le": true,
	"van": true, "von": true, "vom": true, "zu": true, "zur": true, "af": true, "auct": true, "auctt": true, "ex": true,
	"in": true, "et": true, "and": true, "nec": true, "non": true, "not": true, "sensu": true, "emend": true, "al": true, "d'": true, "ten": true, "ter": true,
}

// authorParticle: a small word of an authorship, followed by more of it.
func authorParticle(words []string, i int) bool {
	w := strings.Trim(words[i], ".,")
	if strings.HasPrefix(w, "d'") && len(w) > 2 && unicode.IsUpper(rune(w[2])) {
		return true
	}
	if w == "auct" || w == "auctt" || w == "sensu" {
		return true
	}
	return particles[w] && i+1 < len(words) && (!startsLower(words[i+1]) || particles[strings.Trim(words[i+1], ".,")])
}

// stem is an epithet without its gender or case ending. Epithets of one genus
// with one stem are one name: adjectives agree in gender with the genus (ICZN
// Articles 31.2, 34.2; ICN Article 23.5), and the endings -i and -ii, -ae and
// -iae, -orum and -iorum, -arum and -iarum are one spelling (ICZN Articles
// 33.4, 58.14; ICN Article 60.8 for the right one of each pair).
func stem(e string) string {
	for _, p := range [...]struct{ long, short string }{{"iorum", "orum"}, {"iarum", "arum"}, {"iae", "ae"}, {"ii", "i"}} {
		if strings.HasSuffix(e, p.long) && len(e) > len(p.long)+2 {
			return e[:len(e)-len(p.long)] + p.short
		}
	}
	if strings.HasSuffix(e, "ae") || strings.HasSuffix(e, "orum") || strings.HasSuffix(e, "arum") {
		return e
	}
	for _, ending := range [...]string{"us", "um", "is", "a", "e"} {
		if strings.HasSuffix(e, ending) && len(e) >= len(ending)+3 {
			root := e[:len(e)-len(ending)]
			switch ending {
			case "us", "um", "a":
				// -er, -ra, -rum: niger, nigra, nigrum
				if ending != "us" && len(root) > 2 && root[len(root)-1] == 'r' && !isVowel(root[len(root)-2]) {
					root = root[:len(root)-1] + "er"
				}
				if root == "maj" || root == "min" {
					return e
				}
				return root + "+"
			case "is", "e":
				if len(root) > 2 && root[len(root)-1] == 'r' && !isVowel(root[len(root)-2]) {
					return root[:len(root)-1] + "er="
				}
				return root + "="
			}
		}
	}
	if strings.HasSuffix(e, "er") && len(e) >= 4 {
		return e + "+"
	}
	return e
}

func isVowel(c byte) bool {
	switch c {
	case 'a', 'e', 'i', 'o', 'u', 'y':
		return true
	}
	return false
}

// sameButForEnding reports whether two epithets are one name in two genders
// or with two spellings of its ending.
func sameButForEnding(a, b string) bool {
	if a == b {
		return true
	}
	sa, sb := stem(a), stem(b)
	// acer, acris, acre has both patterns
	return sa == sb || strings.HasSuffix(sa, "er+") && sa[:len(sa)-1] == strings.TrimSuffix(sb, "=") ||
		strings.HasSuffix(sb, "er+") && sb[:len(sb)-1] == strings.TrimSuffix(sa, "=")
}
