package convert

import (
	"slices"

	"fieldfare/convert/layout"
	"fieldfare/convert/places"
	"fieldfare/convert/reading"
	"fieldfare/gridref"
)

// nearSite takes from the possible readings of a reference that could not be
// read those that lie far from the named site: a slip is not mended by
// carrying the record across the country. Where any is taken away, the
// question is about the reference at that site, so that its answer reaches no
// other.
func (in *interpreter) nearSite(d *draft, verdict reading.Verdict, v *layout.Value, known places.Reading) (reading.Verdict, *layout.Value) {
	if verdict.State != reading.Held || !known.Placed || len(verdict.Candidates) == 0 {
		return verdict, v
	}
	far := func(candidate string) bool {
		r, err := gridref.Parse(candidate)
		return err == nil && places.Apart(known.Where, r) > float64(in.placeMetres())
	}
	near := slices.DeleteFunc(slices.Clone(verdict.Candidates), far) // the verdict is remembered
	if len(near) == len(verdict.Candidates) {
		return verdict, v
	}
	verdict.Candidates = near
	return verdict, d.atSite(v)
}

// insteadAt returns what the recorder answered for a reference: for it at its
// site, else for it anywhere, unless the question was about the site's own.
func (in *interpreter) insteadAt(d *draft, v, asked *layout.Value) (string, bool) {
	if in.answers.Len() == 0 {
		return "", false
	}
	if text, answered := in.instead(d.atSite(v)); answered || asked != v {
		return text, answered
	}
	return in.instead(v)
}
