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
