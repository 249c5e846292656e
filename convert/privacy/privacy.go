// Package privacy blurs records on their way out. There is one rule, in one
// place: whatever leaves is made from the record that Blur makes, and a
// blurred record is built up from what may be told, so that a field which
// nobody thought of stays at home.
package privacy

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// Sides of the squares to which a record is blurred where nothing else is
// said, in metres. Common practice, no source.
const (
	DefaultTaxon = 10000 // a sensitive taxon
	DefaultPlace = 2000  // a private place: a garden is somebody's address
)

// Withheld is what a blurred record says of the rest.
const Withheld = "exact place, time of day, wording and remarks; ask the data holder"

// Blur makes o the record as it may leave. A record whose Blur is 0 leaves as
// it is. (A record is large, so it is not returned.)
func Blur(o *dwc.Occurrence, r *spool.Record) {
	if r.Facts.Blur == 0 {
		*o = r.Occurrence
		return
	}
	*o = dwc.Occurrence{}
	from := &r.Occurrence
	for i := range told {
		for _, term := range told[i].terms {
			if value := from.Get(term); value != "" && told[i].fits(value) {
				o.Set(term, value)
			}
		}
	}
	if !r.Facts.Taxon.Listed {
		dropUnlisted(o)
	}
	dropOdd(o)
	o.EventDate = days(o.EventDate)
	if o.OrganismQuantity == "" || o.OrganismQuantityType == "" {
		o.OrganismQuantity, o.OrganismQuantityType = "", ""
	}
	var unnamed bool
	o.RecordedBy, unnamed = names(from.RecordedBy, from)
	o.IdentifiedBy, _ = names(from.IdentifiedBy, from)
	o.InformationWithheld = Withheld
	if unnamed || strings.HasPrefix(from.InformationWithheld, PersonWithheld) || strings.HasSuffix(from.InformationWithheld, "; "+PersonWithheld) {
		o.InformationWithheld += "; " + PersonWithheld
	}
	place, ok := square(r)
	if !ok {
		o.DataGeneralizations = "the place is withheld"
		return
	}
	Fill(o, place)
	o.DataGeneralizations = "the place is given as a square of " + side(place.Size)
}

// PersonWithheld is what informationWithheld says where somebody is not named.
const PersonWithheld = "a person's name"

// CarriedWithheld is what it says where a text is withheld that stands beside
// a private record and was carried down from there.
const CarriedWithheld = "wording"

// dropUnlisted empties what only a taxon list can vouch for.
func dropUnlisted(o *dwc.Occurrence) {
	for _, term := range ListTerms {
		if term == "scientificName" && binomial.MatchString(o.ScientificName) || term == "taxonRank" && slices.Contains(ranks, o.TaxonRank) {
			continue
		}
		o.Set(term, "")
	}
}

// ranks are those of the names that are recorded without a list.
var ranks = []string{
	"kingdom", "phylum", "class", "order", "superfamily", "family", "subfamily", "tribe", "genus", "subgenus", "species", "species aggregate",
	"subspecies", "variety", "form", "aberration", "hybrid",
}

// days cuts the times of day off a date or interval: the hour of a trap or a
// walk would tell which of two places of one night it was, where the other's
// is told.
func days(eventDate string) string {
	if !strings.Contains(eventDate, "T") {
		return eventDate
	}
	first, last, interval := strings.Cut(eventDate, "/")
	first, _, _ = strings.Cut(first, "T")
	last, _, _ = strings.Cut(last, "T")
	if !interval || last == first || len(last) != len("2006-01-02") || last[4] != '-' { // "T22:00/23:30" ends on the same day
		return first
	}
	return first + "/" + last
}

var binomial = regexp.MustCompile(`^\p{Lu}\p{Ll}+( [\p{Ll}-]+){0,2}$`)

func side(metres int32) string {
	if metres%1000 == 0 {
		return fmt.Sprint(metres/1000, " km")
	}
	return fmt.Sprint(metres, " m")
}
