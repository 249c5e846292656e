package convert

import (
	"context"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/places"
	"fieldfare/convert/taxa"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// recallPast tells the checks of the set what was recorded before: the records of
// the earlier submission, and those of the archives that the project file
// names.
func (s *settings) recallPast(ctx context.Context, against string, checks *validate.Set) error {
	paths := s.pastArchives(against)
	for i, path := range paths {
		handedIn := against != "" && i == len(paths)-1
		if err := pastRecords(ctx, path, func(o *dwc.Occurrence) {
			f := validate.FactsOf(o)
			checks.Past(o, &f, handedIn)
		}); err != nil {
			return err
		}
	}
	return nil
}

// pastArchives are the archives of past records that the project file names,
// then the earlier submission, if any.
func (s *settings) pastArchives(against string) []string {
	var paths []string
	for _, p := range s.project.Lists.Past {
		paths = append(paths, s.project.Resolve(p))
	}
	if against != "" {
		paths = append(paths, against)
	}
	return paths
}

// seenAt is what past records say of where taxa were recorded.
type seenAt map[siteTaxon]struct{}

type siteTaxon struct{ site, taxon string }

// recallSites remembers which taxa the past records have from which sites, to
// weigh the candidates of a name that is held.
func (s *settings) recallSites(ctx context.Context, against string) error {
	names := map[string]string{} // one copy of each
	one := func(text string) string {
		if _, there := names[text]; !there {
			names[text] = text
		}
		return names[text]
	}
	for _, path := range s.pastArchives(against) {
		if s.seen == nil {
			s.seen = seenAt{}
		}
		if err := pastRecords(ctx, path, func(o *dwc.Occurrence) {
			if o.Locality != "" && o.ScientificName != "" && o.OccurrenceStatus != "absent" {
				s.seen[siteTaxon{one(strings.ToLower(o.Locality)), one(o.ScientificName)}] = struct{}{}
			}
		}); err != nil {
			return err
		}
	}
	return nil
}

// atSite tells whether past records have a taxon from the draft's site; nil
// where there are none or the draft names no site.
func (in *interpreter) atSite(d *draft) func(*taxa.Taxon) bool {
	v, named := d.Get(layout.Site)
	if len(in.seen) == 0 || !named {
		return nil
	}
	text := in.text(v)
	site := strings.ToLower(recall(in.memory.places, text, func() places.Reading { return in.places.Find(text) }).Name)
	return func(t *taxa.Taxon) bool {
		_, short := in.seen[siteTaxon{site, t.ScientificName}]
		_, full := in.seen[siteTaxon{site, t.FullName()}]
		return short || full
	}
}

// pastRecords yields the occurrences of an archive, whatever its shape.
func pastRecords(ctx context.Context, path string, fn func(o *dwc.Occurrence)) error {
	archive, err := dwc.OpenArchive(path)
	if err != nil {
		return err
	}
	defer archive.Close()
	n := 0
	return archive.Occurrences(func(o *dwc.Occurrence, _ *dwc.Row) error {
		if n++; n%batchRows == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		fn(o)
		return nil
	})
}
