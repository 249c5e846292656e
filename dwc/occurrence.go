package dwc

// Occurrence is one record: the existence of an organism at a place and a
// time, with the terms of its event, location, identification and taxon
// beside it, as in a simple Darwin Core record. Every field is the text of
// the term that its dwc tag names (https://dwc.tdwg.org/terms/); an empty
// string means that nothing is stated. The validate tags hold what the
// standard itself says of a field.
type Occurrence struct {
	// Record level
	Type                string `dwc:"type"`
	Modified            string `dwc:"modified"`
	Language            string `dwc:"language"`
	License             string `dwc:"license"`
	RightsHolder        string `dwc:"rightsHolder"`
	AccessRights        string `dwc:"accessRights"`
	References          string `dwc:"references"`
	InstitutionID       string `dwc:"institutionID"`
	CollectionID        string `dwc:"collectionID"`
	DatasetID           string `dwc:"datasetID"`
	InstitutionCode     string `dwc:"institutionCode"`
	CollectionCode      string `dwc:"collectionCode"`
	DatasetName         string `dwc:"datasetName"`
	BasisOfRecord       string `dwc:"basisOfRecord"`
	InformationWithheld string `dwc:"informationWithheld"`
	DataGeneralizations string `dwc:"dataGeneralizations"`
	DynamicProperties   string `dwc:"dynamicProperties"`

	// Occurrence
	OccurrenceID         string `dwc:"occurrenceID"`
	CatalogNumber        string `dwc:"catalogNumber"`
	RecordNumber         string `dwc:"recordNumber"`
	RecordedBy           string `dwc:"recordedBy"`
	IndividualCount      string `dwc:"individualCount"`
	OrganismQuantity     string `dwc:"organismQuantity"`
	OrganismQuantityType string `dwc:"organismQuantityType"`
	Sex                  string `dwc:"sex"`
	LifeStage            string `dwc:"lifeStage"`
	Caste                string `dwc:"caste"`
	Behavior             string `dwc:"behavior"`
	Vitality             string `dwc:"vitality"`
	EstablishmentMeans   string `dwc:"establishmentMeans"`
	DegreeOfEstablish    string `dwc:"degreeOfEstablishment"`
	OccurrenceStatus     string `dwc:"occurrenceStatus"`
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

	// Identification
	VerbatimIdentification   string `dwc:"verbatimIdentification"`
	IdentificationQualifier  string `dwc:"identificationQualifier"`
	TypeStatus               string `dwc:"typeStatus"`
	IdentifiedBy             string `dwc:"identifiedBy"`
	DateIdentified           string `dwc:"dateIdentified"`
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
	NomenclaturalCode        string `dwc:"nomenclaturalCode"`
	TaxonomicStatus          string `dwc:"taxonomicStatus"`
	TaxonRemarks             string `dwc:"taxonRemarks"`
}
