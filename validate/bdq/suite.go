package bdq

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"fieldfare/dwc/calendar"
)

// Settings are what the tests need beside a record.
type Settings struct {
	// Today is the day on which the tests are run: "{current day}" and
	// "{current year}" in the standard's defaults. It must be set.
	Today time.Time
	// Parameters are values of parameters by name, with or without the prefix
	// "bdqval:"; where one is absent or empty the standard's default holds.
	Parameters map[string]string
}

// Suite is the standard's tests with their parameters set. It is safe for
// concurrent use.
type Suite struct {
	tests []Test
	parameters
}

// parameters are the parameters' values, read.
type parameters struct {
	eventFrom, eventTo int // days
	identFrom, identTo int // days
	yearFrom, yearTo   int
	elevationFrom      float64
	elevationTo        float64
	depthFrom, depthTo float64
	includeEventDate   bool
	occurrenceStatus   string
	datum              string
	authority          string
}

// halfEquator is half the equatorial circumference of the Earth in metres, the
// limit that the standard sets to an uncertainty.
const halfEquator = 20037509

// New sets the tests' parameters. It fails where a parameter's value cannot be
// read.
func New(s Settings) (*Suite, error) {
	given := map[string]string{}
	for name, value := range s.Parameters {
		if !isEmpty(value) {
			given[local(name)] = strings.TrimSpace(value)
		}
	}
	year, month, day := s.Today.Date()
	p := parameters{
		eventFrom:        calendar.Number(1582, 11, 15),
		eventTo:          calendar.Number(year, 12, 31),
		identFrom:        calendar.Number(1753, 1, 1),
		identTo:          calendar.Number(year, int(month), day),
		yearFrom:         1582,
		yearTo:           year,
		elevationFrom:    -430,
		elevationTo:      8850,
		depthFrom:        0,
		depthTo:          11000,
		includeEventDate: true,
		occurrenceStatus: "present",
		datum:            "EPSG:4326",
		authority:        given["sourceAuthority"],
	}
	if s.Today.IsZero() {
		return nil, fmt.Errorf("the day on which the tests are run is not set")
	}
	if text, ok := given["earliestValidDate"]; ok {
		d, valid := parseISO(text)
		if !valid {
			return nil, fmt.Errorf("bdqval:earliestValidDate %q is not an ISO 8601 date", text)
		}
		p.eventFrom, p.identFrom, p.yearFrom = d.first(), d.first(), d.from.year
	}
	if text, ok := given["latestValidDate"]; ok {
		d, valid := parseISO(text)
		if !valid {
			return nil, fmt.Errorf("bdqval:latestValidDate %q is not an ISO 8601 date", text)
		}
		p.eventTo, p.identTo, p.yearTo = d.last(), d.last(), d.lastDate().year
	}
	for _, limit := range []struct {
		name string
		into *float64
	}{
		{"minimumValidElevationInMeters", &p.elevationFrom}, {"maximumValidElevationInMeters", &p.elevationTo},
		{"minimumValidDepthInMeters", &p.depthFrom}, {"maximumValidDepthInMeters", &p.depthTo},
	} {
		if text, ok := given[limit.name]; ok {
			if *limit.into, ok = number(text); !ok {
				return nil, fmt.Errorf("bdqval:%s %q is not a number", limit.name, text)
			}
		}
	}
	if text, ok := given["includeEventDate"]; ok {
		include, err := strconv.ParseBool(strings.ToLower(text))
		if err != nil {
			return nil, fmt.Errorf("bdqval:includeEventDate %q is neither true nor false", text)
		}
		p.includeEventDate = include
	}
	if text, ok := given["defaultOccurrenceStatus"]; ok {
		p.occurrenceStatus = text
	}
	if text, ok := given["defaultGeodeticDatum"]; ok {
		p.datum = text
	}
	return &Suite{tests: Tests(), parameters: p}, nil
}

// Run puts one test, named by its label or its GUID, to a record. ok is false
// where there is no such test.
func (s *Suite) Run(test string, terms Terms) (response Response, ok bool) {
	i := slices.IndexFunc(s.tests, func(t Test) bool { return t.GUID == test || t.Label == test })
	if i < 0 {
		return Response{}, false
	}
	return s.run(&s.tests[i], &record{terms: terms}), true
}

// RunAll puts every test to a record and yields the responses in the order of
// Tests.
func (s *Suite) RunAll(terms Terms) func(yield func(*Test, Response) bool) {
	return func(yield func(*Test, Response) bool) {
		r := record{terms: terms}
		for i := range s.tests {
			if !yield(&s.tests[i], s.run(&s.tests[i], &r)) {
				return
			}
		}
	}
}

func (s *Suite) run(t *Test, r *record) Response {
	if s.authority != "" && t.Authority != "" && !t.hasAuthority(s.authority) {
		return Response{Status: ExternalUnmet, reason: "is not a source authority that is at hand", term: "bdqval:sourceAuthority", value: s.authority}
	}
	return t.run(r, &s.parameters)
}

// hasAuthority says whether a value of bdqval:sourceAuthority names the test's
// default, by its name or by an address that the standard gives for it.
func (t *Test) hasAuthority(name string) bool {
	return slices.ContainsFunc(strings.Split(t.Authority, "|"), func(known string) bool {
		return bareAddress(known) == bareAddress(name)
	})
}

// bareAddress leaves out of an address what does not change where it leads.
func bareAddress(s string) string {
	s = strings.ToLower(s)
	for _, scheme := range []string{"https://", "http://"} {
		s = strings.TrimPrefix(s, scheme)
	}
	return strings.TrimSuffix(s, "/")
}
