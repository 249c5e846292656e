package bdq

// completeness holds the validations and issues that ask whether a value is
// stated.
var completeness = []Test{
	{
		Label: "VALIDATION_EVENTDATE_NOTEMPTY", GUID: "f51e15a6-a67d-4729-9c28-3766299d2985",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:eventDate"),
		run:       notEmpty("dwc:eventDate"),
	},
	{
		Label: "VALIDATION_LOCATION_NOTEMPTY", GUID: "58486cb6-1114-4a8a-ba1e-bd89cfe887e9",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: locationTerms,
		run:       notEmpty(locationTerms...),
	},
	{
		Label: "VALIDATION_COUNTRY_NOTEMPTY", GUID: "6ce2b2b4-6afe-4d13-82a0-390d31ade01c",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:country"), Consulted: terms("dwc:countryCode"),
		run: countryNotEmpty,
	},
	{
		Label: "VALIDATION_OCCURRENCEID_NOTEMPTY", GUID: "c486546c-e6e5-48a7-b286-eba7f5ca56c4",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:occurrenceID"),
		run:       notEmpty("dwc:occurrenceID"),
	},
	{
		Label: "VALIDATION_YEAR_NOTEMPTY", GUID: "c09ecbf9-34e3-4f3e-b74a-8796af15e59f",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:year"),
		run:       notEmpty("dwc:year"),
	},
	{
		Label: "VALIDATION_BASISOFRECORD_NOTEMPTY", GUID: "ac2b7648-d5f9-48ca-9b07-8ad5879a2536",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:basisOfRecord"),
		run:       notEmpty("dwc:basisOfRecord"),
	},
	{
		Label: "VALIDATION_GEODETICDATUM_NOTEMPTY", GUID: "239ec40e-a729-4a8e-ba69-e0bf03ac1c44",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:geodeticDatum"),
		run:       notEmpty("dwc:geodeticDatum"),
	},
	{
		Label: "VALIDATION_SCIENTIFICNAME_NOTEMPTY", GUID: "7c4b9498-a8d9-4ebb-85f1-9f200c788595",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:scientificName"),
		run:       notEmpty("dwc:scientificName"),
	},
	{
		Label: "VALIDATION_EVENTTEMPORAL_NOTEMPTY", GUID: "41267642-60ff-4116-90eb-499fee2cd83f",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:eventDate dwc:year dwc:month dwc:day dwc:startDayOfYear dwc:endDayOfYear dwc:verbatimEventDate"),
		run:       notEmpty("dwc:eventDate", "dwc:year", "dwc:month", "dwc:day", "dwc:startDayOfYear", "dwc:endDayOfYear", "dwc:verbatimEventDate"),
	},
	{
		Label: "VALIDATION_DECIMALLONGITUDE_NOTEMPTY", GUID: "9beb9442-d942-4f42-8b6a-fcea01ee086a",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:decimalLongitude"),
		run:       notEmpty("dwc:decimalLongitude"),
	},
	{
		Label: "VALIDATION_COUNTRYCODE_NOTEMPTY", GUID: "853b79a2-b314-44a2-ae46-34a1e7ed85e4",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:countryCode"),
		run:       notEmpty("dwc:countryCode"),
	},
	{
		Label: "VALIDATION_LICENSE_NOTEMPTY", GUID: "15f78619-811a-4c6f-997a-a4c7888ad849",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dcterms:license"),
		run:       notEmpty("dcterms:license"),
	},
	{
		Label: "VALIDATION_DCTYPE_NOTEMPTY", GUID: "374b091a-fc90-4791-91e5-c1557c649169",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dc:type"),
		run:       notEmpty("dc:type"),
	},
	{
		Label: "VALIDATION_TAXON_NOTEMPTY", GUID: "06851339-843f-4a43-8422-4e61b9a00e75",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: taxonTerms,
		run:       notEmpty(taxonTerms...),
	},
	{
		Label: "VALIDATION_OCCURRENCESTATUS_NOTEMPTY", GUID: "eb4a17f6-6bea-4cdd-93dd-d5a7e9d1eccf",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:occurrenceStatus"),
		run:       notEmpty("dwc:occurrenceStatus"),
	},
	{
		Label: "VALIDATION_DECIMALLATITUDE_NOTEMPTY", GUID: "7d2485d5-1ba7-4f25-90cb-f4480ff1a275",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:decimalLatitude"),
		run:       notEmpty("dwc:decimalLatitude"),
	},
	{
		Label: "VALIDATION_SCIENTIFICNAMEID_NOTEMPTY", GUID: "401bf207-9a55-4dff-88a5-abcd58ad97fa",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:scientificNameID"),
		run:       notEmpty("dwc:scientificNameID"),
	},
	{
		Label: "VALIDATION_TAXONRANK_NOTEMPTY", GUID: "14da5b87-8304-4b2b-911d-117e3c29e890",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:taxonRank"),
		run:       notEmpty("dwc:taxonRank"),
	},
	{
		Label: "VALIDATION_KINGDOM_NOTEMPTY", GUID: "36ed36c9-b1a7-40b2-b5e2-0d012e772098",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:kingdom"),
		run:       notEmpty("dwc:kingdom"),
	},
	{
		Label: "VALIDATION_SCIENTIFICNAMEAUTHORSHIP_NOTEMPTY", GUID: "49f1d386-5bed-43ae-bd43-deabf7df64fc",
		Type: Validation, Dimension: "Completeness",
		ActedUpon: terms("dwc:scientificNameAuthorship"),
		run:       notEmpty("dwc:scientificNameAuthorship"),
	},
	{
		Label: "ISSUE_DATAGENERALIZATIONS_NOTEMPTY", GUID: "13d5a10e-188e-40fd-a22c-dbaa87b91df2",
		Type: Issue, Dimension: "Resolution",
		ActedUpon: terms("dwc:dataGeneralizations"),
		run:       issue("dwc:dataGeneralizations"),
	},
	{
		Label: "ISSUE_ESTABLISHMENTMEANS_NOTEMPTY", GUID: "acc8dff2-d8d1-483a-946d-65a02a452700",
		Type: Issue, Dimension: "Completeness",
		ActedUpon: terms("dwc:establishmentMeans"),
		run:       issue("dwc:establishmentMeans"),
	},
}

var locationTerms = terms("dwc:higherGeographyID dwc:higherGeography dwc:continent dwc:country dwc:countryCode " +
	"dwc:stateProvince dwc:county dwc:municipality dwc:waterBody dwc:island dwc:islandGroup " +
	"dwc:locality dwc:locationID dwc:verbatimLocality dwc:decimalLatitude dwc:decimalLongitude " +
	"dwc:verbatimCoordinates dwc:verbatimLatitude dwc:verbatimLongitude dwc:footprintWKT")

var taxonTerms = terms("dwc:taxonID dwc:scientificNameID dwc:acceptedNameUsageID dwc:parentNameUsageID " +
	"dwc:originalNameUsageID dwc:taxonConceptID dwc:scientificName dwc:higherClassification " +
	"dwc:kingdom dwc:phylum dwc:class dwc:order dwc:superfamily dwc:family dwc:subfamily dwc:tribe " +
	"dwc:subtribe dwc:genus dwc:genericName dwc:subgenus dwc:infragenericEpithet dwc:specificEpithet " +
	"dwc:infraspecificEpithet dwc:vernacularName dwc:cultivarEpithet")
