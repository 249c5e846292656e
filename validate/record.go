package validate

import (
	"strings"

	"fieldfare/convert/reading"
	"fieldfare/dwc"
)

// subject is a record under check.
type subject struct {
	o     *dwc.Occurrence
	f     *Facts
	asks  *Asks
	terms *dwc.Checker
	texts *textMemory
	found []reading.Finding
}

// RecordChecker checks one record after the other, and remembers what it found
// right: records that follow one another share most of it. The zero value is
// ready; it is for one goroutine.
type RecordChecker struct {
	terms   dwc.Checker
	texts   textMemory
	subject subject
}

// Check checks a record and returns what there is to ask. Asks may be nil. The
// findings name no cells; About says which value is concerned. The record is
// not to be used elsewhere meanwhile.
func (c *RecordChecker) Check(o *dwc.Occurrence, f *Facts, asks *Asks) []reading.Finding {
	checks := recordChecks
	if asks == nil || asks.nothing() {
		checks, asks = ownChecks, &nothingAsked
	}
	c.subject = subject{o: o, f: f, asks: asks, terms: &c.terms, texts: &c.texts}
	for i := range checks {
		checks[i].run(&c.subject)
	}
	return c.subject.found
}

var nothingAsked Asks

// About of the findings, as in layout.Meaning.
const (
	aboutRecord  = "record"
	aboutCount   = "count"
	aboutDate    = "date"
	aboutName    = "name"
	aboutPlace   = "grid reference"
	aboutRemarks = "remarks"
	aboutStage   = "life stage"
	aboutSex     = "sex"
	aboutHeight  = "elevation"
	aboutCounty  = "vice-county"
)

func (s *subject) query(about, written, code, message string, candidates ...string) {
	s.found = append(s.found, reading.Finding{Verdict: reading.QueryOf(code, message, candidates...), About: about, Written: written})
}

func (s *subject) hold(about, written, code, message string) {
	s.found = append(s.found, reading.Finding{Verdict: reading.HeldOf(code, message), About: about, Written: written})
}

// name is what the record's taxon is called in messages.
func (s *subject) name() string { return nameOf(s.o) }

func nameOf(o *dwc.Occurrence) string {
	switch {
	case o.VernacularName != "":
		return o.VernacularName
	case o.ScientificName != "":
		return o.ScientificName
	}
	return o.VerbatimIdentification
}

// written joins what tells one case of a whole-record check from another.
func written(parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, ", ")
}

// noPlace stands for a place that nothing tells.
const noPlace = "no place"

// siteOf is what the record's place is called in messages.
func siteOf(o *dwc.Occurrence, f *Facts) string {
	switch {
	case o.Locality != "":
		return o.Locality
	case f.Reference != "":
		return f.Reference
	case o.VerbatimCoordinates != "":
		return o.VerbatimCoordinates
	case o.DecimalLatitude != "":
		return o.DecimalLatitude + ", " + o.DecimalLongitude
	}
	return noPlace
}
