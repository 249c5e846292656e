package convert

import (
	"cmp"
	"slices"

	"fieldfare/convert/layout"
	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"
	"fieldfare/validate"
)

// what reads the name.
func (in *interpreter) what(d *draft) {
	if d.Empty {
		return
	}
	var w taxa.Written
	var first *layout.Value
	var read []*layout.Value
	for i := range d.Values {
		v := &d.Values[i]
		var field *string
		switch v.Meaning {
		case layout.Taxon:
			field = &w.Name
		case layout.Scientific:
			field = &w.Scientific
		case layout.Vernacular:
			field = &w.Vernacular
		case layout.Authorship:
			field = &w.Authorship
		case layout.TaxonNumber:
			field = &w.Number
		default:
			continue
		}
		if *field != "" {
			continue
		}
		*field = v.Text
		read = append(read, v)
		if first == nil || v.Meaning == layout.Taxon {
			first = v
		}
	}
	o := &d.o
	var whole layout.Value
	if first == nil {
		whole = d.absent(layout.Taxon, d.sheet.hasName)
	} else {
		o.VerbatimIdentification = verbatim(first)
		if w.Scientific != "" && w.Vernacular != "" {
			o.VerbatimIdentification = w.Scientific + " / " + w.Vernacular
		}
		whole = joined(" / ", read...)
		whole.Meaning = layout.Taxon
	}
	d.read.name.value = &whole
	name, answered := in.instead(&whole)
	if !answered && first != nil && first.From == layout.FromCell {
		name, answered = in.answers.Replacement(string(layout.Taxon), o.VerbatimIdentification)
	}
	was := w
	if answered {
		w = taxa.Written{Name: name}
	} else if first == nil {
		in.note(d, reading.HeldOf("name-missing", d.sheet.missing(layout.Taxon)), &whole)
		return
	}
	c := taxa.Context{Group: in.project.Reading.TaxonGroup}
	if !answered {
		c.Genus = d.genus
	}
	if v, found := d.Get(layout.Group); found {
		c.Group = v.Text
	}
	if c.Group == "" {
		c.Group = d.sheet.group
	}
	c.OnPage, c.AtSite = d.sheet.onPage, in.atSite(d)
	if d.o.Month != "" {
		n, _ := wholeNumber(d.o.Month)
		c.Month = int(n)
	}
	r := in.names.Match(w, c)
	if answered && r.Taxon != nil && !r.Taxon.IsSpeciesOrBelow() {
		r = in.ofKind(r, was, name, c)
	}
	in.note(d, r.Verdict, &whole)
	if in.sensitive.words > 0 { // "Phalera cf. bucephala" is read as the genus
		d.facts.Blur = max(d.facts.Blur, in.namesSensitive(whole.Text).blur)
	}
	if r.State == reading.Held || r.Taxon == nil {
		in.unlisted(d, &whole, &w, r.Verdict)
		return
	}
	in.taxon(d, r)
}

// ofKind is the reading of an answer that only says of which kind something was
// ("butterfly", of "Peacock"): the one of that kind among the taxa that share
// what was written, else what the answer says by itself.
func (in *interpreter) ofKind(said taxa.Reading, was taxa.Written, answer string, c taxa.Context) taxa.Reading {
	possible := in.names.Match(was, c).Possible
	was.Name = cmp.Or(was.Name, was.Vernacular, was.Scientific) + " (" + answer + ")"
	r := in.names.Match(taxa.Written{Name: was.Name}, c)
	if r.Taxon == nil || r.State != reading.Fair || !slices.Contains(possible, r.Taxon) {
		return said
	}
	return r
}

// unlisted keeps a name that no list has as it is written, where the recorder
// has said that it is right.
func (in *interpreter) unlisted(d *draft, whole *layout.Value, w *taxa.Written, verdict reading.Verdict) {
	if !in.settled(&reading.Finding{Verdict: verdict, About: string(whole.Meaning), Written: whole.Text}) {
		return
	}
	o := &d.o
	o.ScientificName, o.VernacularName, o.ScientificNameAuthorship = w.Scientific, w.Vernacular, w.Authorship
	if o.ScientificName == "" {
		o.ScientificName = w.Name
	}
	if o.ScientificName == "" {
		o.ScientificName = w.Vernacular
	}
	o.IdentificationRemarks = joinRemarks(o.IdentificationRemarks, "the name is on no list used; kept as written by the recorder")
	d.facts.Blur = max(d.facts.Blur, in.privacy.named(o.ScientificName), in.privacy.named(o.VernacularName))
}

// taxon fills the terms of the identification and the taxon.
func (in *interpreter) taxon(d *draft, r taxa.Reading) {
	o, t := &d.o, r.Taxon
	o.ScientificName, o.ScientificNameAuthorship = t.ScientificName, t.Authorship
	o.TaxonID, o.TaxonRank, o.VernacularName = t.ID, t.Rank, t.Vernacular
	o.ScientificNameID = recall(in.memory.nameIDs, t, t.NamedID)
	o.NomenclaturalCode = t.Code
	o.Kingdom, o.Phylum, o.Class, o.Order = t.Kingdom, t.Phylum, t.Class, t.Order
	o.Superfamily, o.Family, o.Subfamily, o.Tribe = t.Superfamily, t.Family, t.Subfamily, t.Tribe
	o.Genus, o.Subgenus = t.Genus, t.Subgenus
	o.SpecificEpithet, o.InfraspecificEpithet = t.SpecificEpithet(), t.InfraspecificEpithet()
	o.IdentificationQualifier = joinRemarks(o.IdentificationQualifier, r.Qualifier)
	o.IdentificationRemarks = joinRemarks(o.IdentificationRemarks, r.Remarks)
	d.beside = r.Rest
	d.facts.Taxon = validate.TaxonFacts{Listed: true, Flight: uint16(t.Flight), Eggs: uint16(t.Eggs), Larvae: uint16(t.Larvae), Pupae: uint16(t.Pupae), Most: int32(t.Most), NeedsNote: t.NeedsNote, NeedsSpecimen: t.NeedsSpecimen}
	d.facts.Taxon.Number, _ = wholeNumber(t.Number)
	blur := recall(in.memory.blurs, t, func() int32 { return in.privacy.taxon(t) })
	d.facts.Blur = max(d.facts.Blur, blur)
}
