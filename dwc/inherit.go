package dwc

import "slices"

// matters are what a core row can tell of the rows of an extension that
// belong to it: when, where, and of which taxon. Each begins with the terms by
// which a row says something of the matter itself, and other tells where the
// rest begins, which is taken along.
var matters = []struct {
	terms []string
	other int
}{
	{[]string{"eventDate", "year", "month", "day", "verbatimEventDate", "startDayOfYear", "endDayOfYear", "eventTime"}, 8},
	{[]string{
		"decimalLatitude", "decimalLongitude", "verbatimCoordinates", "verbatimLatitude", "verbatimLongitude", "footprintWKT",
		"locality", "verbatimLocality", "locationID", "municipality", "county",
		"geodeticDatum", "coordinateUncertaintyInMeters", "coordinatePrecision", "verbatimCoordinateSystem", "verbatimSRS", "footprintSRS",
		"country", "countryCode", "stateProvince",
	}, 11},
	{[]string{
		"scientificName", "vernacularName", "verbatimIdentification", "genus", "acceptedNameUsage",
		"taxonID", "scientificNameAuthorship", "taxonRank", "kingdom", "phylum", "class", "order", "family", "specificEpithet", "infraspecificEpithet",
	}, 5},
}

// Inherits tells whether a row of an extension that has no value for a term
// takes that of the core row it belongs to, although its table has a column
// for the term: where the row says nothing of the matter at all, be it when,
// where or of which taxon. A row that names another site than its event does
// not get the event's coordinates.
func Inherits(term string, value func(term string) string) bool {
	for _, m := range matters {
		if slices.Contains(m.terms, term) {
			return !slices.ContainsFunc(m.terms[:m.other], func(t string) bool { return value(t) != "" })
		}
	}
	return false
}
