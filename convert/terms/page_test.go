package terms_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/terms"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// sheet opens a text as a notebook's only sheet.
func sheet(t *testing.T, text string) notebook.Sheet {
	t.Helper()
	path := filepath.Join(t.TempDir(), "terms.csv")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	book, err := notebook.Open(t.Context(), path, notebook.Options{})
	require.NoError(t, err)
	t.Cleanup(func() { book.Close() })
	return book.Sheets()[0]
}

// walked is what became of the rows of a page.
func walked(t *testing.T, text string, o terms.Options) (*terms.Page, []layout.Outcome) {
	t.Helper()
	s := sheet(t, text)
	page, err := terms.Open(s, o)
	require.NoError(t, err)
	require.NotNil(t, page)
	var rows []layout.Outcome
	require.NoError(t, page.Walk(s, func(out *layout.Outcome) error {
		row := *out
		row.Drafts = nil
		for _, d := range out.Drafts {
			d.Values = append([]layout.Value(nil), d.Values...)
			row.Drafts = append(row.Drafts, d)
		}
		rows = append(rows, row)
		return nil
	}))
	return page, rows
}

func TestOpen(t *testing.T) {
	words := func(heading string) string {
		if heading == "What was seen" {
			return "scientificName"
		}
		return ""
	}
	for headings, want := range map[string]bool{
		"occurrenceID,scientificName,eventDate":                        true,
		"dwc:occurrenceID,http://rs.tdwg.org/dwc/terms/scientificName": true,
		"occurrenceID,scientificName,Measurement: forewing (mm)":       true,
		"occurrenceID,What was seen,eventDate":                         true,
		"scientificName,eventDate,recordedBy":                          true, // three spelt as terms, without an id
		"vernacularName,eventDate,recordedBy":                          true,
		"\n\noccurrenceID,scientificName,eventDate":                    true,
		"occurrenceID,scientificName,geologicalContextID":              true, // a term of Darwin Core, of which a record has none
		"scientificName,eventDate":                                     false,
		"occurrenceID,eventDate,recordedBy":                            false, // says nothing of what was seen
		"occurrenceID,scientificName,eventDate,Weather":                false,
		"Date,Species,Count":                                           false,
		"year,month,day":                                               false,
		"":                                                             false,
	} {
		page, err := terms.Open(sheet(t, headings+"\n1,Noctua pronuba,2021\n"), terms.Options{Words: words})
		require.NoError(t, err, headings)
		assert.Equal(t, want, page != nil, headings)
	}
	// In an archive, and by the project file's word, less is enough.
	for _, o := range []terms.Options{{Archive: true}, {Entry: layout.Entry{Page: layout.Terms}}} {
		page, err := terms.Open(sheet(t, "eventDate,Weather\n2021,mild\n"), o)
		require.NoError(t, err)
		require.NotNil(t, page)
		assert.True(t, page.Has("eventDate"))
		assert.False(t, page.Has("scientificName"))
		page, err = terms.Open(sheet(t, "Weather\nmild\n"), o)
		require.NoError(t, err)
		assert.Nil(t, page)
	}
}

