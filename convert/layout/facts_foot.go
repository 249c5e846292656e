package layout

import (
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// footMeanings are what a line below a list may say of all of it. Dates there
// tell when the page was printed or checked.
var footMeanings = map[Meaning]bool{Recorder: true, Determiner: true, Site: true, GridRef: true, Method: true, ViceCounty: true}

// footFacts takes what the lines below the page's only list say of all its
// records, where nothing else says it: "All records from actinic trap at
// TL453812", "Recorded by Ines Calloway at Tinker's Row (TL453812)".
func (p *Plan) footFacts(b *block) {
	if !p.page.complete || len(p.blocks) != 1 || b.lastData == 0 || b.axis == nil && b.oneColumn() {
		return
	}
	for i := range b.sample {
		r := &b.sample[i]
		c := r.single()
		if r.number <= b.lastData || c < 0 || r.struck || r.looks[c].is(lookKnownTaxon|lookBinomial|lookTotal|lookGroup) {
			continue
		}
		text := r.text(c)
		sure := saysAll(text)
		if !sure && !isPlaceAndRef(p.page, text) {
			continue
		}
		var f facts
		f.read(p.page, r, FromPage)
		if how := methodIn(text); sure && how != "" && !f.has(Method) {
			f.set(Value{Meaning: Method, Text: how, Verbatim: text, Kind: notebook.Text, Ref: cellRef(c, r.number), From: FromPage})
		}
		taken := false
		for _, v := range f.values {
			place := v.Meaning == Site || v.Meaning == GridRef
			if v.Meaning == Method && (b.find(Method, whole) != nil || b.axis != nil && b.axis.means[Method]) {
				continue
			}
			if !footMeanings[v.Meaning] || b.facts.has(v.Meaning) || place && b.placed() || v.Meaning == GridRef && b.facts.has(Site) && !taken {
				continue
			}
			if !sure && v.Meaning == GridRef {
				v.Doubt = v.Doubt.And(reading.QueryOf("fact-below-list", "“"+v.Text+"” stands below the list only and was taken for all its rows. Please check it.", v.Text))
			}
			b.facts.values = append(b.facts.values, v)
			taken = true
		}
		if !taken {
			continue
		}
		used := make([]bool, len(r.cells))
		for j := range used {
			used[j] = r.looks[j] != 0
		}
		p.fixed = append(p.fixed, fixedRow{number: r.number, skip: skipTitle, used: used})
	}
}

// placed reports whether rows or columns of the block name places themselves.
func (b *block) placed() bool {
	if b.axis != nil && (b.axis.means[Site] || b.axis.means[GridRef]) {
		return true
	}
	for _, m := range [...]Meaning{Site, GridRef, Latitude} {
		if b.find(m, whole) != nil {
			return true
		}
	}
	return false
}

// saysAll reports whether a line below a list plainly speaks of the whole of
// it: of all records, or of who recorded them.
func saysAll(text string) bool {
	low := strings.ToLower(text)
	for _, w := range [...]string{"except", "apart from", "unless", "not ", "also", "but ", "other", "thank"} {
		if strings.Contains(low, w) {
			return false
		}
	}
	for _, w := range [...]string{"all ", "caught ", "trapped ", "recorded "} {
		if strings.HasPrefix(low, w) {
			return true
		}
	}
	if who, at, _ := whoIn(text); who != "" && at == 0 {
		return true
	}
	for _, l := range labelsIn(text) {
		if footMeanings[l.meaning] {
			return true
		}
	}
	return false
}

// isPlaceAndRef: a place with its grid reference and nothing else.
func isPlaceAndRef(p *page, text string) bool {
	a, b := gridRefIn(text)
	if a < 0 {
		return false
	}
	rest := trim(strings.Trim(text[:a]+" "+text[b:], " .,;:()-–"))
	return looksPlace(rest) || p.eyes.probe.KnownPlace(rest)
}
