package layout

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// normHeading brings a heading to the form of the vocabulary's keys: small
// letters, words apart, no marks, single letters joined ("G.R." is "gr"),
// what stands in brackets left out.
func normHeading(s string) string {
	words := headingWords(s)
	return strings.Join(words, " ")
}

func headingWords(s string) []string {
	s, _ = tidy(trim(s))
	if body := outsideBrackets(s); strings.TrimSpace(body) != "" {
		s = body
	}
	var words []string
	var word strings.Builder
	prev := rune(0)
	flush := func() {
		if word.Len() > 0 {
			words = append(words, word.String())
			word.Reset()
		}
	}
	for _, r := range s {
		switch {
		case r == '\'' || r == '"':
			continue // "recorder's" is one word
		case r == '&' || r == '+':
			flush()
			words = append(words, "and")
		case unicode.IsLetter(r) || unicode.IsDigit(r) || r == '°' || r == '#' || r == '♂' || r == '♀' || r == '%':
			if unicode.IsUpper(r) && unicode.IsLower(prev) {
				flush() // GridRef
			}
			word.WriteRune(unicode.ToLower(r))
		default:
			flush()
		}
		prev = r
	}
	flush()
	return joinLetters(words)
}

// joinLetters makes one word of neighbouring single letters: "v c" is "vc".
func joinLetters(words []string) []string {
	out := words[:0]
	run := 0
	for _, w := range words {
		if utf8.RuneCountInString(w) == 1 && w[0] >= 'a' && w[0] <= 'z' {
			if run > 0 {
				out[len(out)-1] += w
				run++
				continue
			}
			run = 1
		} else {
			run = 0
		}
		out = append(out, w)
	}
	// "recorder s" (from "recorder(s)") and "no s" lose the plural mark.
	if n := len(out); n > 1 && out[n-1] == "s" {
		out = out[:n-1]
	}
	return out
}

// outsideBrackets and insideBrackets part a heading at its brackets.
func outsideBrackets(s string) string {
	var b strings.Builder
	depth := 0
	for _, r := range s {
		switch r {
		case '(', '[', '{':
			depth++
		case ')', ']', '}':
			depth = max(0, depth-1)
			b.WriteByte(' ')
		default:
			if depth == 0 {
				b.WriteRune(r)
			}
		}
	}
	return b.String()
}

func insideBrackets(s string) string {
	if i := strings.IndexAny(s, "(["); i >= 0 {
		return strings.Trim(s[i:], "()[] ")
	}
	return ""
}