// Each cell is taken for what its heading says, and whatever is not is counted.
func TestWalk(t *testing.T) {
	page, rows := walked(t, `occurrenceID,scientificName,eventDate,locality,dwc:locality,lamp,geologicalContextID
1,Noctua pronuba,2021-06-12,Carr Edge,Long Drove,MV,
2,Noctua comes,2021-06-13,,Long Drove,,fen
,,,,,,
,,,,,MV,
`, terms.Options{Archive: true})
	require.Len(t, rows, 5)
	assert.Equal(t, "headings", rows[0].Skip)
	assert.Equal(t, 7, rows[0].Used)
	require.Len(t, rows[0].Notes, 2)
	assert.Equal(t, "column-repeated", rows[0].Notes[0].Code)
	assert.Contains(t, rows[0].Notes[0].Message, "Column E, headed “dwc:locality”, repeats the term of column D")
	assert.Equal(t, "column-not-understood", rows[0].Notes[1].Code)
	assert.Contains(t, rows[0].Notes[1].Message, "Column F, headed “lamp”")

	first := rows[1].Drafts[0]
	place, _ := first.Get(layout.Site)
	assert.Equal(t, "Carr Edge", place.Text)
	assert.Equal(t, notebook.Ref{Col: 4, Row: 2}, place.Ref)
	assert.Equal(t, map[string]int{"term stated in another column": 1, "column not understood": 1}, rows[1].Left)
	assert.Equal(t, 4, rows[1].Used)
	place, _ = rows[2].Drafts[0].Get(layout.Site)
	assert.Equal(t, "Long Drove", place.Text, "where the first column has nothing")
	assert.Equal(t, layout.Value{Meaning: layout.Term, Text: `{"geologicalContextID":"fen"}`, Heading: "dynamicProperties", From: layout.FromCell, Ref: notebook.Ref{Col: 7, Row: 3}},
		rows[2].Drafts[0].Values[len(rows[2].Drafts[0].Values)-1])
	assert.Equal(t, "blank", rows[3].Skip)
	assert.Equal(t, "blank", rows[4].Skip)
	assert.Equal(t, map[string]int{"column not understood": 1}, rows[4].Left)

	assert.True(t, page.Says(layout.Taxon), "a scientific name is a name")
	assert.True(t, page.Says(layout.Date))
	assert.False(t, page.Says(layout.Count))
	var text strings.Builder
	page.Print(&text)
	assert.Contains(t, text.String(), "terms.csv")
	assert.Regexp(t, `F +lamp +not understood`, text.String())
	assert.Regexp(t, `G +geologicalContextID +dynamicProperties`, text.String())
	assert.Equal(t, "term locality", page.Entries()[0].Columns["E"])
	assert.NotContains(t, page.Entries()[0].Columns, "F")
}

func TestJoinedDates(t *testing.T) {
	for _, c := range []struct{ year, month, day, want string }{
		{"2021", "6", "12", "2021-06-12"}, {"2021", "06", "2", "2021-06-02"}, {"2021", "6", "", "2021-06"}, {"2021", "", "", "2021"}, {"2021", "", "12", "2021"},
		{"2021", "June", "12", "12 June 2021"}, {"2021", "vi", "", "vi 2021"}, {"2021", "6", "12-13", "12-13 June 2021"}, {"21", "6", "12", "12 June 21"},
		{"2021", "13", "1", "2021-13-01"}, // the reader asks
		{"2021", "123", "", "year 2021, month 123"}, {"2021", "-6", "12", "year 2021, month -6, day 12"}, {"2021", "6-7", "", "year 2021, month 6-7"}, {"21", "0", "1", "year 21, month 0, day 1"},
	} {
		_, rows := walked(t, "occurrenceID,scientificName,year,month,day\na,Noctua pronuba,"+c.year+","+c.month+","+c.day+"\n", terms.Options{})
		date, found := rows[1].Drafts[0].Get(layout.Date)
		require.True(t, found, c)
		assert.Equal(t, c.want, date.Text)
		assert.Equal(t, c.year, date.Verbatim)
	}
	_, rows := walked(t, "occurrenceID,scientificName,year,month,eventDate,verbatimEventDate\na,Noctua pronuba,2021,6,2020-01-01,\nb,Noctua pronuba,,,,12th June\n", terms.Options{})
	date, _ := rows[1].Drafts[0].Get(layout.Date)
	assert.Equal(t, "2020-01-01", date.Text, "a date that is stated goes before its parts")
	date, _ = rows[2].Drafts[0].Get(layout.Date)
	assert.Equal(t, "12th June", date.Text)
}

// A grid reference goes before the latitude and longitude that are its own,
// to six decimals; others are kept, for somebody has measured them.
func TestReferenceOrCoordinates(t *testing.T) {
	// TL4588 as gridref has it.
	const lat, lon = "52.4750599", "0.1408361"
	for _, c := range []struct {
		reference, lat, lon string
		squared             bool
	}{
		{"TL4588", lat, lon, true}, {"TL4588", "52.475060", "0.140836", true}, {"TL4588", "", "", true},
		{"TL4588", "52.47507", lon, false}, {"TL4588", lat, "0.14085", false}, {"TL4588", lat, "", false}, {"TL4588", "", lon, false},
		{"by the sluice", lat, lon, false}, {"52.47506, 0.14084", lat, lon, false}, {"", lat, lon, false},
	} {
		_, rows := walked(t, "occurrenceID,scientificName,verbatimCoordinates,decimalLatitude,decimalLongitude\na,Noctua pronuba,\""+c.reference+"\","+c.lat+","+c.lon+"\n", terms.Options{})
		d := rows[1].Drafts[0]
		_, byReference := d.Get(layout.GridRef)
		_, byLatitude := d.Get(layout.Latitude)
		assert.Equal(t, c.squared, byReference, c)
		assert.Equal(t, !c.squared && c.lat != "", byLatitude, c)
	}
}

