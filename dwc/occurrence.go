package dwc

// Occurrence is one record: the existence of an organism at a place and a
// time, with the terms of its event, location, identification and taxon
// beside it, as in a simple Darwin Core record. Every field is the text of
// the term that its dwc tag names (https://dwc.tdwg.org/terms/); an empty
// string means that nothing is stated. The validate tags hold what the
// standard itself says of a field.
type Occurrence struct {
	// Record level
	Type                string `dwc:"type" validate:"omitempty,dcmi_type"`
	Modified            string `dwc:"modified" validate:"omitempty,iso_date"`
	Language            string `dwc:"language" validate:"omitempty,language_tag"`
	License             string `dwc:"license" validate:"omitempty,web_address"`
	RightsHolder        string `dwc:"rightsHolder"`
	AccessRights        string `dwc:"accessRights"`
	References          string `dwc:"references"`
	InstitutionID       string `dwc:"institutionID"`
	CollectionID        string `dwc:"collectionID"`
	DatasetID           string `dwc:"datasetID"`
	InstitutionCode     string `dwc:"institutionCode"`
	CollectionCode      string `dwc:"collectionCode"`
	DatasetName         string `dwc:"datasetName"`
	BasisOfRecord       string `dwc:"basisOfRecord" validate:"omitempty,basis_of_record"`
	InformationWithheld string `dwc:"informationWithheld"`
	DataGeneralizations string `dwc:"dataGeneralizations"`
	DynamicProperties   string `dwc:"dynamicProperties"`

	// Occurrence
	OccurrenceID         string `dwc:"occurrenceID" validate:"required"`
	CatalogNumber        string `dwc:"catalogNumber"`
	RecordNumber         string `dwc:"recordNumber"`
	RecordedBy           string `dwc:"recordedBy"`
	IndividualCount      string `dwc:"individualCount" validate:"omitempty,whole_number"`
	OrganismQuantity     string `dwc:"organismQuantity" validate:"required_with=OrganismQuantityType"`
	OrganismQuantityType string `dwc:"organismQuantityType" validate:"required_with=OrganismQuantity"`
	Sex                  string `dwc:"sex"`
	LifeStage            string `dwc:"lifeStage"`
	Caste                string `dwc:"caste"`
	Behavior             string `dwc:"behavior"`
	Vitality             string `dwc:"vitality"`
	EstablishmentMeans   string `dwc:"establishmentMeans" validate:"omitempty,establishment_means"`
	DegreeOfEstablish    string `dwc:"degreeOfEstablishment" validate:"omitempty,degree_of_establishment"`
	OccurrenceStatus     string `dwc:"occurrenceStatus" validate:"omitempty,occurrence_status"`
	Preparations         string `dwc:"preparations"`
	Disposition          string `dwc:"disposition"`
	AssociatedMedia      string `dwc:"associatedMedia"`
	AssociatedReferences string `dwc:"associatedReferences"`
	AssociatedTaxa       string `dwc:"associatedTaxa"`
	OccurrenceRemarks    string `dwc:"occurrenceRemarks"`

	// Event
	EventID           string `dwc:"eventID"`
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

	// Identification
	VerbatimIdentification   string `dwc:"verbatimIdentification"`
	IdentificationQualifier  string `dwc:"identificationQualifier"`
	TypeStatus               string `dwc:"typeStatus"`
	IdentifiedBy             string `dwc:"identifiedBy"`
	DateIdentified           string `dwc:"dateIdentified" validate:"omitempty,iso_date"`
	IdentificationReferences string `dwc:"identificationReferences"`
	VerificationStatus       string `dwc:"identificationVerificationStatus"`
	IdentificationRemarks    string `dwc:"identificationRemarks"`

	// Taxon
	TaxonID                  string `dwc:"taxonID"`
	ScientificNameID         string `dwc:"scientificNameID"`
	ScientificName           string `dwc:"scientificName"`
	AcceptedNameUsage        string `dwc:"acceptedNameUsage"`
	HigherClassification     string `dwc:"higherClassification"`
	Kingdom                  string `dwc:"kingdom"`
	Phylum                   string `dwc:"phylum"`
	Class                    string `dwc:"class"`
	Order                    string `dwc:"order"`
	Superfamily              string `dwc:"superfamily"`
	Family                   string `dwc:"family"`
	Subfamily                string `dwc:"subfamily"`
	Tribe                    string `dwc:"tribe"`
	Genus                    string `dwc:"genus"`
	Subgenus                 string `dwc:"subgenus"`
	SpecificEpithet          string `dwc:"specificEpithet"`
	InfraspecificEpithet     string `dwc:"infraspecificEpithet"`
	TaxonRank                string `dwc:"taxonRank"`
	VerbatimTaxonRank        string `dwc:"verbatimTaxonRank"`
	ScientificNameAuthorship string `dwc:"scientificNameAuthorship"`
	VernacularName           string `dwc:"vernacularName"`
	NomenclaturalCode        string `dwc:"nomenclaturalCode" validate:"omitempty,nomenclatural_code"`
	TaxonomicStatus          string `dwc:"taxonomicStatus"`
	TaxonRemarks             string `dwc:"taxonRemarks"`
}
