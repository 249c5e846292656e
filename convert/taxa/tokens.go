package taxa

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

type tokenKind uint8

const (
	wordToken   tokenKind = iota // letters, perhaps with digits, hyphens and apostrophes inside
	numberToken                  // digits only
	groupToken                   // what stands in brackets
	signToken                    // anything else, one character
)

// token is a piece of a name as written.
type token struct {
	kind       tokenKind
	text       string // as written; of a group, what is inside the brackets
	key        string // letters and digits, folded
	start, end int    // byte offsets in the text
	spaced     bool   // white space or the start stands before it
}

func (t *token) sign(s string) bool { return t.kind == signToken && t.text == s }

// dotted: the word ends in a full stop.
func (t *token) dotted() bool { return strings.HasSuffix(t.text, ".") }

// lower: the word begins with a small letter.
func (t *token) lower() bool { return startsLower(t.text) }

// tokenize splits a tidied text.
func tokenize(s string) []token {
	toks := make([]token, 0, 8)
	spaced := true
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == ' ':
			spaced = true
			i += size
			continue
		case r == '(' || r == '[' || r == '{':
			end := closing(s, i)
			inside := strings.Trim(s[i+size:end], " ")
			next := end
			if next < len(s) {
				next++
			}
			toks = append(toks, token{groupToken, inside, key(inside), i, next, spaced})
			i = next
		case unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) || r == '×' && spaced && hybridWord(s[i+size:], i):
			end := wordEnd(s, i+size)
			t := token{wordToken, s[i:end], key(s[i:end]), i, end, spaced}
			if strings.Trim(t.text, "0123456789.") == "" {
				t.kind = numberToken
			} else if '0' <= s[i] && s[i] <= '9' {
				t.key = latinNumber(t.key)
			}
			if n := len(toks); n > 1 && t.kind == wordToken && toks[n-1].kind == numberToken && toks[n-2].kind == wordToken && t.lower() && latinNumber(toks[n-1].key+t.key) != toks[n-1].key+t.key {
				// "Coccinella 7 punctata"
				t.start, t.spaced = toks[n-1].start, true
				t.text, t.key = s[t.start:end], latinNumber(toks[n-1].key+t.key)
				toks = toks[:n-1]
			}
			toks = append(toks, t)
			i = end
		default:
			k := ""
			if r == '&' {
				k = "and"
			}
			toks = append(toks, token{signToken, s[i : i+size], k, i, i + size, spaced})
			i += size
		}
		spaced = false
	}
	return toks
}

// closing is the offset of the bracket that closes the one at i, or the end.
func closing(s string, i int) int {
	depth := 0
	for j := i; j < len(s); j++ {
		switch s[j] {
		case '(', '[', '{':
			depth++
		case ')', ']', '}':
			if depth--; depth == 0 {
				return j
			}
		}
	}
	return len(s)
}

// wordEnd is the end of the word at i: hyphens and apostrophes between
// letters belong to it, and one full stop after it, or between digits.
func wordEnd(s string, i int) int {
	for i < len(s) {
		r, size := utf8.DecodeRuneInString(s[i:])
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) {
			i += size
			continue
		}
		next, _ := utf8.DecodeRuneInString(s[i+size:])
		inner := unicode.IsLetter(next) || unicode.IsDigit(next)
		if (r == '-' || r == '\'') && inner {
			i += size
			continue
		}
		if r == '\'' && (i+size == len(s) || s[i+size] == ' ') && i > 0 && (s[i-1] == 's' || s[i-1] == 'S') {
			i += size // Adonis' Ladybird
			continue
		}
		if r == '.' {
			if unicode.IsDigit(next) {
				i += size
				continue
			}
			return i + size
		}
		return i
	}
	return i
}

// hybridWord: the sign of a hybrid stands at the word, as in "Mentha
// ×smithiana" and "×Agropogon", rather than between two parents.
func hybridWord(rest string, at int) bool {
	r, _ := utf8.DecodeRuneInString(rest)
	return unicode.IsLower(r) || at == 0 && unicode.IsUpper(r)
}

// joinKey is the key of several tokens together.
func joinKey(toks []token) string {
	if len(toks) == 1 {
		return toks[0].key
	}
	var b strings.Builder
	for i := range toks {
		b.WriteString(toks[i].key)
	}
	return b.String()
}

// written is the text that the tokens stand for.
func written(s string, toks []token) string {
	if len(toks) == 0 {
		return ""
	}
	return s[toks[0].start:toks[len(toks)-1].end]
}

// latinNumbers are the numerals that epithets begin with; a figure in an
// epithet stands for the word (ICZN Article 32.5.2.6).
var latinNumbers = map[string]string{
	"2": "bi", "3": "tri", "4": "quadri", "5": "quinque", "6": "sex", "7": "septem", "8": "octo", "9": "novem", "10": "decem",
	"11": "undecim", "12": "duodecim", "13": "tredecim", "14": "quattuordecim", "16": "sedecim", "18": "octodecim", "19": "novemdecim",
	"22": "vigintiduo", "24": "vigintiquattuor",
}

// latinNumber writes the figure of an epithet as a word: "7punctata".
func latinNumber(k string) string {
	rest := strings.TrimLeft(k, "0123456789")
	if n, ok := latinNumbers[k[:len(k)-len(rest)]]; ok && len(rest) > 4 && latinLook(rest) && rest != "spotted" {
		return n + rest
	}
	return k
}
