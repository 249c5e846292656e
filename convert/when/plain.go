package when

import (
	"strings"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// maxText is the longest text that is looked at as a date, in bytes.
const maxText = 200

// marks turns the many dashes, strokes, quotes and the like into plain ones,
// after compatibility normalisation. The longer dashes mean "to" and are set
// apart, as a dash with white space is.
var marks = strings.NewReplacer(
	"\u2010", "-", "\u2011", "-", "\u2012", "-", "\u2013", " - ", "\u2014", " - ", "\u2015", " - ", "\u2212", "-", "\u00ad", "",
	"\u2192", " - ", "\u2044", "/", "\u2215", "/", "\\", "/", "|", "/",
	"\u2018", "'", "\u2019", "'", "\u02bc", "'", "\u00b4", "'", "\u2032", "'", "`", "'",
	"\u201c", `"`, "\u201d", `"`, "\u2033", `"`,
	"\u00b7", ".", "\u2022", ".", "\u3002", ".",
	"\u5e74", ".", "\u6708", ".", "\u65e5", "", // year, month, day
	"\u200b", "", "\u200e", "", "\u200f", "", "\ufeff", "",
)

// tidy returns the text in plain characters and without white space around.
// It does not allocate for plain ASCII.
func tidy(s string) string {
	ascii := true
	for i := 0; i < len(s); i++ {
		if s[i] >= utf8.RuneSelf || s[i] == '\\' || s[i] == '|' || s[i] == '`' {
			ascii = false
			break
		}
	}
	if !ascii {
		s = marks.Replace(norm.NFKC.String(strings.ToValidUTF8(s, "?")))
	}
	return strings.TrimSpace(s)
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// letter reports whether a byte is a letter or a part of one outside ASCII.
func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' || c >= utf8.RuneSelf }
