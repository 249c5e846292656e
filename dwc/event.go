package dwc

// Event is something that happens at a place and a time: a trap night, a
// visit, or a site's season as the parent of both. Its fields are as those of
// Occurrence.
type Event struct {
	// Record level
	Modified            string `dwc:"modified"`
	Language            string `dwc:"language"`
	License             string `dwc:"license"`
	RightsHolder        string `dwc:"rightsHolder"`
	AccessRights        string `dwc:"accessRights"`
	References          string `dwc:"references"`
	InstitutionID       string `dwc:"institutionID"`
	DatasetID           string `dwc:"datasetID"`
	InstitutionCode     string `dwc:"institutionCode"`
	DatasetName         string `dwc:"datasetName"`
	InformationWithheld string `dwc:"informationWithheld"`
	DataGeneralizations string `dwc:"dataGeneralizations"`
	DynamicProperties   string `dwc:"dynamicProperties"`

	// Event
	EventID           string `dwc:"eventID"`
	ParentEventID     string `dwc:"parentEventID"`
	EventType         string `dwc:"eventType"`
	FieldNumber       string `dwc:"fieldNumber"`
	EventDate         string `dwc:"eventDate"`
	EventTime         string `dwc:"eventTime"`
	StartDayOfYear    string `dwc:"startDayOfYear"`
	EndDayOfYear      string `dwc:"endDayOfYear"`
	Year              string `dwc:"year"`
	Month             string `dwc:"month"`
	Day               string `dwc:"day"`
	VerbatimEventDate string `dwc:"verbatimEventDate"`
	Habitat           string `dwc:"habitat"`
	SamplingProtocol  string `dwc:"samplingProtocol"`
	SampleSizeValue   string `dwc:"sampleSizeValue"`
	SampleSizeUnit    string `dwc:"sampleSizeUnit"`
	SamplingEffort    string `dwc:"samplingEffort"`
	FieldNotes        string `dwc:"fieldNotes"`
	EventRemarks      string `dwc:"eventRemarks"`

	// Location
	LocationID            string `dwc:"locationID"`
	HigherGeography       string `dwc:"higherGeography"`
	Continent             string `dwc:"continent"`
	WaterBody             string `dwc:"waterBody"`
	IslandGroup           string `dwc:"islandGroup"`
	Island                string `dwc:"island"`
	Country               string `dwc:"country"`
	CountryCode           string `dwc:"countryCode"`
	StateProvince         string `dwc:"stateProvince"`
	County                string `dwc:"county"`
	Municipality          string `dwc:"municipality"`
	Locality              string `dwc:"locality"`
	VerbatimLocality      string `dwc:"verbatimLocality"`
	MinimumElevation      string `dwc:"minimumElevationInMeters"`
	MaximumElevation      string `dwc:"maximumElevationInMeters"`
	VerbatimElevation     string `dwc:"verbatimElevation"`
	LocationRemarks       string `dwc:"locationRemarks"`
	DecimalLatitude       string `dwc:"decimalLatitude"`
	DecimalLongitude      string `dwc:"decimalLongitude"`
	GeodeticDatum         string `dwc:"geodeticDatum"`
	CoordinateUncertainty string `dwc:"coordinateUncertaintyInMeters"`
	CoordinatePrecision   string `dwc:"coordinatePrecision"`
	VerbatimCoordinates   string `dwc:"verbatimCoordinates"`
	VerbatimLatitude      string `dwc:"verbatimLatitude"`
	VerbatimLongitude     string `dwc:"verbatimLongitude"`
	VerbatimCoordSystem   string `dwc:"verbatimCoordinateSystem"`
	VerbatimSRS           string `dwc:"verbatimSRS"`
	FootprintWKT          string `dwc:"footprintWKT"`
	FootprintSRS          string `dwc:"footprintSRS"`
	GeoreferencedBy       string `dwc:"georeferencedBy"`
	GeoreferencedDate     string `dwc:"georeferencedDate"`
	GeoreferenceProtocol  string `dwc:"georeferenceProtocol"`
	GeoreferenceSources   string `dwc:"georeferenceSources"`
	GeoreferenceRemarks   string `dwc:"georeferenceRemarks"`
}

// RowType returns RowEvent.
func (e *Event) RowType() string { return RowEvent }

// Field returns the text of the i-th term of TermsOf(RowEvent). It panics
// where there is none.
func (e *Event) Field(i int) *string { return text(e, i) }

// Get returns the value of a term by name, and "" for a term that the record
// does not have.
func (e *Event) Get(term string) string { return get(&eventShape, e, term) }

// Set gives a term, by name, a value. It returns false for a term that the
// record does not have.
func (e *Event) Set(term, value string) bool { return set(&eventShape, e, term, value) }
