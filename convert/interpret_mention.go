package convert

import (
	"fmt"
	"slices"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/places"
	"fieldfare/convert/privacy"
	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"
)

// mentioned blurs a record beside which a private place is named, in whatever
// cell of its row: the remark that names a garden may say where it was. The
// site itself is read elsewhere. The same holds for a text that names a
// sensitive taxon, which would be given away with the place of another.
func (in *interpreter) mentioned(d *draft, cells []string) {
	if in.sensitive.words > 0 {
		for i := range d.Values {
			in.mentionTaxon(d, &d.Values[i])
		}
	}
	if in.privacy.names == nil {
		return
	}
	for i := range d.Values {
		if v := &d.Values[i]; v.Meaning != layout.Site && !slices.Contains(ofDataset, v.Heading) {
			in.mention(d, v)
		}
	}
	if d.sheet.stated {
		return // what is left out of such a page tells of the dataset
	}
	for _, text := range cells { // those that were left out as well
		if len(in.mentions(text)) > 0 {
			in.mention(d, &layout.Value{Meaning: "record", Text: text})
		}
	}
}

// namesOwn are the meanings of values that say what the record itself is of.
var namesOwn = []layout.Meaning{layout.Taxon, layout.Scientific, layout.Vernacular, layout.Authorship, layout.TaxonNumber, layout.Group, layout.Site, layout.Count}

func (in *interpreter) mentionTaxon(d *draft, v *layout.Value) {
	if slices.Contains(namesOwn, v.Meaning) || d.sheet.stated && (slices.Contains(privacy.ListTerms, v.Heading) || v.Heading == "verbatimIdentification") {
		return
	}
	named := in.namesSensitive(v.Text)
	if named.blur > d.facts.Blur {
		d.facts.Blur = named.blur
		in.note(d, reading.QueryOf("names-sensitive-taxon", fmt.Sprintf(
			"“%s” names %s, which is sensitive, so this record is blurred as well. If its place may be told, leave the name out of the text.", v.Text, named.called)), v)
	}
}

func (in *interpreter) namesSensitive(text string) sensitiveName {
	return recall(in.memory.sensitive, text, func() sensitiveName {
		called, blur := in.sensitive.in(text)
		return sensitiveName{called, blur}
	})
}

type sensitiveName struct {
	called string
	blur   int32
}

// ofDataset are terms that say the same of every record of a dataset; its
// title may well name a place.
var ofDataset = []string{"datasetName", "datasetID", "rightsHolder", "institutionCode", "collectionCode", "accessRights", "license"}

func (in *interpreter) mention(d *draft, v *layout.Value) {
	named := in.mentions(v.Text)
	if len(named) > 0 && in.listed(v.Text) {
		return // the Garden Tiger is seen elsewhere, too
	}
	for _, p := range named {
		blur := in.privacy.place(p)
		if d.facts.Blur >= blur {
			continue
		}
		d.facts.Blur = blur
		in.note(d, reading.QueryOf("names-private-place", fmt.Sprintf(
			"“%s” names %s, which is private, so this record is blurred as well. If it is from elsewhere, word it otherwise.", v.Text, p.Name)), v)
	}
}

// listed tells whether a text is the name of a taxon as the list has it, or a
// misspelling of one that has the place's name in it too, and nothing else.
func (in *interpreter) listed(text string) bool {
	r := in.names.Match(taxa.Written{Name: text}, taxa.Context{})
	if r.Taxon == nil {
		return false
	}
	return strings.EqualFold(text, r.Taxon.Vernacular) || strings.EqualFold(text, r.Taxon.ScientificName) ||
		r.Code == taxa.CodeMisspelt && r.Rest == "" && len(in.mentions(r.Taxon.Vernacular)) > 0
}

func (in *interpreter) mentions(text string) []*places.Place {
	return recall(in.memory.mentions, text, func() []*places.Place { return in.places.Mentioned(text) })
}
