package layout

import "strings"

// bareSite is the place of a title that holds nothing but a name and what else
// has been taken from it: "Sallowmere 1990".
func bareSite(p *page, text string) string {
	name := trim(strings.Trim(cutYear(text), " ,;:-–()"))
	words := strings.Fields(name)
	if len(words) == 0 || len(words) > 3 || strings.ContainsAny(name, "0123456789.,;:()/&?!=") || capitals(name) < len(words) || len(name) < 4 {
		return ""
	}
	for _, w := range words {
		low := strings.ToLower(w)
		if titleWords[low] || genericWords[low] || groupWords[low] || groupTotals[low] || seasons[low] || monthOf(w) > 0 || methodWord(w) || isWeekday(low) {
			return ""
		}
	}
	if len(vocabulary[normHeading(name)]) > 0 || isTotalWord(name) || isGroupName(name) || isPerson(name) || p.eyes.probe.KnownPerson(name) || namesSpecies(p, name) || p.eyes.lookText(name).is(lookTaxon) {
		return ""
	}
	return name
}

// placePart cuts off what a title says beside its place: "Tinker's Row garden"
// of "Tinker's Row garden, - 15W actinic Skinner, dusk to dawn". A part stays
// where it may belong to the name: "Sallowmere, Carr Edge".
func placePart(p *page, title string) string {
	if !p.eyes.probe.KnownPlace(title) {
		return title
	}
	var at, end []int // the parts
	for _, part := range titleParts(title) {
		from := 0
		if len(end) > 0 {
			from = end[len(end)-1]
		}
		i := from + strings.Index(title[from:], part)
		at, end = append(at, i), append(end, i+len(part))
	}
	first, last := 0, len(at)-1
	for first < last && besidePlace(p, title[at[first]:end[first]]) && p.eyes.probe.KnownPlace(title[at[first+1]:end[last]]) {
		first++
	}
	for first < last && besidePlace(p, title[at[last]:end[last]]) && p.eyes.probe.KnownPlace(title[at[first]:end[last-1]]) {
		last--
	}
	if len(at) == 0 {
		return title
	}
	return title[at[first]:end[last]]
}

// besidePlace: a part of a title that is no part of a place's name.
func besidePlace(p *page, part string) bool {
	part = trim(strings.Trim(cutYear(part), " ,;:-–.()"))
	if part == "" || part[0] >= 'a' && part[0] <= 'z' || methodIn(part) != "" || monthOf(part) > 0 || tellsWeather(part) {
		return true
	}
	if titleWords[strings.ToLower(firstWord(part))] || p.eyes.probe.KnownPerson(part) || isInitialSurname(part) {
		return true
	}
	return isDigit(part[0]) && methodWord(lastWord(part))
}
