package dwc

// Event is something that happens at a place and a time: a trap night, a
// visit, or a site's season as the parent of both. Its fields are as those of
// Occurrence.
type Event struct {
	// Record level
	Modified            string `dwc:"modified" validate:"omitempty,iso_date"`
	Language            string `dwc:"language" validate:"omitempty,language_tag"`
	License             string `dwc:"license" validate:"omitempty,web_address"`
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
	EventID           string `dwc:"eventID" validate:"required"`
	ParentEventID     string `dwc:"parentEventID"`
	EventType         string `dwc:"eventType"`
	FieldNumber       string `dwc:"fieldNumber"`
	EventDate         string `dwc:"eventDate" validate:"omitempty,iso_date"`
	EventTime         string `dwc:"eventTime" validate:"omitempty,iso_time"`
	StartDayOfYear    string `dwc:"startDayOfYear" validate:"omitempty,day_of_year"`
	EndDayOfYear      string `dwc:"endDayOfYear" validate:"omitempty,day_of_year"`
	Year              string `dwc:"year" validate:"omitempty,year"`
	Month             string `dwc:"month" validate:"omitempty,month"`
	Day               string `dwc:"day" validate:"omitempty,day_of_month"`
	VerbatimEventDate string `dwc:"verbatimEventDate"`
	Habitat           string `dwc:"habitat"`
	SamplingProtocol  string `dwc:"samplingProtocol"`
	SampleSizeValue   string `dwc:"sampleSizeValue" validate:"required_with=SampleSizeUnit,omitempty,number_value"`
	SampleSizeUnit    string `dwc:"sampleSizeUnit" validate:"required_with=SampleSizeValue"`
	SamplingEffort    string `dwc:"samplingEffort"`
	FieldNotes        string `dwc:"fieldNotes"`
	EventRemarks      string `dwc:"eventRemarks"`

	// Location
	LocationID            string `dwc:"locationID"`
	HigherGeography       string `dwc:"higherGeography"`
	Continent             string `dwc:"continent" validate:"omitempty,continent"`
	WaterBody             string `dwc:"waterBody"`
	IslandGroup           string `dwc:"islandGroup"`
	Island                string `dwc:"island"`
	Country               string `dwc:"country"`
	CountryCode           string `dwc:"countryCode" validate:"omitempty,country_alpha2"`
	StateProvince         string `dwc:"stateProvince"`
	County                string `dwc:"county"`
	Municipality          string `dwc:"municipality"`
	Locality              string `dwc:"locality"`
	VerbatimLocality      string `dwc:"verbatimLocality"`
	MinimumElevation      string `dwc:"minimumElevationInMeters" validate:"omitempty,number_value"`
	MaximumElevation      string `dwc:"maximumElevationInMeters" validate:"omitempty,number_value"`
	VerbatimElevation     string `dwc:"verbatimElevation"`
	LocationRemarks       string `dwc:"locationRemarks"`
	DecimalLatitude       string `dwc:"decimalLatitude" validate:"omitempty,decimal_latitude"`
	DecimalLongitude      string `dwc:"decimalLongitude" validate:"omitempty,decimal_longitude"`
	GeodeticDatum         string `dwc:"geodeticDatum"`
	CoordinateUncertainty string `dwc:"coordinateUncertaintyInMeters" validate:"omitempty,above_zero"`
	CoordinatePrecision   string `dwc:"coordinatePrecision" validate:"omitempty,above_zero"`
	VerbatimCoordinates   string `dwc:"verbatimCoordinates"`
	VerbatimLatitude      string `dwc:"verbatimLatitude"`
	VerbatimLongitude     string `dwc:"verbatimLongitude"`
	VerbatimCoordSystem   string `dwc:"verbatimCoordinateSystem"`
	VerbatimSRS           string `dwc:"verbatimSRS"`
	FootprintWKT          string `dwc:"footprintWKT"`
	FootprintSRS          string `dwc:"footprintSRS"`
	GeoreferencedBy       string `dwc:"georeferencedBy"`
	GeoreferencedDate     string `dwc:"georeferencedDate" validate:"omitempty,iso_date"`
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
