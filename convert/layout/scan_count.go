package layout

import "strings"

// countWords may stand in a cell that says how many.
var countWords = wordSet("m f male males female females mm ff c ca circa approx about over under more less than or few several many " +
	"common abundant present p x xx xxx pair pairs plenty lots numerous scarce frequent occasional dozens hundreds thousands " +
	"s nil none no zero one two three four five six seven eight nine ten larva larvae larval ova ovum egg eggs pupa pupae mine mines " +
	"case cases ad adult adults imago imagines juv juvs juvenile imm dead worker workers queen queens drone nymph nymphs and at least est counted y yes " +
	"singing calling spent mating caterpillar caterpillars gall galls cocoon cocoons exuvia exuviae to total max min a r o d l")

// isCount reports whether a trimmed text says how many, in figures or words.
func isCount(s string) bool {
	if s == "" || len(s) > 40 {
		return false
	}
	any := false
	for i := 0; i < len(s); {
		c := s[i]
		switch {
		case isDigit(c):
			j := i
			for j < len(s) && isDigit(s[j]) {
				j++
			}
			if j-i > 6 {
				return false
			}
			any = true
			i = j
		case isLetter(c):
			j := i
			for j < len(s) && isLetter(s[j]) {
				j++
			}
			if !countWords[strings.ToLower(s[i:j])] {
				return false
			}
			any = true
			i = j
		case strings.IndexByte(" .,+-/<>~?()=*&;:'", c) >= 0 || c >= 0x80:
			if strings.HasPrefix(s[i:], "♂") || strings.HasPrefix(s[i:], "♀") || strings.HasPrefix(s[i:], "✓") ||
				strings.HasPrefix(s[i:], "✔") || strings.HasPrefix(s[i:], "√") || strings.HasPrefix(s[i:], "½") {
				any = true
			}
			i++
		default:
			return false
		}
	}
	return any
}

// isTick: a mark for presence.
func isTick(s string) bool {
	switch s {
	case "x", "X", "P", "p", "✓", "✔", "√", "*", "+", "y", "Y", "yes", "Yes", "/", "1+", "•", "●", "☑", "✗", "✘", "×", "þ", "ü", "|", "present", "Present":
		return true
	}
	return false
}

// isNotSeen: a mark for nothing, in a table's cell.
func isNotSeen(s string) bool {
	switch s {
	case "0", "-", "–", "—", "--", "---", ".", "..", "nil", "Nil", "NIL", "none", "None", "0.0", "·", "☐", "□", "◻", "▢":
		return true
	}
	return false
}

// isInt returns the value of a text of up to nine digits.
func isInt(s string) (int, bool) {
	if s == "" || len(s) > 9 {
		return 0, false
	}
	n := 0
	for i := 0; i < len(s); i++ {
		if !isDigit(s[i]) {
			return 0, false
		}
		n = n*10 + int(s[i]-'0')
	}
	return n, true
}

// isDecimal: a number with a sign or a decimal point.
func isDecimal(s string) bool {
	if s == "" || len(s) > 20 {
		return false
	}
	i, digits, points := 0, 0, 0
	if s[0] == '-' || s[0] == '+' {
		i++
	}
	for ; i < len(s); i++ {
		switch {
		case isDigit(s[i]):
			digits++
		case s[i] == '.':
			points++
		default:
			return false
		}
	}
	return digits > 0 && points <= 1
}

// isTime: 22:45, 22.45 hrs, 2245h, 9.30pm, a span of these, dusk.
func isTime(s string) bool {
	if len(s) < 3 || len(s) > 24 {
		return false
	}
	low := strings.ToLower(s)
	if low == "dusk" || low == "dawn" || low == "midnight" || low == "noon" || low == "all night" {
		return true
	}
	colon, digits, other := 0, 0, 0
	for i := 0; i < len(low); i++ {
		switch c := low[i]; {
		case isDigit(c):
			digits++
		case c == ':':
			colon++
		case strings.IndexByte(" .-hrsapmgtbu", c) >= 0 || c >= 0x80:
			other++
		default:
			return false
		}
	}
	if digits < 3 && !strings.HasSuffix(low, "m") {
		return false
	}
	return digits > 0 && (colon > 0 || strings.HasSuffix(low, "am") || strings.HasSuffix(low, "pm") ||
		strings.HasSuffix(low, "h") && digits == 4 || strings.HasSuffix(low, "hrs"))
}

// isDitto: a mark that repeats what stands above.
func isDitto(s string) bool {
	if s == "" || len(s) > 12 || isDigit(s[0]) || isLetter(s[0]) && strings.IndexByte("dDsSiIaA", s[0]) < 0 {
		return false
	}
	switch s {
	case `"`, `""`, "''", "”", "“", "„", "〃", "″", "´´", "``", "’’", "‘‘", `-"-`, `- " -`, `–"–`, "-”-", "–”–", "-“-", "-''-", "-„-", ",,", "„„", `-〃-`, `--"--`, "״", "ˮ", `" "`, `"  "`, `" " "`, "‟", "ditto.", "″″", "↓", "⇓", "⬇", "▼", "↡":
		return true
	}
	switch strings.ToLower(strings.Trim(s, " .-()")) {
	case "do", "ditto", "dto", "as above", "same", "same place", "same site", "same date", "same day", "same night", "same spot", "idem", "id", `"`, "d°", "dº":
		return true
	}
	return false
}

// isTotalWord reports whether a row's label says that the row sums up others.
func isTotalWord(s string) bool {
	if len(s) < 3 || len(s) > 48 {
		return false
	}
	if isDigit(s[0]) { // 14 moths of 2 species
		low := strings.TrimRight(strings.ToLower(s), " .!")
		return strings.Contains(low, " of ") && (strings.HasSuffix(low, " species") || strings.HasSuffix(low, " spp") || strings.HasSuffix(low, " sp"))
	}
	switch s[0] | 0x20 {
	case 't', 's', 'g', 'n', 'c', 'r', 'm', 'o', 'y', 'd', 'a', 'i', 'e', '#', 'b', 'p':
	default:
		return false
	}
	low := strings.ToLower(strings.Trim(s, " :=.-*"))
	switch {
	case totalLabels[low]:
		return true
	case strings.HasPrefix(low, "total ") || strings.HasPrefix(low, "totals ") || strings.HasPrefix(low, "grand total") ||
		strings.HasPrefix(low, "sub-total") || strings.HasPrefix(low, "subtotal") || strings.HasPrefix(low, "sub total") ||
		strings.HasPrefix(low, "running total") || strings.HasPrefix(low, "cumulative") || strings.HasPrefix(low, "total:") || strings.HasPrefix(low, "totals:"):
		return true
	case strings.HasSuffix(low, " total") || strings.HasSuffix(low, " totals"):
		return true
	case strings.HasPrefix(low, "number of ") || strings.HasPrefix(low, "no. of ") || strings.HasPrefix(low, "no of ") || strings.HasPrefix(low, "nr of ") || strings.HasPrefix(low, "# of "):
		return true
	}
	return false
}

var totalLabels = func() map[string]bool {
	m := wordSet("total totals sum subtotal tot tot. totals/night average mean cumulative overall maximum")
	for _, s := range []string{"sub-total", "sub total", "grand total", "species count", "species total", "individuals", "moth total",
		"moths total", "all species", "season total", "year total", "monthly total", "night total", "no. species", "no species",
		"new species", "species", "all moths", "all butterflies", "catch", "total catch", "count", "tot. moths", "no. spp", "no. spp.", "species/night", "page total", "per night", "brought forward", "carried forward", "b/f", "c/f"} {
		m[s] = true
	}
	return m
}()
