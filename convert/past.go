package convert

import (
	"context"

	"fieldfare/dwc"
	"fieldfare/validate"
)

// recallPast tells the checks of the set what was recorded before: the records of
// the earlier submission, and those of the archives that the project file
// names.
func (s *settings) recallPast(ctx context.Context, against string, checks *validate.Set) error {
	paths := append([]string(nil), s.project.Lists.Past...)
	for i := range paths {
		paths[i] = s.project.Resolve(paths[i])
	}
	if against != "" {
		paths = append(paths, against)
	}
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
