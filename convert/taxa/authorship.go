package taxa

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// authorForms are usual short forms of authors' names (ICN Article 46,
// Recommendation 46A; in zoology custom, from memory).
var authorForms = map[string]string{
	"l": "linnaeus", "linn": "linnaeus", "linne": "linnaeus", "lin": "linnaeus", "hb": "hubner", "hbn": "hubner", "hub": "hubner", "hubn": "hubner", "f": "fabricius", "fab": "fabricius", "fabr": "fabricius",
	"ds": "denisschiffermuller", "schiff": "schiffermuller", "hufn": "hufnagel", "hfn": "hufnagel", "haw": "haworth", "hw": "haworth", "esp": "esper", "cl": "clerck", "clk": "clerck",
	"sc": "scopoli", "scop": "scopoli", "steph": "stephens", "curt": "curtis", "tr": "treitschke", "treits": "treitschke", "bkh": "borkhausen", "borkh": "borkhausen", "thnb": "thunberg", "thunb": "thunberg",
	"gn": "guenee", "hs": "herrichschaffer", "latr": "latreille", "charp": "charpentier", "ochs": "ochsenheimer", "mull": "muller", "dg": "degeer", "geoff": "geoffroy", "vill": "devillers", "z": "zeller", "hein": "heinemann", "stt": "stainton", "stainton": "stainton",
}

// authorSpan is the end of an authorship that begins at toks[i], or i where
// none does: "(Linnaeus, 1758)", "L.", "Denis & Schiffermüller, 1775", "de
// Villers", "Hübner [1803]" (ICZN Articles 50, 51, 22; ICN Article 46).
func authorSpan(toks []token, i int, sub func(string) []token) (end int, text []token) {
	if i >= len(toks) {
		return i, nil
	}
	if t := &toks[i]; t.kind == groupToken {
		inner := sub(t.text)
		if e, _ := authorSpan(inner, 0, sub); e == len(inner) && e > 0 {
			end = i + 1
			// "(Linnaeus) Hübner" of plants, "([Denis & Schiffermüller], 1775)"
			if e, more := authorSpan(toks, end, sub); e > end && !(len(more) == 1 && isYearToken(&more[0])) {
				return e, append(inner, more...)
			}
			return end, inner
		}
		return i, nil
	}
	names := 0
	for end = i; end < len(toks); end++ {
		t := &toks[end]
		switch {
		case t.kind == wordToken && upperFirst(t.text) && (!noteWords[t.key] || len(t.key) == 1 && t.dotted()) && rankMarkers[t.key] != "ssp" && openWords[t.key] == "" && t.text != "agg." && !hasDigit(t.text):
			names++
			text = append(text, *t)
		case t.kind == wordToken && (particles[t.key] || t.key == "auct" || t.key == "auctt") && (names > 0 || end+1 < len(toks) && toks[end+1].kind == wordToken && upperFirst(toks[end+1].text)):
			if (t.key == "in" || t.key == "and" || t.key == "not" || t.key == "la") && !(end+1 < len(toks) && upperFirst(toks[end+1].text)) {
				return spanEnd(i, end, names), text
			}
			text = append(text, *t)
		case t.sign("&") && names > 0:
			text = append(text, *t)
		case t.sign(",") && names > 0 && end+1 < len(toks) && (isYearToken(&toks[end+1]) || authorGoesOn(toks, end+1)):
		case isYearToken(t) && names > 0:
			text = append(text, *t)
			return end + 1, text
		case t.kind == groupToken && end == i:
			return i, nil
		case t.kind == groupToken && names == 0:
			return i, nil
		default:
			return spanEnd(i, end, names), text
		}
	}
	return spanEnd(i, end, names), text
}

// authorGoesOn: after a comma, a further author before "&".
func authorGoesOn(toks []token, i int) bool {
	if !upperFirst(toks[i].text) {
		return false
	}
	for _, t := range toks[i:] {
		if t.sign("&") || isYearToken(&t) {
			return true
		}
		if t.kind != wordToken && !t.sign(",") {
			return false
		}
	}
	return false
}

// spanEnd: words without a surname among them are no authorship.
func spanEnd(start, end, names int) int {
	if names == 0 {
		return start
	}
	return end
}

// isYearToken: a year since 1753 (ICN Article 13.1) or 1757 (ICZN Article 3).
func isYearToken(t *token) bool {
	if t.kind == signToken || len(t.key) != 4 {
		return false
	}
	year, err := strconv.Atoi(t.key)
	return err == nil && year >= 1753 && year < 2100
}

func upperFirst(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return unicode.IsUpper(r)
}

func hasDigit(s string) bool { return strings.ContainsAny(s, "0123456789") }

// authorship is an authorship in comparable form: surnames folded, with usual
// short forms written out, and the year.
type authorship struct {
	names []string
	year  string
}

func authorshipOf(toks []token) authorship {
	var a authorship
	for i := range toks {
		t := &toks[i]
		switch {
		case isYearToken(t):
			a.year = t.key
		case t.kind == groupToken:
			inner := authorshipOf(tokenize(t.text))
			a.names = append(a.names, inner.names...)
			if inner.year != "" {
				a.year = inner.year
			}
		case t.kind == wordToken && !particles[t.key] && t.key != "":
			a.names = append(a.names, t.key)
		}
	}
	return a
}

func parseAuthorship(s string) authorship {
	if s == "" {
		return authorship{}
	}
	return authorshipOf(tokenize(tidy(s)))
}

func (a *authorship) empty() bool { return len(a.names) == 0 && a.year == "" }

// agrees compares an authorship as written with the one on the list: a
// surname in common, whole or shortened. Years are not compared here, as they
// are often quoted wrongly for the right author.
func (a *authorship) agrees(listed authorship) bool {
	if len(a.names) == 0 || len(listed.names) == 0 {
		return true
	}
	for _, w := range a.names {
		full := w
		if f, ok := authorForms[w]; ok {
			full = f
		}
		for _, l := range listed.names {
			lf := l
			if f, ok := authorForms[l]; ok {
				lf = f
			}
			if w == l || full == lf || len(w) >= 2 && strings.HasPrefix(l, w) || len(l) >= 2 && strings.HasPrefix(w, l) ||
				len(w) > 4 && distance(full, lf, 2) <= 2 || strings.Contains(full, lf) && len(lf) > 4 {
				return true
			}
		}
	}
	// initials alone, as "D. & S."
	for _, w := range a.names {
		if len(w) != 1 {
			return false
		}
	}
	for i, w := range a.names {
		if i >= len(listed.names) || !strings.HasPrefix(listed.names[i], w) {
			return false
		}
	}
	return true
}
