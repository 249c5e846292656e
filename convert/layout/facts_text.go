package layout

import (
	"cmp"
	"regexp"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// readText takes the facts of one cell of a title or note: labels with their
// values ("Site: Tinker's Row  Recorder: I. Calloway"), a grid reference, a
// date, a year, a place.
func (f *facts) readText(p *page, text string, ref notebook.Ref, from Origin, cell *notebook.Cell) bool {
	if rest := withoutKey(text); rest != text {
		if rest != "" {
			f.readText(p, rest, ref, from, nil)
		}
		return true
	}
	if labels := labelsIn(text); len(labels) > 0 {
		for i, l := range labels {
			end := len(text)
			if i+1 < len(labels) {
				end = labels[i+1].from
			}
			f.add(p, l.sense, cell, text[l.to:end], text[l.from:l.to], ref, from)
		}
		if labels[0].from > 3 {
			f.title(p, trim(text[:labels[0].from]), ref, from)
		}
		return true
	}
	if cell != nil && cell.Kind == notebook.Date && !isClock(cell.Raw) {
		f.set(Value{Meaning: Date, Text: text, Raw: cell.Raw, Kind: cell.Kind, Ref: ref, From: from})
		return true
	}
	switch scanDate(text) {
	case fullDate, dayMonth:
		f.date(Value{Meaning: Date, Text: text, Ref: ref, From: from})
		return true
	case monthOnly, monthYear, yearOnly:
		f.setMonth(text, from, originWords(from))
		return true
	}
	if day, rest := dayAndRest(text); day != "" {
		f.date(Value{Meaning: Date, Text: day, Verbatim: text, Ref: ref, From: from})
		if !f.title(p, rest, ref, from) && tellsWeather(rest) {
			f.set(Value{Meaning: Weather, Text: strings.TrimRight(rest, "."), Ref: ref, From: from})
		}
		return true
	}
	if parts := farApart(text); parts != nil {
		for _, part := range parts {
			f.readText(p, part, ref, from, nil)
		}
		return true
	}
	if s, value, ok := openingLabel(text); ok {
		f.add(p, s, nil, value, text[:len(text)-len(value)], ref, from)
		return true
	}
	return f.title(p, text, ref, from)
}

// farApart parts a line where three blanks or more stand between facts, one of
// which at least has a label: "Vice-county 29      Recorder T. Achterberg".
func farApart(text string) []string {
	parts := wideGap.Split(text, -1)
	if len(parts) < 2 {
		return nil
	}
	for _, part := range parts {
		if _, _, ok := openingLabel(part); ok {
			return parts
		}
	}
	return nil
}

var wideGap = regexp.MustCompile(`(?: {3,}|\t+)`)

type labelAt struct {
	sense
	from, to int // the label with its colon
}

// labelsIn finds the labels within a text: words of the vocabulary before a
// colon or an equals sign.
func labelsIn(text string) []labelAt {
	var out []labelAt
	start := 0
	for i := 0; i < len(text); i++ {
		if text[i] != ':' && text[i] != '=' {
			continue
		}
		if i+1 < len(text) && text[i] == ':' && isDigit(text[i+1]) && i > 0 && isDigit(text[i-1]) {
			continue // 22:45
		}
		words := text[start:i]
		best := -1
		at := len(words)
		for range 4 {
			at = strings.LastIndexAny(strings.TrimRight(words[:at], " "), " ,;|\t(\n") + 1
			if s := trim(words[at:]); s != "" {
				if _, ok := labelOf(s); ok && (sureLabel(s) || startsPart(words, at) && !strings.ContainsAny(s, "0123456789")) {
					best = at
				}
			}
			if at == 0 {
				break
			}
		}
		if best < 0 {
			if at := unknownLabel(words); at > 0 && len(out) > 0 {
				out = append(out, labelAt{sense{meaning: Ignored}, start + at, i + 1})
				start = i + 1
			}
			continue
		}
		s, _ := labelOf(trim(words[best:]))
		out = append(out, labelAt{s, start + best, i + 1})
		start = i + 1
	}
	if len(out) == 0 { // Site - Tinker's Row
		for _, dash := range [...]string{" - ", " – ", " — "} {
			if label, value, ok := strings.Cut(text, dash); ok && trim(value) != "" {
				if ss := vocabulary[normHeading(label)]; len(ss) > 0 && factMeanings[ss[0].meaning] {
					return []labelAt{{ss[0], 0, len(label) + len(dash)}}
				}
			}
		}
	}
	return out
}

// sureLabel: a phrase of the vocabulary by itself.
func sureLabel(s string) bool {
	ms := headingSenses(s, false)
	return len(ms) > 0 && (ms[0].weight >= weightExact-5 || ms[0].weight == weightMisspelt) && !strings.ContainsAny(s, "0123456789")
}

// startsPart reports whether a place in a text is its start, or behind a gap
// or a mark.
func startsPart(s string, at int) bool {
	before := strings.TrimRight(s[:at], " ")
	return before == "" || strings.HasSuffix(s[:at], "  ") || strings.ContainsAny(before[len(before)-1:], ",;|\t(\n")
}

// unknownLabel finds where a label that is no word of the vocabulary begins:
// behind a gap or a mark, and of three words at most. 0 is none.
func unknownLabel(words string) int {
	at := max(strings.LastIndex(words, "  "), strings.LastIndexAny(words, ",;|\t"))
	if at < 0 || strings.Count(trim(words[at+1:]), " ") > 2 {
		return 0
	}
	return at + 1
}

// openingWords may stand before a value without a colon: "Recorder Ines
// Calloway".
var openingWords = map[string]Meaning{"recorder": Recorder, "recorders": Recorder, "recorded by": Recorder, "observer": Recorder, "observers": Recorder,
	"site": Site, "locality": Site, "grid ref": GridRef, "grid reference": GridRef, "determined by": Determiner, "det by": Determiner,
	"vc": ViceCounty, "vice county": ViceCounty, "location": Site, "method": Method, "trap": Method, "lamp": Method, "ngr": GridRef, "det": Determiner, "by": Recorder,
	"compiled by": Recorder, "records of": Recorder, "identified by": Determiner}

func openingLabel(text string) (sense, string, bool) {
	words := strings.Fields(text)
	for n := min(2, len(words)-1); n >= 1; n-- {
		key := normHeading(strings.Join(words[:n], " "))
		m, ok := openingWords[key]
		if !ok || len(words)-n > 6 {
			continue
		}
		value := strings.Join(words[n:], " ")
		if m == Recorder && strings.Contains(value, ", ") {
			continue // people, or a person and a place
		}
		if c := value[0]; c < 'A' || c > 'Z' && c < 0x80 {
			if m != ViceCounty && !(m == Method && (isDigit(c) || methodWord(value))) {
				continue
			}
		}
		if at := strings.Index(text, words[n]); at >= 0 {
			return sense{meaning: m}, text[at:], true
		}
	}
	return sense{}, "", false
}

// titleWords end the name of a place in a title: "Sallowmere Reserve moth
// records 2014".
var titleWords = wordSet("moth moths record records recording list lists trap traps trapping light sightings sighting data notebook season survey " +
	"surveys count counts butterfly butterflies species night nights year years annual report log diary results insect insects dragonfly " +
	"dragonflies bees birds bats mammals plants fungi summary totals weekly monthly daily catches catch total wildlife all notes sheet page book transect garden-moths fauna mv actinic " +
	"january february march april may june july august september october november december")

// title takes what a title says in passing: a grid reference, a year, a place,
// a recorder after "by".
func (f *facts) title(p *page, text string, ref notebook.Ref, from Origin) bool {
	said := false
	rest, beside := text, ""
	v := Value{Ref: ref, From: from}
	if len(text) > 120 {
		return false
	}
	if a, b := gridRefIn(rest); a >= 0 || scanGridRef(rest) && p.eyes.lookText(rest).is(lookGrid) {
		if a < 0 {
			a, b = 0, len(rest)
		}
		g := v
		g.Meaning, g.Text = GridRef, rest[a:b]
		if a > 0 || b < len(rest) {
			g.Verbatim = text
		}
		beside = besideRef(rest[:a])
		rest = trim(strings.Trim(rest[:a]+" "+rest[b:], " ,;-–()[]|"))
		defer f.set(g) // after the site, which would take it away
		said = true
	}
	if left, ok := f.interval(rest, v); ok {
		rest, said = left, true
	} else if day, raw := dateInTitle(rest); day != "" {
		w := v
		w.Meaning, w.Text, w.Verbatim = Date, day, text
		f.set(w)
		rest = trim(strings.Trim(strings.Replace(rest, raw, ", ", 1), ", "))
		said = true
	}
	if y, at, end := winterIn(rest); y > 0 {
		f.winter = y
		rest = trim(rest[:at] + " " + rest[end:])
		said = true
	} else if y := yearIn(sinceYear.ReplaceAllString(rest, " ")); y > 0 {
		f.year, f.yearFrom, f.yearSaid = y, from, originWords(from)
		if m := monthIn(rest); m > 0 && (m != 5 && m != 3 || strings.Contains(rest, monthTitles[m]+" "+itoa(y))) {
			f.month, f.monthFrom, f.monthSaid = m, from, originWords(from)
		}
		said = true
	}
	if who, from, to := namedBehind(detWords, rest); who != "" && isNamed(p, who) {
		w := v
		w.Meaning, w.Text, w.Verbatim = Determiner, who, text
		f.set(w)
		rest = trim(strings.Trim(rest[:from]+" , "+strings.TrimLeft(rest[to:], " ,;."), " ,;"))
		said = true
	}
	if who, from, to := whoIn(rest); who != "" {
		who, to = who+rest[to:to+peopleAhead(p, rest[to:])], to+peopleAhead(p, rest[to:])
		w := v
		w.Meaning, w.Text, w.Verbatim = Recorder, who, text
		f.set(w)
		rest = strings.TrimPrefix(trim(strings.Trim(rest[:from]+" , "+strings.TrimLeft(rest[to:], " ,;."), " ,;")), "at ")
		said = true
	} else if i := strings.LastIndex(strings.ToLower(rest), " by "); i > 0 && !byOther(rest[:i]) {
		who := trim(strings.Trim(cutYear(upToSmall(rest[i+4:])), " ,;.-()"))
		if who != "" && who[0] >= 'A' && who[0] <= 'Z' && strings.Count(who, " ") <= 4 {
			w := v
			w.Meaning, w.Text, w.Verbatim = Recorder, who, text
			f.set(w)
			rest = trim(rest[:i])
			said = true
		}
	}
	who := personIn(p, rest)
	if who == "" && f.has(Date) && isNamed(p, rest) && !namesSpecies(p, rest) {
		who = rest // "16 June 2021, Tom Achterberg", but no Ruby Tiger
	}
	if who = cmp.Or(withCompany(p, rest, who), initialsBesideDay(text)); who != "" && !f.has(Recorder) {
		w := v
		w.Meaning, w.Text, w.Verbatim = Recorder, who, text
		f.set(w)
		rest = trim(strings.Replace(strings.Replace(rest, who, " ", 1), "( )", " ", 1))
		said = true
	}
	if how := methodIn(text); how != "" {
		w := v
		w.Meaning, w.Text, w.Verbatim = Method, how, text
		f.set(w)
		said = true
	}
	if !said && rest == text && strings.HasSuffix(rest, "idae") && isGroupName(rest) { // a family over the first of several lists
		w := v
		w.Meaning, w.Text = Group, rest
		f.set(w)
		return true
	}
	if !said && rest == text && namesSpecies(p, rest) {
		w := v
		w.Meaning, w.Text = Taxon, rest
		f.set(w)
		return true
	}
	if !said && rest == text && (isInitialSurname(withoutHonorific(rest)) || isFullName(rest) || isInitials(rest) && strings.Contains(rest, ".") || p.eyes.probe.KnownPerson(rest)) {
		w := v
		w.Meaning, w.Text = Recorder, rest
		f.set(w)
		return true
	}
	rest = placePart(p, rest)
	site, sure := placeInTitle(p, rest)
	if site == "" {
		for _, part := range titleParts(rest) {
			if site, sure = placeInTitle(p, part); site != "" {
				break
			}
		}
	}
	if site == "" && from == FromPage && !f.has(Site) && said {
		site = bareSite(p, rest)
		if parts := titleParts(rest); site == "" && len(parts) > 1 {
			for _, part := range parts {
				if site = bareSite(p, part); site != "" {
					break
				}
			}
		}
	}
	if site == "" && beside != "" && !isPerson(beside) && !namesSpecies(p, beside) && !p.eyes.probe.KnownPerson(beside) {
		site = beside
	}
	if site = bareOfWords(site); site != "" {
		w := v
		w.Meaning, w.Text = Site, site
		if site != text {
			w.Verbatim = text
		}
		if !sure {
			w.Doubt = reading.QueryOf("site-from-title", "The site “"+site+"” was taken from “"+text+"”, as the page names no other. Please check it.", site)
		}
		f.set(w)
		said = true
	}
	return said
}

// bareOfWords cuts off a place what a title has put round its name: "Orchids
// of Fen Meadow", "Fen Meadow on".
func bareOfWords(site string) string {
	if before, place, ok := strings.Cut(site, " of "); ok && looksPlace(place) && !looksPlace(before) && place[0] >= 'A' && place[0] <= 'Z' && strings.HasSuffix(before, "s") {
		site = place
	}
	for {
		last := lastWord(site)
		switch strings.ToLower(last) {
		case "on", "in", "at", "of", "by", "from", "for", "with", "and", "the", "near":
			site = trim(strings.TrimSuffix(site, last))
			continue
		}
		break
	}
	if strings.Count(site, "(") != strings.Count(site, ")") {
		site, _, _ = strings.Cut(site, "(")
	}
	return trim(strings.Trim(site, " ,;:-–"))
}

// sinceYear is a year that says when something began or ended, and of no
// record: "kept since 1992", "est. 1987".
var sinceYear = regexp.MustCompile(`(?i)\b(?:since|est\.?|established|founded|begun|began|started|after|before|until|till|born)(?: in)? (?:18|19|20)[0-9]{2}\b`)

// besideRef is the place named directly before a reference in a title:
// "Withy Holt" of "Withy Holt (TL4587) 2014". It begins with a capital and
// holds no word of the trade.
func besideRef(before string) string {
	before = strings.TrimRight(before, " ,;-–([|@")
	if i := strings.LastIndexAny(before, ",;:|("); i >= 0 {
		before = before[i+1:]
	}
	for _, dash := range [...]string{" - ", " – ", " — ", " at ", " from "} {
		if i := strings.LastIndex(before, dash); i >= 0 {
			before = before[i+len(dash):]
		}
	}
	name := behindTitleWords(cutYear(before))
	if name == "" || name[0] < 'A' || name[0] > 'Z' || len(name) < 3 || strings.Count(name, " ") > 4 || upToTitleWord(name) != name || strings.ContainsAny(name, "0123456789.") {
		return ""
	}
	if isGroupName(name) || len(vocabulary[normHeading(name)]) > 0 {
		return ""
	}
	return name
}

// behindTitleWords drops the words that say what a page is from before a
// place: "Garden trap Tinker's Row".
func behindTitleWords(text string) string {
	words := strings.Fields(text)
	for i := len(words) - 1; i >= 0; i-- {
		if w := strings.ToLower(strings.Trim(words[i], ".,;:()-–")); titleWords[w] || methodWord(w) {
			words = words[i+1:]
			break
		}
	}
	return strings.Join(words, " ")
}

// dateInTitle finds a full date among the words of a title.
func dateInTitle(s string) (day, raw string) {
	words := strings.Fields(s)
	for n := min(5, len(words)); n >= 1; n-- {
		for i := 0; i+n <= len(words); i++ {
			t := strings.Join(words[i:i+n], " ")
			bare := strings.Trim(t, ",;:()-–")
			if last := lastWord(bare); !strings.ContainsAny(last, "0123456789") && monthOf(strings.Trim(last, ".,)")) == 0 {
				continue // "6 Aug 2011 - T."
			}
			if i+n > 1 && n > 1 && isTimeOnly(lastWord(bare)) {
				continue // "6.1.2018 - 9.30"
			}
			if scanDate(bare) == fullDate && (isDigit(bare[0]) || monthOf(firstWord(bare)) > 0 || isWeekday(strings.ToLower(firstWord(bare)))) {
				return bare, t
			}
		}
	}
	return "", ""
}

// cutYear drops years and the brackets round them.
func cutYear(s string) string {
	var out []string
	for w := range strings.FieldsSeq(s) {
		bare := strings.Trim(w, "()[],.;:-–")
		if n, ok := isInt(bare); ok && len(bare) == 4 && n >= 1800 && n <= 2100 {
			continue
		}
		out = append(out, w)
	}
	return strings.Join(out, " ")
}

// placeInTitle finds a place in a title, and says whether that is sure.
func placeInTitle(p *page, text string) (string, bool) {
	text = trim(strings.Trim(cutYear(text), " ,;:-–()"))
	if text == "" || len(text) > 90 {
		return "", false
	}
	if p.eyes.probe.KnownPlace(text) {
		return text, true
	}
	low := strings.ToLower(text)
	for _, prep := range [...]string{" at ", " from ", " for ", " in "} {
		i := strings.LastIndex(low, prep)
		if i < 0 {
			continue
		}
		place := upToTitleWord(text[i+len(prep):])
		place = trim(strings.TrimPrefix(place, "the "))
		if place == "" || place[0] < 'A' || place[0] > 'Z' || strings.Count(place, " ") > 5 {
			continue
		}
		if p.eyes.probe.KnownPlace(place) || looksPlace(place) {
			return place, true
		}
		if prep == " at " && monthOf(place) == 0 {
			return place, false
		}
	}
	head := upToTitleWord(text)
	for head != text && looksPlace(head) { // Heron Pool wetland birds
		last := lastWord(head)
		if last[0] < 'a' || last[0] > 'z' || placeWords[last] || last == head || strings.HasSuffix(last, ")") {
			break
		}
		head = trim(strings.TrimSuffix(head, last))
	}
	if head == "" || head[0] < 'A' || head[0] > 'Z' || strings.Count(head, " ") > 4 {
		return "", false
	}
	if p.eyes.probe.KnownPlace(head) {
		return head, true
	}
	if looksPlace(head) && !strings.ContainsAny(head, ".!?=") && capitals(head) >= 2 {
		return head, true
	}
	return "", false
}

// capitals counts the words that begin with a capital.
func capitals(s string) int {
	n := 0
	for w := range strings.FieldsSeq(s) {
		if w[0] >= 'A' && w[0] <= 'Z' {
			n++
		}
	}
	return n
}

func upToTitleWord(s string) string {
	var out []string
	for w := range strings.FieldsSeq(s) {
		bare := strings.ToLower(strings.Trim(w, ".,;:()-–"))
		if titleWords[bare] || bare == "by" || bare == "–" || bare == "-" || bare == "" {
			break
		}
		out = append(out, w)
		if strings.HasSuffix(w, ",") || strings.HasSuffix(w, ":") || strings.HasSuffix(w, ";") {
			break
		}
	}
	return trim(strings.Trim(strings.Join(out, " "), " ,;:-–()"))
}
