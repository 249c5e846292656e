package people

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"fieldfare/convert/reading"
)

// Role is what a person did for a record.
type Role uint8

const (
	Recorder Role = iota
	Determiner
	Verifier
)

// Options are what is known of a cell from its surroundings.
type Options struct {
	// Role is what the column's people did; words in the cell ("det.") say
	// otherwise for the names behind them.
	Role Role
	// Self is the name that "self" and "me" stand for, as written in the list
	// or in full; empty where it is not known.
	Self string
}

// Reading is who a cell names. The names are those to go out: in the spelling
// of the list, each once, in the order written, without people who are not to
// be named.
type Reading struct {
	reading.Verdict
	RecordedBy, IdentifiedBy, VerifiedBy []string
	// Withheld: someone was left out who is not to be named.
	Withheld bool
	// Remarks are words of the cell that are no name.
	Remarks string
	// Removed are contacts and addresses that were taken out, as written.
	Removed []string
}

// Join puts names together as Darwin Core recommends.
func Join(names []string) string { return strings.Join(names, " | ") }

var (
	unsure = regexp.MustCompile(`(?i)^(poss|possibly|prob|probably|maybe|perhaps)\b\.?\s*`)
	joiner = regexp.MustCompile(`(?i)^([&+]|and\s|with\s|w/)`)
	// What was done by the person behind it: "trap run by", "photo by".
	doneBy = regexp.MustCompile(`(?i)^((?:moth |light )?traps? )?(run|set|set up|emptied|checked|operated|sorted|recorded|seen|caught|found|counted|surveyed|trapped|netted|collected|photo|photos|photographed|picture|pic) by:?\s+`)
	// That nobody else was there: "Ines Calloway only".
	aloneWord  = regexp.MustCompile(`(?i)[\s,]+(?:only|alone|solo|by (?:her|him)self|on (?:her|his|my) own)$`)
	late       = regexp.MustCompile(`(?i)^the late\s+`)
	thing      = regexp.MustCompile(`(?i)\b(collection|notebooks?|note book|diary|diaries|records?|files?|specimens?)$`) // and nobody
	possessive = regexp.MustCompile(`['’]s\s`)
	version    = regexp.MustCompile(`(?i)\pL{5,}\s+v\.?\d+(\.\d+)*$`) // of a program that named the taxon
	dateIn     = regexp.MustCompile(`[\s,]*\b(\d{1,2}[./-][ivxIVX]+[./-]\d{2,4}|\d{1,4}[/.-]\d{1,2}[/.-]\d{2,4}|(19|20)\d\d)\b`)
)

// reader collects what one cell says.
type reader struct {
	list *List
	o    Options
	out  Reading
	said []string // remarks
	// couple: titles tell the two apart, so they stay.
	couple bool
}

// Read reads a cell that names people. It is fair where every name is on the
// list, or is written as a name is; a name that had to be completed or mended
// by the list is a query; it is never held, for a record without a recorder's
// name is still a record.
func (l *List) Read(text string, o Options) Reading {
	r := reader{list: l, o: o}
	s, removed := scrubAddress(text)
	if len(removed) > 0 {
		r.out.Removed = removed
		r.doubt("contact-removed", contactRemoved)
	}
	if kindOf(s) == nobody {
		return r.out // before "n/k" is taken for two people
	}
	for _, g := range r.roles(r.undone(s), o.Role) {
		list := r.names(g.text)
		for _, role := range g.roles {
			r.put(role, list)
		}
	}
	r.out.Remarks = strings.Join(r.said, "; ")
	if r.out.State == reading.Query && !strings.Contains(r.out.Message, "“") && len(removed) == 0 {
		r.out.Message = fmt.Sprintf("“%s”: %s", strings.TrimSpace(text), r.out.Message)
	}
	return r.out
}

// undone takes what somebody did from before their name: "trap run by".
func (r *reader) undone(s string) string {
	s = strings.TrimSpace(s)
	m := doneBy.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	did := strings.TrimSpace(m[0])
	r.remark(did)
	if strings.HasPrefix(strings.ToLower(m[2]), "p") {
		r.doubt("recorder-through", fmt.Sprintf("“%s” may name somebody else than the recorder. Please check who saw it.", did))
	}
	return s[len(m[0]):]
}

const contactRemoved = "An e-mail address, telephone number or private address was taken out of the name and does not go out. Please check what is left."

func (r *reader) doubt(code, message string, candidates ...string) {
	r.out.Verdict = r.out.Verdict.And(reading.QueryOf(code, message, candidates...))
}

// remark keeps words that are no name, without the names of people who are
// not to be named.
func (r *reader) remark(s string) {
	s, found := r.list.Scrub(s)
	r.out.Withheld = r.out.Withheld || len(found) > 0
	if s = strings.Trim(s, " .,;:"); s != "" {
		r.said = append(r.said, s)
	}
}

// put adds names to a role, people of the list once each.
func (r *reader) put(role Role, names []string) {
	to := &r.out.RecordedBy
	switch role {
	case Determiner:
		to = &r.out.IdentifiedBy
	case Verifier:
		to = &r.out.VerifiedBy
	}
next:
	for _, n := range names {
		for _, have := range *to {
			if have == n && r.known(n) {
				continue next
			}
		}
		*to = append(*to, n)
	}
}

// names reads a list of names.
func (r *reader) names(s string) []string {
	s = r.brackets(s)
	if at := through.FindStringIndex(s); at != nil {
		rest := strings.TrimSpace(s[at[0]:])
		r.remark(rest)
		r.doubt("recorder-through", fmt.Sprintf("“%s” names someone by whom or for whom the record was made. It is kept as a remark; please check who saw it.", rest))
		s = s[:at[0]]
	}
	if m := dateIn.FindString(s); m != "" {
		r.remark(m)
		r.doubt("date-with-name", fmt.Sprintf("“%s” beside the name looks like a date. It is kept as a remark; please check.", strings.TrimSpace(m)))
		s = dateIn.ReplaceAllString(s, " ")
	}
	var out []string
	for _, w := range r.split(s) {
		for _, one := range r.together(aloneWord.ReplaceAllString(w, "")) {
			if name := r.name(one); name != "" {
				out = append(out, name)
			}
		}
	}
	return out
}

// brackets takes out what stands in brackets: initials that repeat the name,
// or a remark.
func (r *reader) brackets(s string) string {
	for {
		i := strings.IndexAny(s, "([")
		if i < 0 {
			return s
		}
		inner, after := s[i+1:], ""
		if j := strings.IndexAny(inner, ")]"); j >= 0 {
			inner, after = inner[:j], inner[j+1:]
		}
		inner, before := strings.Trim(inner, " ,;."), strings.TrimSpace(s[:i])
		switch {
		case before == "":
			s = strings.TrimSpace(inner + " " + after)
			continue
		case joiner.MatchString(inner): // TA (with IC)
			s = before + " " + inner + " " + strings.TrimSpace(after)
			continue
		case r.known(inner) && !r.repeats(inner, lastName(before)): // TA (IC)
			r.doubt("name-in-brackets", fmt.Sprintf("“%s” stands in brackets behind another name, and was read as one more person. Please check.", inner))
			s = before + " & " + inner + " " + strings.TrimSpace(after)
			continue
		case strings.Trim(inner, "? ") == "" && inner != "":
			r.doubt("recorder-unclear", fmt.Sprintf("“%s” is marked as uncertain. Please check the name.", lastName(before)))
		case !r.repeats(inner, lastName(before)):
			r.remark(inner)
		}
		s = before + " " + strings.TrimSpace(after)
	}
}

// repeats tells whether the words in brackets are only the name before them
// once more: its initials, or what "self" stands for.
func (r *reader) repeats(inner, name string) bool {
	if inner == "" || kindOf(name) == selfWord && r.known(inner) || kindOf(inner) == selfWord {
		return true
	}
	in := parse(inner)
	if honours[strings.ToLower(inner)] {
		return true
	}
	return in.onlyInitials && strings.HasSuffix(parse(name).initials(), in.initials())
}

// lastName is the last of the names in a list.
func lastName(s string) string {
	i := strings.LastIndexAny(s, ",;&/+|")
	return strings.TrimSpace(s[i+1:])
}

// name reads one name and returns it as it should go out; empty for none.
func (r *reader) name(written string) string {
	s := strings.Trim(written, " ,;:-–—\"“”_*)(][")
	doubted := strings.Contains(s, "?")
	s = strings.TrimSpace(strings.ReplaceAll(s, "?", " "))
	if m := unsure.FindString(s); m != "" && len(m) < len(s) {
		s, doubted = s[len(m):], true
	}
	s = late.ReplaceAllString(s, "")
	if !strings.ContainsFunc(s, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) }) && kindOf(s) == aName {
		if doubted {
			r.doubt("recorder-unclear", "A question mark stands for a name. Please say who it was if you know.")
		} else if strings.ContainsAny(written, "\"“”„″〃") {
			r.doubt("recorder-unclear", fmt.Sprintf("“%s” repeats another row's name, which is not known here. Please write the name.", strings.TrimSpace(written)))
		}
		return ""
	}
	if doubted {
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” is marked as uncertain. Please check the name.", s))
	}
	switch kindOf(s) {
	case selfWord:
		return r.self(s)
	case nobody:
		return ""
	case sameAgain:
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” repeats another row's name, which is not known here. Please write the name.", s))
		return ""
	case others:
		r.remark(s)
		if _, err := strconv.Atoi(s); err == nil {
			s = "+" + s
		}
		r.doubt("recorder-unnamed", fmt.Sprintf("“%s” stands for people who are not named. It is kept as a remark.", s))
		return ""
	}
	return r.lookUp(s)
}

func (r *reader) self(s string) string {
	if strings.TrimSpace(r.o.Self) == "" {
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” stands for the owner of the notebook, whom the project does not name. Please say in the project file whose notebooks these are.", s))
		return ""
	}
	return r.lookUp(strings.TrimSpace(r.o.Self))
}

// lookUp finds a name on the list.
func (r *reader) lookUp(s string) string {
	n := parse(s)
	how, at := r.list.find(s, n)
	if how == severalFit {
		var names []string
		for _, i := range at {
			if r.list.people[i].Withhold {
				r.out.Withheld = true
				r.doubt("recorder-ambiguous", fmt.Sprintf("“%s” could be several people on the list, one of whom is not to be named, so no name goes out. Please write the name in full.", s))
				return ""
			}
			names = append(names, r.list.people[i].Name)
		}
		r.doubt("recorder-ambiguous", fmt.Sprintf("“%s” could be %s. Please write the name in full.", s, strings.Join(names, " or ")), names...)
		return n.String()
	}
	if how == notListed {
		return r.unlisted(s, n)
	}
	p := r.list.people[at[0]]
	switch how {
	case byHalf:
		r.doubt("recorder-completed", fmt.Sprintf("“%s” was read as %s, the only one on the people list whom it fits. Please check, or add it to the list as another spelling.", s, p.Name), p.Name)
	case misspelt:
		r.doubt("recorder-misspelt", fmt.Sprintf("“%s” was read as %s from the people list. Please check the spelling.", s, p.Name), p.Name)
	}
	if p.Withhold {
		r.out.Withheld = true
		return ""
	}
	return p.Name
}

// unlisted is a name that the list does not have: a visitor, a group, or
// initials nobody can resolve.
func (r *reader) unlisted(s string, n parsedName) string {
	switch {
	case r.list.mayBeWithheld(n) || r.list.betrays(s):
		r.out.Withheld = true
		r.doubt("recorder-withheld", fmt.Sprintf("“%s” may be someone who is not to be named, and does not go out. Please check the spelling.", s))
		return ""
	case n.onlyInitials:
		r.doubt("initials-unknown", fmt.Sprintf("The initials “%s” are not on the people list. Please add them, or write the name in full.", s))
		return s
	case len(n.given) == 0 && n.title == "" && len(s) <= 5 && strings.ToUpper(s) == s && hasLetter(s):
		r.doubt("initials-unknown", fmt.Sprintf("“%s” may be initials or a name in capitals, and is not on the people list. Please write the name in full.", s))
		return s
	case strings.ContainsAny(version.ReplaceAllString(s, ""), "0123456789"):
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” holds figures and may not be a name. Please check.", s))
		return s
	case !hasLetter(s):
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” is not a name. Please write who it was.", s))
		return ""
	case isGroup(s):
		return s
	case strings.ContainsAny(s, ":=<>@#") || possessive.MatchString(s) || thing.MatchString(s):
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” does not look like a name. Please write who it was.", s))
		return s
	case n.turned:
		r.doubt("order-of-names", fmt.Sprintf("“%s” was read as a surname with initials behind it. Please check.", s))
	case mayBeTwo(strings.Fields(n.written)):
		r.doubt("recorder-unclear", fmt.Sprintf("“%s” may be more than one person. Please put a comma between them, or check.", s))
	case len(n.given) == 0 && n.title == "" && (!r.list.empty() || s == strings.ToLower(s)):
		r.doubt("single-name", fmt.Sprintf("“%s” is a single word that is not on the people list. Please check that it is a name, and write it in full.", s))
	}
	if r.couple && n.title != "" {
		return strings.Join(strings.Fields(s), " ")
	}
	return n.String()
}
