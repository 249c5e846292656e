package dwc_test

import (
	"archive/zip"
	"bytes"
	"io"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
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

// zipped packs files, in the order of their names, into an archive file.
func zipped(t testing.TB, files map[string]string) string {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, name := range slices.Sorted(maps.Keys(files)) {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = io.WriteString(w, files[name])
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return saved(t, "archive.zip", b.Bytes())
}

func saved(t testing.TB, name string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, content, 0o600))
	return path
}

// foldered writes files into a folder.
func foldered(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, content := range files {
		path := filepath.Join(dir, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
		require.NoError(t, os.WriteFile(path, []byte(content), 0o600))
	}
	return dir
}

func opened(t testing.TB, path string, limits ...dwc.Limits) *dwc.Archive {
	t.Helper()
	a, err := dwc.OpenArchive(path, limits...)
	require.NoError(t, err)
	t.Cleanup(func() { a.Close() })
	return a
}

// values reads a table: of each row, the values of its columns.
func values(t testing.TB, table *dwc.DataTable) [][]string {
	t.Helper()
	var rows [][]string
	for row, err := range table.Rows() {
		require.NoError(t, err)
		var row1 []string
		for i := range table.Columns() {
			row1 = append(row1, row.Value(i))
		}
		rows = append(rows, row1)
	}
	return rows
}

// notes joins an archive's notes.
func notes(a *dwc.Archive) string {
	var all []string
	for _, n := range a.Notes {
		all = append(all, n.String())
	}
	return strings.Join(all, "\n")
}

// meta is a descriptor of an occurrence core with the attributes and content.
func meta(attrs, content string) string {
	return `<?xml version="1.0" encoding="UTF-8"?>
<archive xmlns="http://rs.tdwg.org/dwc/text/">
  <core rowType="http://rs.tdwg.org/dwc/terms/Occurrence" ` + attrs + `>` + content + `</core>
</archive>`
}

// three describes a file of an id, a scientific name and remarks.
func three(file string) string {
	return `<files><location>` + file + `</location></files><id index="0"/>
    <field index="0" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/>
    <field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
    <field index="2" term="http://rs.tdwg.org/dwc/terms/occurrenceRemarks"/>`
}

// occurrenceArchive writes records to an archive file with a column for each
// term that they use.
func occurrenceArchive(t testing.TB, records ...*dwc.Occurrence) string {
	t.Helper()
	used := dwc.NewUsed(dwc.RowOccurrence)
	for _, o := range records {
		used.Add(o)
	}
	var b bytes.Buffer
	w, err := dwc.NewWriter(&b, dwc.Table{RowType: dwc.RowOccurrence, Columns: used.Columns("occurrenceID")})
	require.NoError(t, err)
	for _, o := range records {
		require.NoError(t, w.Write(0, o))
	}
	require.NoError(t, w.Close())
	return saved(t, "archive.zip", b.Bytes())
}
