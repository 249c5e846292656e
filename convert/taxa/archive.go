package taxa

import (
	"fmt"
	"strings"

	"fieldfare/dwc"
)

// loadArchive reads a Darwin Core checklist archive: a core of taxa, and
// vernacular names in an extension. Columns are known by their terms.
func loadArchive(path, name string) (*List, []Problem, error) {
	a, err := dwc.OpenArchive(path)
	if err != nil {
		return nil, nil, fmt.Errorf("the taxon list %s cannot be read as a checklist archive: %w", name, err)
	}
	defer a.Close()
	headings := termNames(a.Core)
	for _, h := range headings {
		switch h {
		case "occurrenceID", "basisOfRecord", "eventDate", "eventID":
			return nil, nil, fmt.Errorf("the taxon list %s is an archive of records, not of taxa: its core has a column %s", name, h)
		}
	}
	cols, _, ok := recognise(headings)
	if !ok {
		return nil, nil, fmt.Errorf("the taxon list %s has no column scientificName in its core", name)
	}
	t := tableReader{b: newBuilder(name), cols: cols, found: true}
	hasID := false
	for _, f := range cols.of {
		hasID = hasID || f == fID
	}
	cells := make([]string, len(headings))
	for row, err := range a.Core.Rows() {
		if err != nil {
			return nil, nil, fmt.Errorf("the taxon list %s cannot be read: %w", name, err)
		}
		for i := range cells {
			cells[i] = row.Value(i)
		}
		for _, note := range row.Notes {
			t.b.problem(row.Line, nil, "%s", note)
		}
		t.readAs(row.Line, cells, map[bool]string{true: "", false: row.ID()}[hasID])
	}
	for _, e := range a.Extensions {
		if e.RowType() == dwc.RowVernacularName {
			if err := t.b.addVernaculars(e); err != nil {
				return nil, nil, fmt.Errorf("the taxon list %s cannot be read: %w", name, err)
			}
		}
	}
	l, problems := t.b.finish()
	if l.Len() == 0 {
		return nil, nil, fmt.Errorf("the taxon list %s has no names", name)
	}
	return l, problems, nil
}

func termNames(t *dwc.DataTable) []string {
	names := make([]string, len(t.Columns()))
	for i, c := range t.Columns() {
		names[i] = c.Term.Name
	}
	return names
}

// homeLanguages are those of names written in Britain and Ireland, as ISO 639
// codes and as lists write them; a name without a language counts.
var homeLanguages = wordSet("", "en", "eng", "english", "engb", "enus", "enie", "cy", "cym", "wel", "welsh", "ga", "gle", "irish", "gd", "gla", "gaelic", "scottishgaelic", "gv", "kw", "sco")

// addVernaculars takes the names of a vernacular-name extension. The first
// English name, or the one marked as preferred, becomes the taxon's.
func (b *builder) addVernaculars(t *dwc.DataTable) error {
	preferred := map[int32]bool{}
	for row, err := range t.Rows() {
		if err != nil {
			return err
		}
		text, language := tidy(row.Get("vernacularName")), key(row.Get("language"))
		if text == "" || !homeLanguages[language] {
			continue
		}
		r, known := b.ids.of(row.ID())
		if !known {
			b.problem(row.Line, nil, "The vernacular name “%s” belongs to the id “%s”, which is not on the list.", text, row.ID())
			continue
		}
		if r.synonym {
			b.synonyms[r.index].vernaculars = append(b.synonyms[r.index].vernaculars, text)
			continue
		}
		b.extra = append(b.extra, extraName{text, r.index, vernacularName})
		taxon := &b.list.taxa[r.index]
		english := language == "" || strings.HasPrefix(language, "en")
		first := yes(strings.ToLower(row.Get("isPreferredName")))
		if english && (taxon.Vernacular == "" || first && !preferred[r.index]) {
			taxon.Vernacular = text
			preferred[r.index] = first
		}
	}
	return nil
}
