package layout

import "strings"

// namesSpecies reports whether a line by itself names the species that the
// rows below it are of: a diary kept species by species.
func namesSpecies(p *page, text string) bool {
	l := p.eyes.lookText(text)
	if !l.is(lookTaxon) || l.is(lookGroup|lookLong|lookTotal) {
		return false
	}
	if strings.Contains(text, " at ") || strings.Contains(text, " from ") { // "Butterflies at Sallowmere Reserve"
		return false
	}
	if l.is(lookKnownTaxon) {
		return true
	}
	site, _ := placeInTitle(p, text)
	return site == "" && (l.is(lookBinomial) || !l.is(lookPlace)) && upToTitleWord(text) == text
}

// dropSpecies forgets a species named alone on a line, where the rows name
// their own.
func (f *facts) dropSpecies() {
	if v := f.get(Taxon); v != nil && v.Heading == "" && (v.From == FromPage || v.From == FromSection) {
		f.drop(Taxon)
	}
}
