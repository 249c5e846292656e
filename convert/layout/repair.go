package layout

import (
	"strings"
	"unicode/utf8"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"

	"golang.org/x/text/encoding/charmap"
)

// HasText reports whether a cell holds text that somebody could read: the
// cells that Outcome.Used and Outcome.Left count. White space alone is none.
func HasText(c *notebook.Cell) bool {
	return trim(c.Text) != ""
}

// trim removes outer white space of every kind, zero-width marks included.
func trim(s string) string {
	if s == "" {
		return s
	}
	if a, b := s[0], s[len(s)-1]; a > ' ' && a < utf8.RuneSelf && b > ' ' && b < utf8.RuneSelf {
		return s
	}
	return strings.TrimFunc(s, isSpace)
}

func isSpace(r rune) bool {
	switch r {
	case ' ', '\t', '\n', '\v', '\f', '\r', 0x85, 0xA0, 0x1680, 0x2028, 0x2029, 0x202F, 0x205F, 0x3000,
		0x200B, 0x200C, 0x200D, 0x2060, 0xFEFF:
		return true
	}
	return r >= 0x2000 && r <= 0x200A
}

func isASCII(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// typographic replaces the marks that word processors put in: curly quotes,
// non-breaking and zero-width spaces, soft hyphens. Dashes stay, they mean
// something in dates and counts.
var typographic = strings.NewReplacer(
	"‘", "'", "’", "'", "‚", "'", "‛", "'",
	"“", `"`, "”", `"`, "„", `"`, "‟", `"`,
	"\u00a0", " ", "\u202f", " ", "\u2007", " ", "\u2009", " ",
	"\u200b", "", "\u200c", "", "\u200d", "", "\u2060", "", "\ufeff", "", "\u00ad", "",
)

// tidy returns the text as it should be matched, and a doubt where it had to
// be repaired. Text must be trimmed.
func tidy(text string) (string, reading.Verdict) {
	if isASCII(text) {
		return text, reading.Verdict{}
	}
	out := text
	var doubt reading.Verdict
	if mended, ok := demangle(out); ok {
		out = mended
		doubt = reading.QueryOf("mis-decoded-text",
			"“"+text+"” was saved in one encoding and opened in another. It probably said “"+mended+"”.", mended)
	} else if strings.ContainsRune(out, utf8.RuneError) || strings.Contains(out, "ï¿½") {
		doubt = reading.QueryOf("mis-decoded-text",
			"“"+text+"” has lost a letter: the file was saved or opened in the wrong encoding. Please write it again.")
	}
	if plainText := typographic.Replace(out); plainText != out {
		out = trim(plainText)
		if doubt.State == reading.Fair && out != "" {
			doubt = reading.QueryOf("typographic-marks",
				"“"+text+"” has curly quotes or special spaces that a word processor put in. It is read as "+`“`+out+`”.`, out)
		}
	}
	if out == "" {
		return text, doubt
	}
	return out, doubt
}

// demangle undoes UTF-8 text that was read as Windows-1252 ("Tinkerâ€™s"),
// once or twice over.
func demangle(s string) (string, bool) {
	done := false
	for range 2 {
		if !strings.ContainsAny(s, "ÂÃâËÅÄï") {
			break
		}
		mended, ok := demangleRuns(s)
		if !ok {
			break
		}
		s, done = mended, true
	}
	return s, done
}

// demangleRuns replaces each run of two to four characters whose Windows-1252
// bytes are one UTF-8 character.
func demangleRuns(s string) (string, bool) {
	var out strings.Builder
	changed := false
	runes := []rune(s)
	for i := 0; i < len(runes); {
		n := 0
		if b, ok := win1252(runes[i]); ok && b >= 0xC2 && b <= 0xF4 {
			buf := []byte{b}
			for j := i + 1; j < len(runes) && j < i+4; j++ {
				c, ok := win1252(runes[j])
				if !ok || c < 0x80 || c > 0xBF {
					break
				}
				buf = append(buf, c)
				if r, size := utf8.DecodeRune(buf); r != utf8.RuneError && size == len(buf) {
					out.WriteRune(r)
					n = len(buf)
					break
				}
			}
		}
		if n == 0 {
			out.WriteRune(runes[i])
			i++
			continue
		}
		i += n
		changed = true
	}
	return out.String(), changed
}

// win1252 returns the byte that Windows-1252 has for a character; the five
// bytes it leaves undefined stand for themselves, as programs treat them.
func win1252(r rune) (byte, bool) {
	if r < 0x80 {
		return byte(r), true
	}
	switch r {
	case 0x81, 0x8D, 0x8F, 0x90, 0x9D:
		return byte(r), true
	}
	return charmap.Windows1252.EncodeRune(r)
}