// A row of an event alone is a visit.
func TestVisits(t *testing.T) {
	_, rows := walked(t, "eventID,occurrenceID,scientificName,eventDate\nn1,,,2021-06-12\nn1,a,Noctua pronuba,2021-06-12\n,,Noctua pronuba,2021-06-12\nn1,,Noctua pronuba,2021-06-12\n", terms.Options{Archive: true})
	var visits []bool
	for _, row := range rows[1:] {
		visits = append(visits, row.Drafts[0].Empty)
	}
	assert.Equal(t, []bool{true, false, false, false}, visits)
}

// What the project file says of a page counts where the page says nothing.
func TestEntryOfThePage(t *testing.T) {
	entry := layout.Entry{Page: layout.Terms, Columns: map[string]string{"B": "term locality", "C": "ignored"}, Facts: map[string]string{"recorder": "Ines Calloway", "site": "Tinker's Row"}, Skip: []string{"3"}}
	page, rows := walked(t, "scientificName,where,lamp\nNoctua pronuba,Carr Edge,MV\nNoctua comes,,\nNoctua janthe,,\n", terms.Options{Entry: entry})
	require.Len(t, rows, 4)
	assert.Empty(t, rows[0].Notes, "it is said what the columns hold")
	assert.Equal(t, map[string]int{layout.LeftOut: 1}, rows[1].Left)
	var text strings.Builder
	page.Print(&text)
	assert.Regexp(t, "C +lamp +"+layout.LeftOut, text.String())
	assert.Equal(t, map[string]string{"A": "term scientificName", "B": "term locality", "C": "ignored"}, page.Entries()[0].Columns)
	site, _ := rows[1].Drafts[0].Get(layout.Site)
	assert.Equal(t, "Carr Edge", site.Text)
	assert.Equal(t, 1, slices.IndexFunc(rows[1].Drafts[0].Values, func(v layout.Value) bool { return v.Meaning == layout.Site }))
	assert.Len(t, rows[1].Drafts[0].Values, 3, "the name, the place that is stated, and the recorder")
	recorder, _ := rows[1].Drafts[0].Get(layout.Recorder)
	assert.Equal(t, layout.Value{Meaning: layout.Recorder, Text: "Ines Calloway", From: layout.FromProject}, *recorder)
	assert.Equal(t, layout.LeftOut, rows[2].Skip)
	assert.Equal(t, map[string]int{layout.LeftOut: 1}, rows[2].Left)
	site, _ = rows[3].Drafts[0].Get(layout.Site)
	assert.Equal(t, "Tinker's Row", site.Text)
}

// Several measurements of a record share a cell; each keeps what is said of it.
func TestMeasurementsOfACell(t *testing.T) {
	_, rows := walked(t, "occurrenceID,scientificName,Measurement: forewing,Measurement method: forewing\na,Noctua pronuba,17 | 18,calipers | ruler\nb,Noctua pronuba, | 18,calipers | ruler\n", terms.Options{})
	var said []string
	for _, row := range rows[1:] {
		for _, v := range row.Drafts[0].Values {
			if v.Meaning == layout.Measurement || v.Meaning == layout.AboutMeasurement {
				said = append(said, v.Heading+"="+v.Text)
			}
		}
	}
	assert.Equal(t, []string{"forewing=17", "measurementMethod=calipers", "forewing=18", "measurementMethod=ruler", "forewing=18", "measurementMethod=ruler"}, said)
}

// A table that nothing is read of gives each row its reason.
func TestTableLeftOut(t *testing.T) {
	page, rows := walked(t, "id,title\n1,The fen\n", terms.Options{Archive: true, LeftOut: "the table is of no records"})
	assert.Equal(t, "the table is of no records", rows[1].Skip)
	assert.Equal(t, map[string]int{"the table is of no records": 2}, rows[1].Left)
	assert.Empty(t, rows[0].Notes)
	assert.Empty(t, page.Entries())
	var text strings.Builder
	page.Print(&text)
	assert.Contains(t, text.String(), "left out: the table is of no records")
}
