package bdq_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
	"fieldfare/validate/bdq"
)

// moth is a record as a submission has it, complete and clean.
func moth() *dwc.Occurrence {
	return &dwc.Occurrence{
		Type: "Event", License: "http://creativecommons.org/licenses/by/4.0/legalcode", BasisOfRecord: "HumanObservation",
		OccurrenceID: "urn:uuid:5c8d6e0e-0b1c-5f63-9d1e-3f0a4a1c7e55", RecordedBy: "Ines Calloway", IndividualCount: "3",
		OccurrenceStatus: "present", LifeStage: "imago", EventDate: "2024-06-14", Year: "2024", Month: "6", Day: "14",
		StartDayOfYear: "166", EndDayOfYear: "166", VerbatimEventDate: "14/6/24", SamplingProtocol: "light trap",
		Country: "United Kingdom", CountryCode: "GB", Locality: "Sallowmere Reserve", DecimalLatitude: "52.5400000",
		DecimalLongitude: "0.3600000", GeodeticDatum: "EPSG:4326", CoordinateUncertainty: "71", VerbatimCoordinates: "TL5890",
		IdentifiedBy: "Tom Achterberg", DateIdentified: "2024-06-15", ScientificName: "Noctua pronuba (Linnaeus, 1758)",
		Kingdom: "Animalia", Genus: "Noctua", SpecificEpithet: "pronuba", TaxonRank: "species",
		ScientificNameAuthorship: "(Linnaeus, 1758)", ScientificNameID: "urn:lsid:example.org:names:148", TaxonID: "148",
	}
}

func BenchmarkObserve(b *testing.B) {
	suite, err := bdq.New(bdq.Settings{Today: today})
	require.NoError(b, err)
	report := suite.NewReport()
	record := moth()
	b.ReportAllocs()
	for b.Loop() {
		report.Observe(record)
	}
}

// BenchmarkObserveNothingStated runs the tests on a record without a value.
func BenchmarkObserveNothingStated(b *testing.B) {
	suite, err := bdq.New(bdq.Settings{Today: today})
	require.NoError(b, err)
	report := suite.NewReport()
	b.ReportAllocs()
	for b.Loop() {
		report.Observe(bdq.Map{})
	}
}
