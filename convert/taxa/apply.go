package taxa

import (
	"strings"
)

// applyTail gives a name that is read what its tail says.
func (r *resolver) applyTail(o outcome, s string, toks []token, t *tail) outcome {
	o.rest = append(o.rest, t.notes...)
	if o.taxon == none {
		return r.applySecond(o, s, t)
	}
	ix := r.ix
	if len(t.author) > 0 {
		r.checkAuthor(&o, authorshipOf(t.author), strings.TrimSpace(joinText(t.author)))
	}
	if t.second != nil {
		o = r.applySecond(o, s, t)
		if o.taxon == none {
			return o
		}
	}
	if t.other != nil && t.other.taxon != o.taxon {
		if p, ok := r.joinSides(s, nil, []outcome{o, *t.other}); ok {
			return p
		}
	}
	if t.agg != "" {
		o = r.toAggregate(o, t.agg, written(s, toks))
	}
	if t.infra != "" {
		r.applyInfra(&o, t)
	}
	switch {
	case t.doubt != "":
		o = r.doubted(o, t.doubt, t.doubtText, false)
	case t.open != "" && ix.taxa[o.taxon].IsSpeciesOrBelow():
		// "Rustic sp.": one of several that share the word, not this one.
		taxon := ix.taxa[o.taxon]
		r.step("%s behind the name of a species leaves open which of its kin is meant.", quoted(t.open))
		h := held(CodeAmbiguous, "%s leaves the species open, though %s is the name of one, %s.", quoted(s), quoted(written(s, toks)), taxon)
		if up, _ := r.sharedEnding(vernacularWords(written(s, toks))); up != none {
			h.cands = append(h.cands, up)
		}
		if int(o.taxon) < len(ix.parents) && ix.parents[o.taxon] != none && ix.taxa[ix.parents[o.taxon]].Rank == RankAggregate {
			h.cands = append(h.cands, ix.parents[o.taxon])
		}
		if g := ix.above(taxon, RankGenus); g != none {
			h.cands = append(h.cands, g)
		}
		h.cands = append(h.cands, o.taxon)
		h.rest = o.rest
		return h
	case t.open != "":
		taxon := ix.taxa[o.taxon]
		o.qualifier = t.open
		r.step("%s leaves the species open: %s is the rank that is certain.", quoted(t.open), taxon.Rank)
		o.and(fair("", "%s was read as the %s %s.", quoted(s), taxon.Rank, taxon.ScientificName))
	}
	if t.strict != "" {
		o.remark("Recorded %s.", t.strict)
	}
	if t.noteDoubt && t.doubt == "" {
		o.and(query(CodeNoteDoubt, "%s was read as %s, but the note with it seems to doubt that. Say whether the name holds.", quoted(s), ix.taxa[o.taxon]))
	}
	return o
}

func joinText(toks []token) string {
	var b strings.Builder
	for i := range toks {
		if i > 0 && !isYearToken(&toks[i]) {
			b.WriteByte(' ')
		} else if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(toks[i].text)
	}
	return b.String()
}

// checkAuthor compares the author as written with the list's.
func (r *resolver) checkAuthor(o *outcome, a authorship, text string) {
	t := r.ix.taxa[o.taxon]
	if t.Authorship == "" || o.name == none || r.ix.names[o.name].kind != acceptedName {
		return // the list has no author of the name that was written
	}
	if listed := parseAuthorship(t.Authorship); !a.agrees(listed) {
		r.step("The author %s is not the list's, %s.", quoted(text), t.Authorship)
		o.and(query(CodeAuthor, "%s is by %s on the list, but %s was written. Say whether the same taxon was meant.", t.ScientificName, t.Authorship, quoted(text)))
	}
}

// applySecond weighs two names in one cell.
func (r *resolver) applySecond(o outcome, s string, t *tail) outcome {
	if t.second == nil {
		return o
	}
	a, b := o.taxon, t.second.taxon
	switch {
	case b == none:
		return o
	case a == none:
		for _, c := range o.cands {
			if c == b {
				r.step("The other name decides: %s.", r.ix.taxa[b])
				second := *t.second
				second.rest = append(second.rest, o.rest...)
				return second
			}
		}
		return disagree(s, o.cands, b)
	case a == b:
		r.step("Both names are those of %s.", r.ix.taxa[a])
		o.remarks = append(o.remarks, t.second.remarks...)
		return o
	case r.within(a, b):
		return o
	case r.within(b, a):
		second := *t.second
		second.rest = append(second.rest, o.rest...)
		return second
	}
	return disagree(s, []int32{a}, b)
}

func disagree(s string, a []int32, b int32) outcome {
	o := held(CodeNames, "%s has two names that are not the same taxon.", quoted(s))
	o.cands = append(append(o.cands, a...), b)
	return o
}

// within reports whether taxon a is part of taxon b.
func (r *resolver) within(a, b int32) bool {
	ta, tb := r.ix.taxa[a], r.ix.taxa[b]
	if int(a) < len(r.ix.parents) && r.ix.parents[a] == b {
		return true
	}
	if s := ta.slot(tb.Rank); s != nil && a != b && strings.EqualFold(*s, tb.ScientificName) {
		return true
	}
	return strings.HasPrefix(ta.ScientificName, tb.ScientificName+" ") && ta.Rank != tb.Rank && tb.Rank == RankSpecies
}

