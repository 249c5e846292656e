package layout

import (
	"regexp"
	"strings"
)

const onePerson = `(?:(?:Mr|Mrs|Miss|Ms|Dr|Rev|Prof)\.? )?(?:[A-Z]\.? ?){0,3}[A-Z][\pL'’-]+(?: [A-Z][\pL'’.-]*){0,3}|[A-Z]\.?[A-Z]\.?(?:[A-Z]\.?)?`

var (
	teamAhead = regexp.MustCompile(`^[ ]*(?:[,;+/]|(&|and\b|with\b))[ ]*(?:(?:and|with) |& ?)?(` + onePerson + `)(?:[^\pL']|$)`)
	// The sign or word behind a person who is named before another.
	teamSign = regexp.MustCompile(`[ ]*(?:[,;&+/]|\band|\bwith)[ ]*$`)
)

// peopleAhead is how much of the text goes on with further people, behind one
// who is named in a title: ", T. Achterberg and Pauline Marsh".
func peopleAhead(p *page, text string) int {
	end := 0
	for {
		m := teamAhead.FindStringSubmatchIndex(text[end:])
		if m == nil {
			return end
		}
		who := text[end+m[4] : end+m[5]]
		if !isTeamMate(p, who) && !(m[2] >= 0 && givenNames[strings.ToLower(firstWord(who))]) { // and Pauline Marsh, who is no marsh
			return end
		}
		end += m[5]
	}
}

// peopleBefore is where in the text before somebody named in a title the
// people begin who are named with them: "14C. IC, TA, " has them from "IC".
func peopleBefore(p *page, text string) int {
	at := teamSign.FindStringIndex(text)
	if at == nil {
		return len(text)
	}
	from := strings.LastIndexAny(text[:at[0]], ",;:(–|&+/") + 1
	if i := strings.LastIndex(text[:at[0]], ". "); i >= from && i > 1 && (isLetter(text[i-2]) || isDigit(text[i-2])) {
		from = i + 2 // a sentence ends there, and no initial
	}
	chunk := text[from:at[0]]
	who := trim(chunk)
	if !isTeamMate(p, who) {
		if who = trailingPerson(p, chunk); who == "" {
			return len(text)
		}
	}
	start := from + strings.LastIndex(chunk, who)
	if before := peopleBefore(p, text[:start]); before < start {
		return before
	}
	return start
}

// isTeamMate: one of several people; initials count, which alone in a title
// may be anything.
func isTeamMate(p *page, who string) bool {
	return isNamed(p, who) || isInitials(who) && len(who) <= 6 && !notInitials[strings.ReplaceAll(who, ".", "")]
}

// withCompany is who together with all who are named beside them in the text.
func withCompany(p *page, text, who string) string {
	at := strings.Index(text, who)
	if who == "" || at < 0 {
		return who
	}
	end := at + len(who)
	return text[peopleBefore(p, text[:at]) : end+peopleAhead(p, text[end:])]
}
