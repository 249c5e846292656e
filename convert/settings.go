package convert

import (
	"context"
	"fmt"

	"fieldfare/convert/answers"
	"fieldfare/convert/layout"
	"fieldfare/convert/people"
	"fieldfare/convert/places"
	"fieldfare/convert/project"
	"fieldfare/convert/report"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
	"fieldfare/validate"
	"fieldfare/validate/area"
)

// settings is all that a run needs to know beside the notebooks. It does not
// change while the run lasts, so every worker may read it.
type settings struct {
	project *project.Project
	taxa    *taxa.Index
	places  *places.List
	people  *people.List
	answers *answers.Set
	answered

	dateOptions when.Options
	licence     string
	privacy     privacyRules
	asks        validate.Asks
	polygons    area.Set
	seen        seenAt
	versions    []report.ListVersion
	sensitive   sensitiveNames
	// temp is the folder for work files.
	temp string
	// release gives up the folder that is held for this run; nil where none is.
	release func()
	// starter: names are looked up in the starter list alone.
	starter bool
	// listProblems are what is wrong with the lists themselves.
	listProblems []string
}

// settle loads the project file and the lists, and settles what they leave
// open.
func (j Job) settle(ctx context.Context) (*settings, error) {
	p, err := project.Load(j.Project, j.folder())
	if err != nil {
		return nil, err
	}
	s := &settings{project: p, answers: &answers.Set{}}
	if j.writes() && p.Path != "" {
		if err := s.holdFolder(); err != nil {
			return nil, err
		}
	}
	if err := j.settleLists(ctx, s); err != nil {
		s.letGo()
		return nil, err
	}
	return s, nil
}

func (j Job) settleLists(ctx context.Context, s *settings) error {
	p := s.project
	var err error
	if s.licence, err = p.Dataset.LicenceURL(); err != nil {
		return err
	}
	s.dateOptions = when.Options{
		Today:   j.Today,
		Floor:   p.Reading.EarliestYear,
		MaxDays: p.Reading.LongestDays,
	}
	if p.Reading.DateOrder == "month first" {
		s.dateOptions.Order = when.MonthDay
	}
	s.versions = []report.ListVersion{{Name: "fieldfare", Version: Version}}
	for _, load := range []func() error{
		func() error { return j.loadTaxa(s) },
		func() error { return j.loadPlaces(ctx, s) },
		func() error { return j.loadPeople(ctx, s) },
		func() error { return j.loadAreas(s) },
		func() error { return j.loadAnswers(ctx, s) },
	} {
		if err := load(); err != nil {
			return err
		}
		if err := ctx.Err(); err != nil {
			return err
		}
	}
	for _, name := range s.privacy.learn(s.taxa, &p.Privacy) {
		s.listProblems = append(s.listProblems, fmt.Sprintf("“%s”, which the project file has as sensitive, is on none of the taxon lists; only what is written like that is blurred.", name))
	}
	s.sensitive = newSensitiveNames(s.taxa, &s.privacy, &p.Privacy)
	for i := range s.versions {
		if s.namesPrivate(s.versions[i].Name) {
			s.versions[i].Name = fmt.Sprintf("list %d", i) // its file's name would tell
		}
	}
	return s.settleAsks()
}

// namesPrivate tells whether a text names a private place.
func (s *settings) namesPrivate(text string) bool { return len(s.places.Mentioned(text)) > 0 }

// entryFor returns the first part of the project file about the notebook.
func (s *settings) entryFor(path string) layout.Entry {
	for _, e := range s.project.Notebook {
		if e.FitsFile(path) {
			return e
		}
	}
	return layout.Entry{}
}

// entryForSheet returns the first part of the project file about a sheet.
func (s *settings) entryForSheet(path, sheet string) layout.Entry {
	for _, e := range s.project.Notebook {
		if e.Fits(path, sheet) {
			return e
		}
	}
	return layout.Entry{}
}

func (s *settings) layoutOptions(p *probe) layout.Options {
	return layout.Options{Overrides: s.project.Notebook, ZeroIsAbsence: s.project.Reading.ZeroIsAbsence, Probe: p}
}
