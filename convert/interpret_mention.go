package convert

import (
	"fmt"
	"slices"

	"fieldfare/convert/layout"
	"fieldfare/convert/places"
	"fieldfare/convert/reading"
)

// mentioned blurs a record beside which a private place is named, in whatever
// cell of its row: the remark that names a garden may say where it was. The
// site itself is read elsewhere.
func (in *interpreter) mentioned(d *draft, cells []string) {
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

// ofDataset are terms that say the same of every record of a dataset; its
// title may well name a place.
var ofDataset = []string{"datasetName", "datasetID", "rightsHolder", "institutionCode", "collectionCode", "accessRights", "license"}

func (in *interpreter) mention(d *draft, v *layout.Value) {
	for _, p := range in.mentions(v.Text) {
		blur := in.privacy.place(p)
		if d.facts.Blur >= blur {
			continue
		}
		d.facts.Blur = blur
		in.note(d, reading.QueryOf("names-private-place", fmt.Sprintf(
			"“%s” names %s, which is private, so this record is blurred as that is. If it is from elsewhere, word it otherwise.", v.Text, p.Name)), v)
	}
}

func (in *interpreter) mentions(text string) []*places.Place {
	return recall(in.memory.mentions, text, func() []*places.Place { return in.places.Mentioned(text) })
}
