package taxa

import "fieldfare/convert/reading"

// byKind weighs a word for a group that stands behind a name as a note. It
// chooses between taxa that share the name: "Brimstone (moth)"; and a name of
// something else is not taken: a "Magpie (bird)" is no moth.
func (r *resolver) byKind(o outcome, s string, toks []token, t *tail) outcome {
	for _, note := range t.notes {
		words := tokenize(note)
		if len(words) != 1 || words[0].kind != wordToken {
			continue
		}
		kind := groupOf(words[0].text, func(string) bool { return false })
		if !kind.understood() {
			continue
		}
		if o.taxon == none {
			if o.verdict.Code != CodeAmbiguous {
				return o
			}
			with := *r
			with.group, with.groupText = kind, words[0].text
			p, ok := with.exactTokens(s, toks)
			if !ok {
				p, ok = with.vernacularVariant(s, toks)
			}
			if ok && p.taxon != none && kind.has(r.ix.taxa[p.taxon]) {
				r.step("%s chooses between those that share the name.", quoted(note))
				p.verdict.Message = ""
				p.and(fair("", "%s was taken for %s, the %s of that name.", quoted(s), r.ix.taxa[p.taxon], words[0].key))
				return p
			}
			return o
		}
		if taxon := r.ix.taxa[o.taxon]; taxon.placed() && !kind.has(taxon) {
			h := held(CodeNotListed, "%s is said to be a %s, but the list has the name for %s only.", quoted(s), words[0].key, taxon.ScientificName)
			h.cands = []int32{o.taxon}
			return h
		}
	}
	return o
}

// placed reports whether the list says what the taxon belongs to.
func (t *Taxon) placed() bool {
	return t.Order != "" || t.Family != "" || t.Class != "" || t.Group != ""
}

// selfDoubting are vernacular names that are words of doubt as well.
var selfDoubting = map[string]bool{"uncertain": true, "suspected": true, "confused": true, "anomalous": true}

// wordOfDoubt asks about a name that, in small letters, may be no name.
func (r *resolver) wordOfDoubt(o outcome, s string) outcome {
	if selfDoubting[s] && o.taxon != none && o.state() == reading.Fair {
		o.and(query(CodeNoteDoubt, "%s was read as the name of %s. Say if it only means that the name is not certain.", quoted(s), r.ix.taxa[o.taxon].ScientificName))
	}
	return o
}
