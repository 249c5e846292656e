package tally

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"
)

// token is a word or sign of the cell with its place in the text.
type token struct {
	meaning
	start, end int
	// short: a word of one letter, which may be an abbreviation of several.
	short bool
}

// longestPhrase is the number of words in the longest phrase of the dictionary.
const longestPhrase = 4

// lex cuts a text into tokens. It returns false for a number that no count
// can have (12.5).
func lex(s string) ([]token, bool) {
	var list []token
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		switch {
		case r >= '0' && r <= '9':
			n, end, whole := scanNumber(s, i)
			if !whole {
				return nil, false
			}
			t := token{meaning{kind: number, n: n}, i, end, false}
			if j := hundreds(s, end); j > 0 {
				t.meaning, t.end = meaning{kind: vague}, j
				if yearLike(n) {
					t.kind = other // a decade
				}
			} else if m, j := ordinal(s, end); j > 0 {
				t.meaning, t.end = m, j
			}
			list = append(list, t)
			i = t.end
		case r == '♂' || r == '♀':
			end := i + size
			for strings.HasPrefix(s[end:], string(r)) {
				end += size
			}
			list = append(list, token{dictionary[string(r)], i, end, false})
			i = end
		case unicode.IsLetter(r) || unicode.Is(unicode.M, r):
			t := scanWords(s, i)
			if t.kind == unknown && (r == 'x' || r == 'X') && i > 0 && isDigit(s[i-1]) {
				t = token{meaning{kind: times}, i, i + 1, false} // "3xm"
			}
			if instar(s, list, t) {
				t = token{meaning{kind: stage, text: "larva", keep: true}, i, t.end + 1, false}
			}
			list = append(list, t)
			i = t.end
		case r == '&' && strings.HasPrefix(s[i:], "&c") && (i+2 == len(s) || s[i+2] == '.'):
			list = append(list, token{meaning{kind: approx}, i, i + 2, false})
			i += 2
		case r == '†':
			list = append(list, token{dictionary["dead"], i, i + size, false})
			i += size
		case strings.HasPrefix(s[i:], "+/-") || strings.HasPrefix(s[i:], "+-"):
			end := i + strings.IndexByte(s[i:], '-') + 1
			list = append(list, token{meaning{kind: approx}, i, end, false})
			i = end
		default:
			size = signLength(s, i, size)
			if k := signKind(r); k != skip {
				list = append(list, token{meaning{kind: k}, i, i + size, false})
			} else if size > 1 && r == '.' {
				list = append(list, token{meaning{kind: dash}, i, i + size, false})
			}
			i += size
		}
	}
	return list, true
}

// signLength is the length of a sign: of ">=" and of dots or dashes between
// figures ("20..30", "20--30") that of all together.
func signLength(s string, i, size int) int {
	end := i + size
	switch c := s[i]; {
	case (c == '<' || c == '>') && end < len(s) && s[end] == '=':
		return 2
	case c == '.' || c == '-':
		for end < len(s) && s[end] == c {
			end++
		}
		if end-i > 1 && (i == 0 || !isDigit(s[i-1]) || end == len(s) || !isDigit(s[end])) {
			return size
		}
		return end - i
	}
	return size
}

// skip marks signs that say nothing.
const skip kind = 255

func signKind(r rune) kind {
	switch r {
	case ',', ';', '&', '/', '+', '\n', '\\':
		return sep
	case '-', '–', '—', '−', '‐', '‑':
		return dash
	case '(', '[', '{':
		return open
	case ')', ']', '}':
		return shut
	case '?', '¿':
		return question
	case ':', '=':
		return glue
	case '~', '>', '<', '≥', '≤', '≈', '±', '≃':
		return approx
	case '×':
		return times
	case '@':
		return place
	case '✓', '✔', '√', '☑':
		return presence
	case '½', '¼', '¾', '⅓', '⅔', '%', '£', '$', '°':
		return other
	case '#', '№', '´', '.', '!', '"', '\'', '’', '‘', '“', '”', '*', '…', '`':
		return skip
	}
	if unicode.IsSpace(r) {
		return skip
	}
	return unknown
}

