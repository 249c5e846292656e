package convert

import (
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
		*field = in.text(v)
		if first == nil || v.Meaning == layout.Taxon {
			first = v
		}
	}
	if first == nil {
		in.note(d, reading.HeldOf("name-missing", d.sheet.missing(layout.Taxon)))
		return
	}
	c := taxa.Context{Genus: d.genus, Group: in.project.Reading.TaxonGroup}
	if v, found := d.Get(layout.Group); found {
		c.Group = v.Text
	}
	if d.o.Month != "" {
		n, _ := wholeNumber(d.o.Month)
		c.Month = int(n)
	}
	r := in.names.Match(w, c)
	in.note(d, r.Verdict, first)
	o := &d.o
	o.VerbatimIdentification = verbatim(first)
	if w.Scientific != "" && w.Vernacular != "" {
		o.VerbatimIdentification = w.Scientific + " / " + w.Vernacular
	}
	if r.State == reading.Held || r.Taxon == nil {
		return
	}
	in.taxon(d, r)
}

// taxon fills the terms of the identification and the taxon.
func (in *interpreter) taxon(d *draft, r taxa.Reading) {
	o, t := &d.o, r.Taxon
	o.ScientificName, o.ScientificNameAuthorship = t.ScientificName, t.Authorship
	o.TaxonID, o.TaxonRank, o.VernacularName = t.ID, t.Rank, t.Vernacular
	o.NomenclaturalCode = t.Code
	o.Kingdom, o.Phylum, o.Class, o.Order = t.Kingdom, t.Phylum, t.Class, t.Order
	o.Superfamily, o.Family, o.Subfamily, o.Tribe = t.Superfamily, t.Family, t.Subfamily, t.Tribe
	o.Genus, o.Subgenus = t.Genus, t.Subgenus
	o.SpecificEpithet, o.InfraspecificEpithet = t.SpecificEpithet(), t.InfraspecificEpithet()
	o.IdentificationQualifier = joinRemarks(o.IdentificationQualifier, r.Qualifier)
	o.IdentificationRemarks = joinRemarks(o.IdentificationRemarks, r.Remarks)
	o.OccurrenceRemarks = joinRemarks(o.OccurrenceRemarks, r.Rest)
	d.facts.Taxon = validate.TaxonFacts{Listed: true, Flight: uint16(t.Flight), NeedsNote: t.NeedsNote, NeedsSpecimen: t.NeedsSpecimen}
	d.facts.Taxon.Number, _ = wholeNumber(t.Number)
	d.facts.Blur = max(d.facts.Blur, in.privacy.taxon(t))
}
