package tally

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"fieldfare/convert/reading"
)

// wholeCell reads the signs and letters that mean something only when they
// stand alone in a cell.
func wholeCell(s string, o Options) (Part, reading.Verdict, bool) {
	key := strings.ToLower(strings.TrimRight(s, "!"))
	if key != "" && strings.Trim(key, "0") == "" {
		key = "0"
	}
	switch key {
	case "x", "×", "✓", "✔", "✗", "✘", "√", "☑", "☒", "🗸", "+", "p", "y", "yes", "y.", "pres", "pres.", "true", "tick", "*", "•", "●", "present", "ticked", "p.", "✓✓":
		if key == "✗" || key == "✘" || key == "☒" {
			return Part{}, reading.QueryOf("cross-mark", fmt.Sprintf("The cross “%s” was read as “present”. Please check that it does not mean “not seen”.", s)), true
		}
		return Part{}, reading.Verdict{Message: "Present; no count is given."}, true
	case "not counted", "uncounted", "no count", "nc", "n.c.", "not recorded", "not noted", "count not made", "uncntd", "number not noted", "no count made", "not cntd", "lost count":
		return Part{Remarks: s}, reading.Verdict{Message: "Present; no count was made."}, true
	case "n/a", "na", "n.a.", "n/k", "nk", "n.k.", "?", "??", "unknown", "not known", "unk", "xx", "xxx", "++", "+++", "v", "r", "c", "lots?", "no data", "missing", "tbc", "tba", "x?", "p?", "✓?", "present?", "empty", "1st of year", "first of year", "1st of the year", "first of the year", "1st for year":
		return Part{Remarks: s}, reading.QueryOf("count-unclear", fmt.Sprintf("“%s” gives no count. The record is handed in as present, without a number; please say how many there were if you know.", s)), true
	case "f", "f.":
		return Part{Sex: "female"}, reading.QueryOf("short-label", fmt.Sprintf("“%s” was read as female. Please check that it does not mean “frequent”.", s), "female", "frequent"), true
	case "m", "m.":
		return Part{Sex: "male"}, reading.Verdict{}, true
	case "mf", "m f", "fm", "both", "both sexes", "mixed", "mixed sexes", "♂/♀", "m/f", "f/m":
		return Part{Remarks: s}, reading.QueryOf("shared-label", fmt.Sprintf("“%s” does not say how many there were of each sex. Please say if you know.", s)), true
	case "absent", "not found", "looked for", "looked for not found", "searched for", "not present", "abs", "abs.", "looked for, not found", "searched for, not found", "searched for not found", "no sign", "not detected":
		return lookedFor()
	case "no.", "a", "d", "o", "n", "l", "i.", "s", "a.", "d.", "o.", "n.", "l.":
		if s == "L" || s == "L." {
			return Part{LifeStage: "larva"}, reading.Verdict{}, true
		}
		return Part{}, ambiguousLetter(s), true
	case "-", "--", "---", "0", "nil", "nil.", "none", "none.", "no", "zero", "nought", "0.0", "0.00", "none seen", "nil seen", "not seen", "none found", "none caught", "false", "n/s", "nothing", "–", "—", "−", "‐", "‑", "none recorded", "nil return", "null", "ø", "––", "——", "not any", "none today", "no show", ".", "not caught":
		parts, v := notSeen(nil, s, o, utf8.RuneCountInString(strings.Trim(key, "-–—−‐‑.")) > 0)
		if len(parts) == 0 {
			return Part{}, v, true
		}
		return parts[0], v, true
	}
	if long := locally[key]; long != "" {
		return Part{}, reading.HeldOf("ambiguous-letter", fmt.Sprintf("“%s” may be short for %s. Please say so, or how many there were.", s, long), long), true
	}
	if searched.MatchString(s) {
		return lookedFor()
	}
	return Part{}, reading.Verdict{}, false
}

// locally are letters for how common something is in places.
var locally = map[string]string{"la": "locally abundant", "lf": "locally frequent", "ld": "locally dominant", "lc": "locally common"}

// searched: nothing was found although it was looked for: "none (searched)".
var searched = regexp.MustCompile(`(?i)^(?:0|nil|none|zero|not)(?: seen| found)?[ ,;:([–-]*(?:despite |after |but |was |were )*(?:(?:thorough|full|long|careful) )?(?:search(?:ed|ing)?|look(?:ed|ing)?)(?: for| hard| carefully| thoroughly)?[)\].]*$`)

func lookedFor() (Part, reading.Verdict, bool) {
	return Part{Absent: true}, reading.Verdict{Message: "Looked for and not found."}, true
}

// ambiguousLetter holds a letter that stands for several things.
func ambiguousLetter(s string) reading.Verdict {
	var could []string
	switch strings.ToLower(strings.TrimRight(s, ".")) {
	case "a":
		could = []string{"adult", "abundant", "absent"}
	case "d":
		could = []string{"dead", "dominant"}
	case "o":
		could = []string{"0", "occasional"}
	case "n":
		could = []string{"not seen", "nymph"}
	case "l":
		could = []string{"1", "larva"}
	default:
		return unread(s)
	}
	return reading.HeldOf("ambiguous-letter", fmt.Sprintf("“%s” could mean %s. Please say which, and how many there were.", s, strings.Join(could, " or ")), could...)
}

// marks names a number of tally marks.
func marks(n int) string {
	if n == 1 {
		return "one tally mark"
	}
	return fmt.Sprint(n, " tally marks")
}

// notSeen is what a nought, "nil" or a dash means: an absence where that was
// asked for, otherwise no record. A dash is no number, so it gives no count.
func notSeen(parts []Part, s string, o Options, number bool) ([]Part, reading.Verdict) {
	if !o.ZeroIsAbsence {
		return parts, reading.Verdict{State: reading.Skipped, Code: "not-seen", Message: fmt.Sprintf("“%s” says that none were seen; this is not a record of an absence unless the project asks for that.", s)}
	}
	p := Part{Absent: true}
	if number {
		p.IndividualCount = "0"
	}
	return append(parts, p), reading.Verdict{Message: "Looked for and not found."}
}

// strokes reads tally marks: uninterrupted strokes count one each. Groups may
// stand for bars of five, so they are asked about.
func strokes(s string) (Part, reading.Verdict, bool) {
	n, groups := 0, 1
	var mark rune
	for _, r := range s {
		switch {
		case r == ' ' || r == ',':
			groups++
		case r != '|' && r != 'I' && r != '/' && r != '∣' && r != 'ǀ' && r != 'l' && r != '1', mark != 0 && r != mark:
			return Part{}, reading.Verdict{}, false
		default:
			mark = r
			n++
		}
	}
	if n == 0 || mark == '1' || n == 1 && mark != '|' && mark != 'I' {
		return Part{}, reading.Verdict{}, false
	}
	count := Part{IndividualCount: fmt.Sprint(n)}
	switch {
	case groups > 1:
		return Part{}, reading.HeldOf("tally-marks", fmt.Sprintf("The tally marks “%s” could count %d, or more if a group of four stands for a gate of five. Please say how many there were.", s, n), fmt.Sprint(n)), true
	case mark == 'l' || mark == '/' || n == 1 || n > 4:
		return count, reading.QueryOf("tally-marks", fmt.Sprintf("“%s” was read as %s. Please check.", s, marks(n))), true
	}
	return count, reading.Verdict{Message: fmt.Sprintf("%d tally marks.", n)}, true
}