// scanNumber reads digits with commas between thousands and a decimal part of
// noughts only; otherwise whole is false. Too large a number comes back as
// the largest there is.
func scanNumber(s string, i int) (n, end int, whole bool) {
	add := func(c byte) {
		if n > (math.MaxInt32-9)/10 {
			n = math.MaxInt32
			return
		}
		n = n*10 + int(c-'0')
	}
	end = i
	for end < len(s) && isDigit(s[end]) {
		add(s[end])
		end++
	}
	if end-i <= 3 {
		for grouped(s, end) {
			for _, c := range []byte(s[end+1 : end+4]) {
				add(c)
			}
			end += 4
		}
	}
	if end+1 < len(s) && s[end] == '.' && isDigit(s[end+1]) {
		j := end + 1
		for j < len(s) && isDigit(s[j]) {
			if s[j] != '0' {
				return 0, 0, false
			}
			j++
		}
		end = j
	}
	return n, end, true
}

// grouped tells whether a comma and exactly three digits follow.
func grouped(s string, i int) bool {
	return i+3 < len(s) && s[i] == ',' && isDigit(s[i+1]) && isDigit(s[i+2]) && isDigit(s[i+3]) &&
		(i+4 == len(s) || !isDigit(s[i+4]))
}

// hundreds returns the end of the letters of "100s", "100's" or "10k", else 0.
func hundreds(s string, i int) int {
	rest := s[i:]
	for _, p := range [...]string{"'s", "’s", "s", "k"} {
		if strings.HasPrefix(rest, p) {
			r, _ := utf8.DecodeRuneInString(rest[len(p):])
			if !unicode.IsLetter(r) {
				return i + len(p)
			}
		}
	}
	return 0
}

// ordinal reads what follows the figures of "3rd": with "instar" it is a
// larva's age, else a word. The end is 0 where the figures are a number.
func ordinal(s string, i int) (meaning, int) {
	end := wordEnd(s, i)
	switch strings.ToLower(s[i:end]) {
	case "st", "nd", "rd", "th":
	default:
		return meaning{}, 0
	}
	if at := nextWord(s, end); at > 0 {
		e := wordEnd(s, at)
		if w := strings.ToLower(s[at:e]); w == "instar" || w == "instars" {
			return meaning{kind: stage, text: "larva", keep: true}, e
		}
	}
	return meaning{}, end
}

// instar: behind a count, an L with a single figure is the age of larvae, not
// a number of them ("1 L3", "2 larvae (L4)").
func instar(s string, before []token, t token) bool {
	if !t.short || t.text != "larva" || len(before) == 0 || before[0].kind != number || t.end >= len(s) || s[t.end] < '1' || s[t.end] > '6' {
		return false
	}
	return t.end+1 == len(s) || !isDigit(s[t.end+1])
}

// scanWords reads the word at i, and with it the words after it as far as
// they are a phrase of the dictionary together.
func scanWords(s string, i int) token {
	end := wordEnd(s, i)
	word := s[i:end]
	var (
		key   strings.Builder
		best  = token{start: i, end: end}
		found bool
	)
	best.short = utf8.RuneCountInString(word) == 1
	if best.short { // the case of a single letter can say something: L, l
		if m, ok := dictionary[word]; ok {
			best.meaning, found = m, true
		}
	}
	for n, at := 0, i; n < longestPhrase; n++ {
		e := wordEnd(s, at)
		if n > 0 {
			key.WriteByte(' ')
		}
		key.WriteString(strings.ReplaceAll(strings.ToLower(s[at:e]), "’", "'"))
		m, ok := dictionary[key.String()]
		if !ok && strings.Contains(key.String(), "-") {
			m, ok = dictionary[strings.ReplaceAll(key.String(), "-", " ")]
		}
		if ok && (n > 0 || !found) {
			best.meaning, best.end, found = m, e, true
			best.short = best.short && n == 0
		}
		at = nextWord(s, e)
		if at < 0 {
			break
		}
	}
	return best
}

// wordEnd returns where the word at i ends: letters, and apostrophes and
// hyphens between letters.
func wordEnd(s string, i int) int {
	end := i
	for end < len(s) {
		r, size := utf8.DecodeRuneInString(s[end:])
		if r == '\'' || r == '’' || r == '-' {
			next, _ := utf8.DecodeRuneInString(s[end+size:])
			if end > i && unicode.IsLetter(next) && next != '♂' {
				end += size
				continue
			}
			return end
		}
		if !unicode.IsLetter(r) && !unicode.Is(unicode.M, r) {
			return end
		}
		end += size
	}
	return end
}

// nextWord returns where the next word begins when only blanks and full stops
// lie between, else -1.
func nextWord(s string, i int) int {
	for i < len(s) {
		r, size := utf8.DecodeRuneInString(s[i:])
		switch {
		case unicode.IsLetter(r):
			return i
		case r == '.' || r == '-' || unicode.IsSpace(r) && r != '\n':
			i += size
		default:
			return -1
		}
	}
	return -1
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }
