package layout

import (
	"regexp"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// whoWords stand before the name of a recorder in a title: "rec. T.
// Achterberg", "Recorded by Ines Calloway".
var whoWords = regexp.MustCompile(`(?i)(?:^|[\s,;(–-])(?:(?:recorded|surveyed|counted|collected|walked|trapped|operated|run|led|ringed|caught) by|recorders?:?|recs?\.(?: by)?|observers?:?|obs\.|surveyors?:?|counters?:?|walkers?:?|ringers?:?|collectors?:?|leaders?:?|leg\.|coll\.) +`)

// detWords stand before the name of a determiner in a title.
var detWords = regexp.MustCompile(`(?i)(?:^|[\s,;(–-])(?:det\.?(?: by)?|(?:determined|identified) by|determiners?:?|id by) +`)

// whoIn finds the recorder named in a line, from where to where the words that
// name one stand.
func whoIn(text string) (who string, from, to int) { return namedBehind(whoWords, text) }

// namedBehind finds the person named behind words that say who did something.
func namedBehind(words *regexp.Regexp, text string) (who string, from, to int) {
	at := words.FindStringIndex(text)
	if at == nil {
		return "", 0, 0
	}
	rest := text[at[1]:]
	end := len(rest)
	for _, stop := range [...]string{",", ";", "(", ")", " at ", " from ", " - ", " – ", ". "} {
		for i := strings.Index(rest[:end], stop); i >= 0; {
			if stop == ". " && i > 0 && (i == 1 || !isLetter(rest[i-2])) { // an initial
				next := strings.Index(rest[i+2:end], stop)
				if next < 0 {
					break
				}
				i += 2 + next
				continue
			}
			end = i
			break
		}
	}
	who = trim(strings.Trim(rest[:end], " .,"))
	if words := strings.Fields(who); len(words) == 0 || len(words) > 6 || capitals(who)*3 < len(words)*2 || strings.ContainsAny(who, "0123456789") || who[0] < 'A' || who[0] > 'Z' {
		return "", 0, 0
	}
	if isGroupName(who) || monthOf(who) > 0 || titleWords[strings.ToLower(firstWord(who))] {
		return "", 0, 0
	}
	return who, at[0], at[1] + end
}

// upToSmall cuts a text at the first word behind a name that begins small,
// but for those within names: "Ines Calloway and Tom Achterberg since 1992".
func upToSmall(text string) string {
	words := strings.Fields(text)
	for i, w := range words {
		if i > 0 && w[0] >= 'a' && w[0] <= 'z' && w != "and" && w != "de" && w != "van" && w != "von" && w != "der" && w != "la" {
			return strings.Join(words[:i], " ")
		}
	}
	return text
}

// ownersNotes: "Nora Finch's butterfly notes".
var ownersNotes = regexp.MustCompile(`^(\p{Lu}[\p{L}.-]*(?: \p{Lu}[\p{L}.-]*){1,3})['’]s (?:\p{Ll}+ ){0,3}(?:notes|notebook|diary|log|logbook|lists?|records?|sightings|book|counts?)\b`)

// personIn finds the part of a title that can only be a person: "Garden trap -
// 2010 - I. Calloway".
func personIn(p *page, text string) string {
	for _, part := range titleParts(text) {
		if part = trim(strings.Trim(cutYear(part), " ,")); isNamed(p, part) {
			return part
		}
	}
	if m := ownersNotes.FindStringSubmatch(text); m != nil && isNamed(p, m[1]) {
		return m[1]
	}
	if who := trailingPerson(p, text); who != "" {
		return who
	}
	return initialsIn(text)
}

// personAndPlace parts "Ines Calloway at Tinker's Row TL453812".
func personAndPlace(text string) (who, place string) {
	who, place, ok := strings.Cut(text, " at ")
	if !ok || place == "" || place[0] < 'A' || place[0] > 'Z' || strings.Count(who, " ") > 5 || strings.ContainsAny(who, "0123456789") {
		return text, ""
	}
	return trim(who), trim(place)
}

// byOther reports whether the words before "by" say that somebody did
// something else than record: "All identified by Ines Calloway".
func byOther(before string) bool {
	words := strings.Fields(strings.ToLower(before))
	if len(words) == 0 {
		return false
	}
	switch strings.Trim(words[len(words)-1], ".,;:()") {
	case "identified", "determined", "det", "id", "ided", "named", "checked", "verified", "confirmed", "conf", "typed", "entered", "written", "printed",
		"owned", "lent", "made", "drawn", "supplied", "given", "sent", "copied", "transcribed", "edited", "read", "dissected", "photographed":
		return true
	}
	return false
}

// withoutHonorific cuts "Miss" and its kin off a name.
func withoutHonorific(name string) string {
	first, rest, _ := strings.Cut(name, " ")
	switch strings.ToLower(strings.Trim(first, ".")) {
	case "mr", "mrs", "miss", "ms", "dr", "rev", "prof", "revd":
		return trim(rest)
	}
	return name
}

// goesOn takes the cell behind "Recorders: Ines Calloway" for a further name,
// and the one behind "Weather: warm" for more of it: a comma has put it there.
func (f *facts) goesOn(text, next string, ref notebook.Ref) bool {
	labels := labelsIn(text)
	if len(labels) == 0 || next == "" || len(labelsIn(next)) > 0 || len(vocabulary[normHeading(next)]) > 0 {
		return false
	}
	last := labels[len(labels)-1]
	v := f.get(last.meaning)
	switch {
	case v == nil || v.Ref != ref:
		return false
	case last.meaning == Weather:
		v.Text += ", " + next
		return true
	case last.meaning != Recorder:
		return false
	}
	words := strings.Count(next, " ") + 1
	if words > 4 || capitals(next) < words || strings.ContainsAny(next, "0123456789:") || looksPlace(next) || isGroupName(next) {
		return false
	}
	v.Verbatim = v.Text + ", " + next
	v.Text += "; " + next
	v.Doubt = v.Doubt.And(reading.QueryOf("recorder-in-next-cell", "“"+next+"” stands in the cell behind the recorder and was taken for a second one. Please check it.", v.Text))
	return true
}

// titleParts are the parts of a title between dashes, commas and brackets.
func titleParts(s string) []string {
	s = strings.NewReplacer(" - ", "\n", " – ", "\n", " — ", "\n", ", ", "\n", "; ", "\n", ": ", "\n", "(", "\n", ")", "\n", " | ", "\n").Replace(s)
	s = sentenceEnd.ReplaceAllString(s, "$1\n")
	if !strings.Contains(s, "\n") {
		return nil
	}
	return strings.Split(s, "\n")
}

// sentenceEnd is a full stop behind a word or a year, and behind no initial or
// short form: "Sallowmere 2020. Ines Calloway", not "I. Calloway", "St. Mary's".
var sentenceEnd = regexp.MustCompile(`([a-z]{4}|[0-9]{4})\. `)
