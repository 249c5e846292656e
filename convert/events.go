package convert

import (
	"strings"

	"fieldfare/convert/identity"
	"fieldfare/convert/privacy"
	"fieldfare/convert/spool"
	"fieldfare/dwc"

	"github.com/google/uuid"
)

// Shapes of a submission.
const (
	shapeOccurrence = "occurrence"
	shapeEvent      = "event"
)

// eventKey is what makes two records parts of one visit: the same date, time,
// place and method, and where no method is stated the same people. It is made
// from the record as it may leave, so a blurred record never shares an event
// with an exact one.
func eventKey(o *dwc.Occurrence) [16]byte { return partsOfEvent(o).key() }

// eventParts are what an event's id is made of.
type eventParts [11]string

func partsOfEvent(o *dwc.Occurrence) eventParts {
	people := o.RecordedBy
	if o.SamplingProtocol != "" {
		people = "" // whoever looked into the trap, it was one trap
	}
	blurred := o.DataGeneralizations
	if blurred != "" {
		blurred += o.EventType // the method and the hour, which part a trap from a walk, are withheld
	}
	return eventParts{
		"event", o.EventDate, o.EventTime, o.Locality, o.VerbatimCoordinates, o.DecimalLatitude, o.DecimalLongitude,
		o.SamplingProtocol, o.SamplingEffort, people, blurred,
	}
}

func (p eventParts) key() [16]byte { return identity.Content(p[:]) }

// eventIDOf is the id of an event that has none of its own.
func eventIDOf(key [16]byte) string { return uuid.UUID(key).URN() }

// seasonParts are what makes events parts of one site's season.
type seasonParts [7]string

func partsOfSeason(o *dwc.Occurrence) seasonParts {
	return seasonParts{"season", o.Year, o.Locality, o.VerbatimCoordinates, o.DecimalLatitude, o.DecimalLongitude, o.DataGeneralizations}
}

func (p seasonParts) key() [16]byte { return identity.Content(p[:]) }

// isVisit tells whether the record is part of something that was done on
// purpose (a trap night, a walk) and not a chance sighting.
func isVisit(r *spool.Record) bool {
	return r.EmptyVisit || r.Facts.Night || r.Facts.Light || r.Occurrence.SamplingProtocol != "" || r.Occurrence.SamplingEffort != ""
}

// Kinds of events.
const (
	trapNight = "trapNight"
	siteVisit = "siteVisit"
	season    = "season"
)

// eventTypeOf says what kind of event a record is part of.
func eventTypeOf(r *spool.Record) string {
	stated := r.Occurrence.EventType
	switch {
	case stated == trapNight || stated == siteVisit || r.Facts.Blur == 0 && stated != "":
		return stated
	case r.Facts.Light || r.Facts.Night:
		return trapNight
	}
	return siteVisit
}

// ofVisit gives the event of a visit on which nothing was found what only an
// occurrence has a term for: the remarks, and who was there.
func ofVisit(o *dwc.Occurrence) {
	o.EventRemarks = joinRemarks(o.EventRemarks, o.OccurrenceRemarks)
	o.OccurrenceRemarks = ""
	if by := "recorded by " + o.RecordedBy; o.RecordedBy != "" && !strings.Contains(o.EventRemarks, by) {
		o.EventRemarks = joinRemarks(o.EventRemarks, by)
	}
}

// withoutNames is a record as its event describes it: an event names nobody, so
// it does not say that a name is withheld.
func withoutNames(o *dwc.Occurrence) *dwc.Occurrence {
	rest, found := strings.CutSuffix(o.InformationWithheld, privacy.PersonWithheld)
	if !found {
		return o
	}
	bare := *o
	bare.InformationWithheld = strings.TrimSuffix(rest, "; ")
	return &bare
}

// seasonOf makes the parent event of a site's season.
func seasonOf(o *dwc.Occurrence) dwc.Event {
	e := withoutNames(o)
	return dwc.Event{
		EventID: o.ParentEventID, EventType: season, EventDate: o.Year, Year: o.Year,
		Locality: e.Locality, County: e.County, CountryCode: e.CountryCode, Country: e.Country,
		DecimalLatitude: e.DecimalLatitude, DecimalLongitude: e.DecimalLongitude, GeodeticDatum: e.GeodeticDatum,
		CoordinateUncertainty: e.CoordinateUncertainty, FootprintWKT: e.FootprintWKT, FootprintSRS: e.FootprintSRS,
		License: e.License, RightsHolder: e.RightsHolder, DatasetName: e.DatasetName, DatasetID: e.DatasetID,
		InformationWithheld: e.InformationWithheld, DataGeneralizations: e.DataGeneralizations,
	}
}
