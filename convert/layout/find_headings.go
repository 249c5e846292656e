package layout

import "strings"

// valueWords stand in cells as often as in headings: they make no row a row of
// headings.
var valueWords = wordSet("adult adults larva larvae egg eggs pupa male female m f garden mv light trap moth butterfly bird night wood " +
	"lamp moths butterflies reserve female males females ♂ ♀ imago juv nymph parish town village present absent confirmed certain worker queen " +
	"e n x y d c l a insect plant bee bug fly beetle dragonfly mammal mine mines cases self station recorded caught seen photo visit p evening dark cloud rain wind details " +
	"sheet dead area height form oak section other total max min maximum minimum specimen specimens retained verified field")

// headingScore judges whether a row holds the headings of a list, and how many
// of its cells are words of the vocabulary.
func (p *page) headingScore(r *keptRow) (bool, int) {
	if r.n < 2 {
		return false, 0
	}
	plainData := 0
	for c := range r.looks {
		l := r.looks[c]
		switch {
		case l.is(lookYear): // may stand over the dates
		case l.is(lookDate | lookDay | lookRealDate | lookGrid | lookInt | lookDecimal | lookTime | lookBinomial | lookKnownTaxon | lookPair | lookDitto | lookLong):
			plainData++
		case strings.IndexByte(r.cells[c].Text, ':') > 0 && !l.is(lookMarked) && len(labelsIn(r.text(c))) > 0:
			plainData++ // a label with its value
		}
	}
	if plainData*5 > r.n {
		return false, 0
	}
	words, values, data, marked := 0, 0, 0, 0
	kinds := map[Meaning]bool{}
	var recognised []bool
	labels := 0 // a label with its value behind it
	for c := range r.cells {
		l := r.looks[c]
		if l == 0 {
			continue
		}
		text := r.text(c)
		if l.is(lookMarked) {
			marked++
		}
		ms := headingSenses(text, false)
		known := p.headingWord(ms, l, r.n)
		key := normHeading(text)
		switch {
		case known && valueWords[key]:
			values++
		case known:
			words++
			kinds[ms[0].meaning] = true
		case l.is(lookYear):
		case methodWord(text) && !strings.Contains(text, " "):
			values++
		case l.is(lookDate | lookDay | lookRealDate | lookGrid | lookInt | lookDecimal | lookTime | lookBinomial | lookKnownTaxon | lookPair | lookDitto | lookLong):
			data++
		}
		if n := len(recognised); n > 0 && recognised[n-1] && !known {
			labels++
		}
		recognised = append(recognised, known && !valueWords[key])
	}
	switch {
	case data*5 > r.n:
		return false, words
	case words >= 2 && r.n <= 2*labels+1 && r.n > words && labels >= words-1 && r.n <= 8 && recognised[0] && (marked > 0 || labels == words):
		return false, words // Site | Tinker's Row | Recorder | IC
	case marked > 0 && marked < r.n && marked >= words:
		return false, words
	case words >= 2 && len(kinds) >= 2 && words*2 >= r.n-values:
		return true, words
	case words >= 2 && words+values == r.n && data == 0:
		return true, words
	case words == 1 && values >= 1 && words+values == r.n && data == 0 && r.n >= 3:
		return true, words
	}
	return false, words
}

// headingWord: words of the vocabulary, and no value that happens to hold
// one: "Tinker's Row", "MV light trap".
func (p *page) headingWord(ms []match, l look, n int) bool {
	switch {
	case len(ms) == 0 || ms[0].weight < weightMisspelt:
		return false
	case ms[0].weight >= weightExact-5:
		return true
	case l.is(lookPlace | lookPerson | lookKnownTaxon | lookBinomial | lookGrid):
		return false
	}
	return n > 2 || ms[0].weight == weightMisspelt
}

// subHeadings reports whether a row next to a row of headings belongs to them:
// words or units and no data.
func (p *page) subHeadings(r *keptRow) bool {
	if r.n == 0 || r.struck {
		return false
	}
	words, data := 0, 0
	for c := range r.cells {
		l := r.looks[c]
		if l == 0 {
			continue
		}
		text := r.text(c)
		ms := headingSenses(text, false)
		switch {
		case l.is(lookKnownTaxon | lookBinomial), l.is(lookTaxon) && (len(ms) == 0 || ms[0].weight < weightExact-5):
			data++ // "Common Darter" is no common name
		case l.is(lookMarked), len(labelsIn(text)) > 0, l.is(lookPlace|lookPerson) && (len(ms) == 0 || ms[0].weight < weightExact-5):
			data++
		case isUnit(text), len(ms) > 0 && ms[0].weight >= weightMisspelt && !holdsGridRef(text) && (r.single() < 0 || ms[0].weight >= weightExact-5):
			words++
		case l.is(lookDate | lookDay | lookInt | lookDecimal | lookTime | lookTaxon | lookGroup | lookLong | lookGrid | lookMonth | lookYear | lookPair | lookDitto | lookTotal | lookPerson | lookMarked):
			data++
		}
	}
	return data == 0 && words > 0 && words*2 >= r.n
}

func holdsGridRef(text string) bool {
	a, _ := gridRefIn(text)
	return a >= 0 || scanGridRef(text)
}

// isUnit: "(°C)", "mm", "dd/mm/yyyy", "6 fig" below a heading.
func isUnit(s string) bool {
	if len(s) > 2 && s[0] == '(' && s[len(s)-1] == ')' {
		return true
	}
	switch normHeading(s) {
	case "mm", "cm", "metres", "dd mm yyyy", "dd mm yy", "d m y", "dmy", "°c", "deg c", "6 fig", "six fig", "8 fig", "4 fig", "hrs", "gmt", "bst", "hh mm", "%", "km", "watts", "text", "english", "latin", "yyyy", "dd", "mmm":
		return true
	}
	return false
}
