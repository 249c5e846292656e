package layout

import (
	"slices"
	"strings"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// lost asks about a row that is left out as a title, a note or a sum, but
// reads like a record, or like the headings of a further table.
func (w *walker) lost(r *notebook.Row) {
	if w.cells == 0 || len(w.out.Drafts) > 0 {
		return
	}
	switch w.out.Skip {
	case skipTitle, skipNote, skipOutside, skipTotal, skipHeadings:
	default:
		return
	}
	k := w.p.page.view(r)
	if w.p.page.factLine(&k) {
		return
	}
	if c := k.single(); c >= 0 {
		if said := k.text(c); w.out.Used == 0 && w.out.Skip != skipTotal && w.p.page.eyes.countsSpecies(said) {
			w.out.Notes = append(w.out.Notes, Note{Verdict: reading.QueryOf("species-in-a-line",
				"This line names species with counts but is no row of a list, and is left out: “"+said+"”. If it holds records, please write them as rows of the list."), Ref: cellRef(c, r.Number), Text: said})
		}
		return
	}
	names, counts, days := 0, 0, 0
	for c := range k.looks {
		switch l := k.looks[c]; {
		case l.is(lookDate | lookDay | lookRealDate):
			days++
		case l.is(lookKnownTaxon | lookBinomial), l.is(lookTaxon) && !l.is(lookPlace|lookLong|lookTotal):
			names++
		case l.is(lookInt | lookTick):
			counts++
		}
	}
	code, message := "", ""
	switch {
	case w.out.Skip == skipTotal && days > 0 && days == k.n-1:
		code, message = "headings-taken-for-sum", "This row begins like a row of sums, but goes on with dates. If it heads a further table, leave a blank row above it and write “Species” at its left."
	case w.out.Skip != skipTotal && names == 1 && counts > 0:
		code, message = "record-left-out", "This row reads like a record, with a name and a count, but stands outside the lists and tables that were found, so it is left out. If it is one, give its list a row of headings."
	default:
		return
	}
	w.out.Notes = append(w.out.Notes, Note{Verdict: reading.QueryOf(code, message), Ref: cellRef(k.first, r.Number), Text: "(rows left out as " + w.out.Skip + ")"})
}

// countsSpecies reports whether a line names species with counts in passing:
// "Also 3 Heart and Dart and a Flame on the wall".
func (e eyes) countsSpecies(text string) bool {
	if len(text) > 2000 {
		return false
	}
	words := strings.Fields(text)
	for i, w := range words {
		if n, ok := isInt(w); ok && n < 1000 && e.namesNext(words[i+1:]) {
			return true
		}
	}
	items, _ := e.itemsIn(text)
	return slices.ContainsFunc(items, func(it item) bool { return it.count != "" && e.lookText(it.name).is(lookTaxon) })
}

// namesNext reports whether words begin with the name of a species: a known
// one, or two words and more that are written like one.
func (e eyes) namesNext(words []string) bool {
	for n := 1; n <= min(5, len(words)); n++ {
		l := e.lookText(strings.TrimRight(strings.Join(words[:n], " "), ",;.:)"))
		if l.is(lookKnownTaxon) || n > 1 && l.is(lookTaxon) && !l.is(lookPlace) {
			return true
		}
	}
	return false
}
