package validate

import (
	"fieldfare/convert/reading"
	"fieldfare/dwc"
)

// Record checks one record and returns what there is to ask.
func Record(o *dwc.Occurrence, f *Facts) []reading.Finding {
	var findings []reading.Finding
	for _, fault := range dwc.Check(o) {
		if fault.Term == "occurrenceID" {
			continue // given on the way out, to every record
		}
		findings = append(findings, reading.Finding{
			Verdict: reading.HeldOf("field-"+fault.Term, fault.Message),
			About:   "record",
			Written: o.Get(fault.Term),
		})
	}
	return findings
}
