package notebook

import (
	"archive/zip"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// unpacked are the parts of a zipped file, each a name and its content.
func unpacked(t testing.TB, path string) (parts []string) {
	t.Helper()
	z, err := zip.OpenReader(path)
	require.NoError(t, err)
	defer z.Close()
	for _, f := range z.File {
		if strings.HasSuffix(f.Name, "/") {
			continue // a folder
		}
		r, err := f.Open()
		require.NoError(t, err)
		content, err := io.ReadAll(r)
		require.NoError(t, err)
		require.NoError(t, r.Close())
		parts = append(parts, f.Name, string(content))
	}
	return parts
}

// with returns a text of which some bytes from a place on are others.
func with(text string, at, cut uint16, put []byte) string {
	from := min(int(at), len(text))
	return text[:from] + string(put) + text[min(from+int(cut), len(text)):]
}

// FuzzRealWorkbooks changes a part of a workbook that a spreadsheet program has
// saved: the list of sheets, their links, styles, texts, cells and comments.
// Reading ends, with rows or with a Problem.
func FuzzRealWorkbooks(f *testing.F) {
	names := []string{"garden.xlsx", "garden.ods"}
	books := [][]string{}
	for i, name := range names {
		parts := unpacked(f, filepath.Join("testdata", name))
		books = append(books, parts)
		for part := range len(parts) / 2 {
			n := uint16(len(parts[2*part+1]) / 2)
			f.Add(uint8(i), uint8(part), n, uint16(0), []byte{})
			f.Add(uint8(i), uint8(part), n, uint16(9), []byte(`"/><row r="9">`))
			f.Add(uint8(i), uint8(part), n, uint16(60000), []byte(""))
		}
	}
	f.Fuzz(func(t *testing.T, book, part uint8, at, cut uint16, put []byte) {
		name, parts := names[int(book)%2], append([]string(nil), books[int(book)%2]...)
		i := int(part)%(len(parts)/2)*2 + 1
		parts[i] = with(parts[i], at, cut, put)
		readAll(t, name, []byte(packed(parts...)))
	})
}

// FuzzFlat is FuzzRealWorkbooks for OpenDocument in one file.
func FuzzFlat(f *testing.F) {
	whole, err := os.ReadFile("testdata/garden.fods")
	require.NoError(f, err)
	f.Add(uint16(0), uint16(0), []byte{})
	f.Add(uint16(20000), uint16(7), []byte(`table:number-columns-repeated="9"`))
	f.Fuzz(func(t *testing.T, at, cut uint16, put []byte) {
		readAll(t, "a.fods", []byte(with(string(whole), at, cut, put)))
	})
}

// FuzzGeoJSON: whatever a collection of places holds.
func FuzzGeoJSON(f *testing.F) {
	for _, s := range []string{
		`{"type":"FeatureCollection","features":[{"type":"Feature","geometry":{"type":"Point","coordinates":[0.18,52.4]},"properties":{"eventDate":"2021-06-12","individualCount":3,"x":null,"y":[1,{"z":true}]}}]}`,
		`{"type":"FeatureCollection","features":[{"type":"Feature","geometry":null,"properties":null},{"type":"Feature","geometry":{"type":"Polygon","coordinates":[[[0,1],[2,3]]]},"properties":{}}]}`,
		`{"features":[],"type":"FeatureCollection"`, `{"type":"Feature"}`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, content []byte) { readAll(t, "a.geojson", content) })
}

// FuzzArchive: whatever the descriptor, the table and the measurements of a
// Darwin Core Archive hold.
func FuzzArchive(f *testing.F) {
	meta := `<archive xmlns="http://rs.tdwg.org/dwc/text/" metadata="eml.xml"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence" fieldsTerminatedBy="\t" ignoreHeaderLines="1"><files><location>o.txt</location></files><id index="0"/>` +
		`<field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/><field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/><field term="http://purl.org/dc/terms/license" default="CC0"/></core>` +
		`<extension rowType="http://rs.tdwg.org/dwc/terms/MeasurementOrFact"><files><location>m.txt</location></files><coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/measurementType"/><field index="2" term="http://rs.tdwg.org/dwc/terms/measurementValue"/></extension></archive>`
	f.Add(meta, "id\tdate\tname\n1\t2021-06-12\tNoctua pronuba\n", "1,length,24\n1,length,25\n")
	f.Add(strings.Replace(meta, "Occurrence", "Event", 1), "id\tdate\tname\n1\t2021\t\n", "2,,\n")
	f.Fuzz(func(t *testing.T, meta, table, measured string) {
		if len(meta)+len(table)+len(measured) > 1<<16 {
			return
		}
		readAll(t, "a.zip", []byte(packed("meta.xml", meta, "o.txt", table, "m.txt", measured, "eml.xml", meta)))
	})
}

// FuzzMeasurementHeading: a heading of measurements is read as what it was
// made of, and any other text as none or as one that is made the same way.
func FuzzMeasurementHeading(f *testing.F) {
	f.Add("Measurement: forewing length", "mm", true)
	f.Add("Measurement of the visit method: x (y)", "", false)
	f.Fuzz(func(t *testing.T, text, unit string, event bool) {
		if kind, term, event, ok := ParseMeasurementHeading(text); ok {
			m := dwc.Measurement{MeasurementType: kind}
			made := MeasurementHeading(&m, event, term)
			assert.True(t, made == text || made == text+" ()", "%q is made as %q", text, made)
		}
		m := dwc.Measurement{MeasurementType: text, MeasurementUnit: unit}
		_, _, of, ok := ParseMeasurementHeading(MeasurementHeading(&m, event, ""))
		assert.True(t, ok)
		assert.Equal(t, event, of)
	})
}
