package layout

import "strings"

// splitNameCountText takes apart a cell that holds a name and a count: "Heart
// and Dart 3", "Large Example (Exemplum maior) 3m 1f", "Heart and Dart x 12",
// "3 Heart and Dart", "Heart and Dart (2)". A question mark stays with the
// name.
func splitNameCountText(s string) (name, count string, ok bool) {
	if name, count, ok = trailingCount(s); ok {
		return name, count, true
	}
	return leadingCount(s)
}

func trailingCount(s string) (name, count string, ok bool) {
	words := strings.Fields(s)
	// The longest run of words from the end that is a count with a figure.
	for at := 1; at < len(words); at++ {
		tail := strings.Join(words[at:], " ")
		bare := strings.Trim(tail, "()[]-–:=,*; ")
		bare = strings.TrimLeft(bare, "x×X")
		bare = trim(bare)
		if strings.Count(bare, "(") > strings.Count(bare, ")") { // 6 (4m 2f)
			bare += ")"
		}
		if bare == "" || !strings.ContainsAny(bare, "0123456789") || !isCount(bare) || scanDate(bare) > yearOnly {
			continue
		}
		if first := strings.ToLower(words[at]); isLetter(first[0]) && !startsCount(first) || words[at][0] >= 'A' && words[at][0] <= 'Z' && len(words[at]) == 1 && first != "x" {
			continue // the Y of "Silver Y (1)"
		}
		head := trim(strings.TrimRight(strings.Join(words[:at], " "), " -–:=,(;"))
		if strings.HasSuffix(head, " x") || strings.HasSuffix(head, " ×") || strings.HasSuffix(head, " X") {
			head = trim(strings.TrimRight(head, "xX× "))
		}
		if len(head) < 3 || !hasLower(head) {
			return "", "", false
		}
		if n, isN := isInt(bare); isN && n >= 1700 && n <= 2100 {
			return "", "", false // an author's year
		}
		return head, bare, true
	}
	return "", "", false
}

// startsCount: words a count may begin with, behind a name.
func startsCount(w string) bool {
	switch strings.Trim(w, ".~(") {
	case "c", "ca", "circa", "about", "over", "approx", "male", "female", "males", "females", "x", "at", "m", "f":
		return true
	}
	return isDigit(w[0])
}

func leadingCount(s string) (name, count string, ok bool) {
	first, rest, found := strings.Cut(s, " ")
	if !found || !isDigit(first[0]) && !strings.HasPrefix(first, "c.") && !strings.HasPrefix(first, "~") {
		return "", "", false
	}
	bare := strings.TrimRight(first, "x×X")
	if !isCount(bare) || len(bare) > 6 || strings.Contains(bare, ".") && isDigit(bare[0]) {
		return "", "", false // 73.317 Heart and Dart
	}
	for _, mark := range [...]string{"x ", "X ", "× ", "- ", "– ", ": "} {
		rest = strings.TrimPrefix(rest, mark)
	}
	rest = trim(rest)
	if len(rest) < 3 || !hasLower(rest) || !isLetter(rest[0]) {
		return "", "", false
	}
	if n, isN := isInt(bare); isN && n > 1500 {
		return "", "", false // a number of the checklist
	}
	return rest, bare, true
}

func hasLower(s string) bool {
	for i := 0; i < len(s); i++ {
		if s[i] >= 'a' && s[i] <= 'z' {
			return true
		}
	}
	return false
}