// applyInfra reads a subspecies, form or aberration: the list's, or else the
// species with the words kept.
func (r *resolver) applyInfra(o *outcome, t *tail) {
	taxon := r.ix.taxa[o.taxon]
	k := key(t.infra)
	if g, there := r.ix.genera[key(taxon.Genus)]; there {
		for i := g.first; i < g.end; i++ {
			e := &r.ix.sci[i]
			n := &r.ix.names[e.name]
			if e.infra != "" && n.taxon != none && sameButForEnding(e.infra, k) && sameButForEnding(e.epithet, key(taxon.SpecificEpithet())) {
				o.taxon, o.name = n.taxon, e.name
				r.step("%s is on the list.", quoted(n.text))
				return
			}
		}
	}
	if k == key(taxon.SpecificEpithet()) {
		r.step("The subspecies with the name of the species itself is not on the list: read as the species.")
		o.remark("Recorded as the nominate subspecies.")
		return
	}
	words := strings.TrimSpace(t.marker + " " + t.infra)
	if t.marker == "" {
		o.and(query(CodeInfra, "%s was read as the species; its third word, %s, is not on the list. Say if another taxon was meant.", taxon, quoted(words)))
	} else {
		o.and(fair(CodeInfra, "%s is not on the list; %s was taken, and the words are kept in the remarks.", quoted(words), taxon))
	}
	r.step("%s is not on the list: read as the species, words kept.", quoted(words))
	o.remark("Recorded as %s %s.", taxon.ScientificName, words)
}

// doubted lifts a name to the rank that is certain. Before a scientific name
// the doubt is about the genus too, behind it about its last part.
func (r *resolver) doubted(o outcome, mark, text string, before bool) outcome {
	ix := r.ix
	t := ix.taxa[o.taxon]
	subject := text
	rank := RankGenus
	switch {
	case text != "" && !t.IsSpeciesOrBelow():
		// "Noctua cf. pronuba": the genus is certain as it stands
		o.qualifier = mark + " " + subject
		o.and(fair("", "%s leaves the species open; %s was taken as certain.", quoted(o.qualifier), t.ScientificName))
		return o
	case text != "" && t.Rank == RankSpecies && !r.inGenus(t, text):
		// "Papilio machaon cf. gorganus": the species is certain
		o.qualifier = mark + " " + subject
		o.and(fair("", "%s was doubted; %s was taken as certain.", quoted(text), t.ScientificName))
		return o
	case t.InfraspecificEpithet() != "" && !before:
		rank, subject = RankSpecies, t.InfraspecificEpithet()
	case t.IsSpeciesOrBelow() && !before:
		subject = t.SpecificEpithet()
	case t.Rank == RankAggregate && !before:
		subject = strings.TrimPrefix(t.ScientificName, t.Genus+" ")
	default:
		subject = t.ScientificName
		rank = RankFamily
		if t.Rank == RankFamily {
			rank = RankOrder
		}
	}
	up := none
	for _, try := range [...]string{rank, RankFamily, RankOrder, "class", "phylum", "kingdom"} {
		if try == RankSpecies {
			if at, ok := ix.named(key(t.Genus + t.SpecificEpithet())); ok {
				up = ix.names[at].taxon
			}
		} else {
			up = ix.above(t, try)
		}
		if up != none && up != o.taxon {
			break
		}
		up = none
	}
	o.qualifier = mark + " " + subject
	if up == none {
		h := held(CodeNotListed, "%s doubts the name, and the list has no higher taxon of %s to fall back on.", quoted(mark), t)
		h.cands = []int32{o.taxon}
		h.qualifier = o.qualifier
		return h
	}
	r.step("%s doubts %s: %s is the rank that is certain.", quoted(mark), subject, ix.taxa[up].ScientificName)
	o.and(fair("", "%s was doubted (%s), so the %s %s was taken as certain.", t, quoted(mark), ix.taxa[up].Rank, ix.taxa[up].ScientificName))
	o.taxon = up
	return o
}

// inGenus: the words are the epithet of a species in t's genus on the list.
func (r *resolver) inGenus(t *Taxon, words string) bool {
	g := r.ix.genera[key(t.Genus)]
	for i := g.first; i < g.end; i++ {
		if sameButForEnding(r.ix.sci[i].epithet, key(words)) {
			return true
		}
	}
	return false
}

// toAggregate reads "agg.", "s.l." behind a name: the list's aggregate of the
// species, or else its genus.
func (r *resolver) toAggregate(o outcome, mark, text string) outcome {
	ix := r.ix
	t := ix.taxa[o.taxon]
	if t.Rank == RankAggregate {
		return o
	}
	if t.IsSpeciesOrBelow() {
		e := key(t.SpecificEpithet())
		for pass := range 3 {
			for _, a := range ix.aggs[key(t.Genus)] {
				has := pass == 0 && contains(a.epithets, e) && len(a.epithets) == 1 || pass == 1 && contains(a.epithets, e) || pass == 2 && contains(a.members, e)
				if has {
					o.taxon = a.taxon
					r.step("%s is covered by the list's aggregate %s.", t, ix.taxa[a.taxon].ScientificName)
					o.verdict.Message = ""
					o.and(fair("", "%s was read as the aggregate %s.", quoted(text+" "+mark), ix.taxa[a.taxon].ScientificName))
					return o
				}
			}
		}
	}
	g := ix.above(t, RankGenus)
	if g == none {
		return o
	}
	if t.Rank == RankGenus {
		o.qualifier = mark
		return o
	}
	o.taxon = g
	o.qualifier = t.SpecificEpithet() + " " + mark
	r.step("The list has no aggregate of %s: read as the genus.", t)
	o.and(fair("", "%s was read as the genus %s, as the list has no such aggregate.", quoted(text+" "+mark), t.Genus))
	o.remark("Recorded as %s %s.", t.ScientificName, mark)
	return o
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}
