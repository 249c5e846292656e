package dwc_test

import (
	"archive/zip"
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
	"fieldfare/testdata/need"
)

// unzip returns the files of an archive by name.
func unzip(t testing.TB, archive []byte) map[string]string {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	require.NoError(t, err)
	files := map[string]string{}
	for _, f := range z.File {
		require.NotContains(t, files, f.Name)
		r, err := f.Open()
		require.NoError(t, err)
		content, err := io.ReadAll(r)
		require.NoError(t, err)
		files[f.Name] = string(content)
	}
	return files
}

// Schemas of the documents in an archive: the Darwin Core text guide's (TDWG)
// and Ecological Metadata Language 2.2.0's.
const (
	metaSchema = "xsd/dwc/tdwg_dwc_text.xsd"
	emlSchema  = "xsd/eml-2.2.0/eml.xsd"
)

// requireValid has libxml2 validate a document against a published schema.
func requireValid(t testing.TB, schema, document string) {
	t.Helper()
	xmllint := need.Tool(t, "xmllint", "apt-get install libxml2-utils")
	path := filepath.Join(t.TempDir(), "document.xml")
	require.NoError(t, os.WriteFile(path, []byte(document), 0o600))
	cmd := exec.Command(xmllint, "--nonet", "--noout", "--schema", need.ReferenceFile(t, schema), path)
	cmd.Env = append(os.Environ(), "XML_CATALOG_FILES="+need.ReferenceFile(t, "xsd/catalog.xml"))
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, "%s\n%s", out, document)
}

// fullOccurrence is a record as a notebook yields it, with what it has filled.
func fullOccurrence() *dwc.Occurrence {
	return &dwc.Occurrence{
		OccurrenceID: "urn:uuid:3f0c9a1e-6a1c-4f0e-9a53-0a4a1f7b2d10", BasisOfRecord: "HumanObservation", OccurrenceStatus: "detected",
		License: "http://creativecommons.org/licenses/by/4.0/legalcode", RightsHolder: "Sallowmere Recorders", DatasetName: "Moths of Sallowmere Reserve",
		DatasetID: "sallowmere", InstitutionCode: "SR", RecordedBy: "Ines Calloway | Tom Achterberg", IdentifiedBy: "Tom Achterberg", IndividualCount: "3",
		Sex: "male", LifeStage: "adult", EventID: "urn:uuid:7d0c9a1e-6a1c-4f0e-9a53-0a4a1f7b2d10", EventDate: "2021-06-12/2021-06-13", Year: "2021", Month: "6", Day: "12",
		VerbatimEventDate: "night of 12/6/21", Habitat: "fen carr", SamplingProtocol: "Heath trap, 6 W actinic", OccurrenceRemarks: "worn; by the sluice",
		Locality: "Sallowmere Reserve", County: "Cambridgeshire", CountryCode: "GB", DecimalLatitude: "52.5312345", DecimalLongitude: "0.1234567",
		GeodeticDatum: "EPSG:4326", CoordinateUncertainty: "71", FootprintWKT: "POLYGON ((0.12 52.53, 0.13 52.53, 0.13 52.54, 0.12 52.54, 0.12 52.53))",
		FootprintSRS: "EPSG:4326", VerbatimCoordinates: "TL 443 967", VerbatimCoordSystem: "British National Grid", VerbatimSRS: "EPSG:27700",
		GeoreferenceProtocol: "centre of the grid square", VerbatimIdentification: "Shuttle-shaped Dart", ScientificName: "Agrotis puta",
		ScientificNameAuthorship: "(Hübner, [1803])", TaxonRank: "species", Kingdom: "Animalia", Phylum: "Arthropoda", Class: "Insecta", Order: "Lepidoptera",
		Family: "Noctuidae", Genus: "Agrotis", SpecificEpithet: "puta", VernacularName: "Shuttle-shaped Dart", NomenclaturalCode: "ICZN", TaxonomicStatus: "accepted",
	}
}
