// Package privacy blurs records on their way out. There is one rule, in one
// place: whatever leaves is made from the record that Blur returns, and a
// blurred record is built up from what may be told, so that a field which
// nobody thought of stays at home.
package privacy

import (
	"fmt"
	"math"
	"strconv"

	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/gridref"
)

// Sides of the squares to which a record is blurred where nothing else is
// said, in metres. Common practice, no source.
const (
	DefaultTaxon = 10000 // a sensitive taxon
	DefaultPlace = 2000  // a private place: a garden is somebody's address
)

// told are the terms that a blurred record keeps as they are: what was seen,
// when, by whom and how many, none of which says where.
var told = []string{
	"type", "modified", "language", "license", "rightsHolder", "accessRights", "institutionID", "datasetID",
	"institutionCode", "datasetName", "basisOfRecord", "occurrenceID", "recordedBy", "individualCount",
	"organismQuantity", "organismQuantityType", "sex", "lifeStage", "caste", "vitality", "establishmentMeans",
	"degreeOfEstablishment", "occurrenceStatus", "eventDate", "year", "month", "day", "startDayOfYear",
	"endDayOfYear", "countryCode", "country", "continent", "identificationQualifier", "identifiedBy",
	"dateIdentified", "identificationVerificationStatus", "taxonID", "scientificNameID", "scientificName",
	"acceptedNameUsage", "higherClassification", "kingdom", "phylum", "class", "order", "superfamily", "family",
	"subfamily", "tribe", "genus", "subgenus", "specificEpithet", "infraspecificEpithet", "taxonRank",
	"scientificNameAuthorship", "vernacularName", "nomenclaturalCode", "taxonomicStatus",
}

// Withheld is what a blurred record says of the rest.
const Withheld = "exact place, wording and remarks; ask the data holder"

// Blur returns the record as it may leave. A record whose Blur is 0 is
// returned as it is.
func Blur(r *spool.Record) dwc.Occurrence {
	if r.Facts.Blur == 0 {
		return r.Occurrence
	}
	var o dwc.Occurrence
	for _, term := range told {
		o.Set(term, r.Occurrence.Get(term))
	}
	o.InformationWithheld = Withheld
	place, ok := square(r)
	if !ok {
		o.DataGeneralizations = "the place is withheld"
		return o
	}
	Fill(&o, place)
	o.DataGeneralizations = "the place is given as a square of " + side(place.Size)
	return o
}

// square returns the square to which the record is blurred.
func square(r *spool.Record) (gridref.Square, bool) {
	f := &r.Facts
	if !f.Placed {
		return gridref.Square{}, false
	}
	point := gridref.Point{Lat: f.Latitude, Lon: f.Longitude, Uncertainty: float64(f.Radius)}
	grid := point.Serving()
	if f.Reference != "" {
		reading, err := gridref.Parse(f.Reference)
		if err != nil {
			return gridref.Square{}, false
		}
		if s, err := reading.Square.Coarsen(f.Blur); err == nil {
			return s, true
		}
		grid = reading.Square.Grid
	}
	s, err := point.Square(grid, f.Blur)
	return s, err == nil
}

// Fill gives an occurrence the place of a square.
func Fill(o *dwc.Occurrence, s gridref.Square) {
	p := s.Point()
	o.DecimalLatitude, o.DecimalLongitude = Degrees(p.Lat), Degrees(p.Lon)
	o.GeodeticDatum = "EPSG:4326"
	o.CoordinateUncertainty = strconv.FormatFloat(math.Ceil(p.Uncertainty), 'f', -1, 64)
	o.FootprintWKT, o.FootprintSRS = s.WKT(), "EPSG:4326"
	o.VerbatimCoordinates = s.String()
	o.VerbatimCoordSystem, o.VerbatimSRS = s.Grid.CoordinateSystem(), s.Grid.SRS()
}

// Degrees writes degrees with seven decimals, about a centimetre.
func Degrees(d float64) string { return strconv.FormatFloat(d, 'f', 7, 64) }

func side(metres int32) string {
	if metres%1000 == 0 {
		return fmt.Sprint(metres/1000, " km")
	}
	return fmt.Sprint(metres, " m")
}
