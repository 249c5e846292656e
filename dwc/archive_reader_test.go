package dwc_test

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"fieldfare/dwc"
)

// What is written is read back, whole and equal, from every way of keeping it.
func TestReadBackEventArchive(t *testing.T) {
	archive := eventArchive(t, 7)
	files := unzip(t, archive)
	top := map[string]string{"__MACOSX/._meta.xml": "x", ".DS_Store": "x"}
	for name, content := range files {
		top["submission/"+name] = content
	}
	for name, path := range map[string]string{
		"zip": saved(t, "a.zip", archive), "zip by another name": saved(t, "a.dwca", archive), "folder": foldered(t, files),
		"zip with a top folder": zipped(t, top), "folder with a top folder": foldered(t, top),
	} {
		t.Run(name, func(t *testing.T) {
			a := opened(t, path)
			assert.Empty(t, a.Notes)
			assert.Equal(t, dwc.RowEvent, a.Core.RowType())
			require.Len(t, a.Extensions, 2)
			events := values(t, a.Core)
			require.Len(t, events, 7)
			assert.Equal(t, []string{"night-6", "2021-06-12/13", "Heath trap, 6 W actinic"}, events[6])
			require.NotNil(t, a.Table(dwc.RowMeasurement))
			assert.Nil(t, a.Table(dwc.RowTaxon))
			assert.Len(t, values(t, a.Table(dwc.RowOccurrence)), 6)
			for row, err := range a.Table(dwc.RowMeasurement).Rows() {
				require.NoError(t, err)
				var m dwc.Measurement
				row.Fill(&m)
				assert.Equal(t, dwc.Measurement{EventID: row.ID(), OccurrenceID: row.ID() + "-" + m.OccurrenceID[len(m.OccurrenceID)-1:],
					MeasurementType: "forewing length", MeasurementValue: "14.5", MeasurementUnit: "mm"}, m)
			}
			d, err := a.Metadata()
			require.NoError(t, err)
			assert.Equal(t, "Moths of Sallowmere Reserve & the garden at Tinker's Row", d.Title)
		})
	}
}

func TestFullOccurrenceReadsBackEqual(t *testing.T) {
	o := fullOccurrence()
	for _, term := range dwc.Terms() {
		if o.Get(term) == "" {
			o.Set(term, "any "+term)
		}
	}
	a := opened(t, occurrenceArchive(t, o))
	n := 0
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		var back dwc.Occurrence
		row.Fill(&back)
		assert.Equal(t, *o, back)
		assert.Equal(t, o.OccurrenceID, row.ID())
		assert.Equal(t, o.EventDate, row.Get("http://rs.tdwg.org/dwc/terms/eventDate"))
		n++
	}
	assert.Equal(t, 1, n)
}

// The attributes of the Darwin Core text guide, with its defaults.
func TestDialects(t *testing.T) {
	want := [][]string{{"a1", "Agrotis puta", "worn, small"}, {"a2", "Noctua pronuba", ""}}
	for name, c := range map[string]struct{ attrs, text string }{
		"all defaults":      {``, "a1,Agrotis puta,\"worn, small\"\na2,Noctua pronuba,\n"},
		"no last newline":   {``, "a1,Agrotis puta,\"worn, small\"\na2,Noctua pronuba,"},
		"quoted last":       {``, "a2,Noctua pronuba,\"\"\n"},
		"carriage returns":  {``, "a1,Agrotis puta,\"worn, small\"\r\na2,Noctua pronuba,\r\n"},
		"blank lines":       {``, "\na1,Agrotis puta,\"worn, small\"\n\n\na2,Noctua pronuba,\n\n"},
		"tabs":              {`fieldsTerminatedBy="\t" fieldsEnclosedBy=""`, "a1\tAgrotis puta\tworn, small\na2\tNoctua pronuba\t\n"},
		"a real tab":        {`fieldsTerminatedBy="&#9;" fieldsEnclosedBy=""`, "a1\tAgrotis puta\tworn, small\na2\tNoctua pronuba\t\n"},
		"semicolons":        {`fieldsTerminatedBy=";"`, "a1;Agrotis puta;worn, small\na2;Noctua pronuba;\n"},
		"bars":              {`fieldsTerminatedBy="|" fieldsEnclosedBy="'"`, "'a1'|'Agrotis puta'|'worn, small'\n'a2'|'Noctua pronuba'|''\n"},
		"two characters":    {`fieldsTerminatedBy="||"`, "a1||Agrotis puta||worn, small\na2||Noctua pronuba||\n"},
		"guillemet":         {`fieldsEnclosedBy="¦"`, "a1,Agrotis puta,¦worn, small¦\na2,Noctua pronuba,\n"},
		"header":            {`ignoreHeaderLines="1"`, "occurrenceID,scientificName,occurrenceRemarks\na1,Agrotis puta,\"worn, small\"\na2,Noctua pronuba,\n"},
		"three header":      {`ignoreHeaderLines="3"`, "Sallowmere,,\n,,\nid,name,remarks\na1,Agrotis puta,\"worn, small\"\na2,Noctua pronuba,\n"},
		"returns and feeds": {`linesTerminatedBy="\r\n"`, "a1,Agrotis puta,\"worn, small\"\r\na2,Noctua pronuba,\r\n"},
		"returns":           {`linesTerminatedBy="\r"`, "a1,Agrotis puta,\"worn, small\"\ra2,Noctua pronuba,\r"},
		"own terminator":    {`linesTerminatedBy="#\n"`, "a1,Agrotis puta,\"worn, small\"#\na2,Noctua pronuba,#\n"},
		"feeds for returns": {`linesTerminatedBy="\r\n"`, "a1,Agrotis puta,\"worn, small\"\na2,Noctua pronuba,\n"},
		"returns for feeds": {`linesTerminatedBy="\n"`, "a1,Agrotis puta,\"worn, small\"\ra2,Noctua pronuba,\r"},
		"other letter case": {`FieldsTerminatedBy=";" IGNOREHEADERLINES="1"`, "x\na1;Agrotis puta;worn, small\na2;Noctua pronuba;\n"},
	} {
		t.Run(name, func(t *testing.T) {
			a := opened(t, zipped(t, map[string]string{"meta.xml": meta(c.attrs, three("o.txt")), "o.txt": c.text}))
			got := values(t, a.Core)
			if name == "quoted last" {
				assert.Equal(t, want[1:], got)
				return
			}
			assert.Equal(t, want, got)
			assert.Equal(t, want, values(t, a.Core), "a second time")
		})
	}
}

func TestEnclosedFields(t *testing.T) {
	for in, want := range map[string]string{
		`"a, b"`:                   "a, b",
		`"say ""hello"""`:          `say "hello"`,
		`""""`:                     `"`,
		`""`:                       "",
		`"line one` + "\nline 2\"": "line one\nline 2",
		"\"a\r\nb\"":               "a\r\nb",
		`it is 5" wide`:            `it is 5" wide`,
		`"Ines" said so`:           `"Ines" said so`, // not enclosed: the quotes are text
		`"small" "worn"`:           `"small" "worn"`,
		` "spaced"`:                ` "spaced"`,
		"🦋 ünï":                    "🦋 ünï",
	} {
		for _, ending := range []string{"\n", "\r\n", ""} {
			text := "a1,x,y\na2,name," + in + "\na3,name," + in + ending
			a := opened(t, zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": text}))
			got := values(t, a.Core)
			require.Len(t, got, 3, in)
			assert.Equal(t, []string{"a2", "name", want}, got[1])
			assert.Equal(t, []string{"a3", "name", want}, got[2], "%q", ending)
			a = opened(t, zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": in + ",name,x" + ending}))
			assert.Equal(t, [][]string{{want, "name", "x"}}, values(t, a.Core))
		}
	}
}

func TestEncodings(t *testing.T) {
	text := "a1,Eupithecia ultimaria,Hübner £5 – œuvre\n"
	utf16le := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM)
	for name, c := range map[string]struct {
		stated string
		enc    encoding.Encoding
	}{
		"UTF-8": {"UTF-8", unicode.UTF8}, "mark": {"UTF-8", unicode.UTF8BOM}, "utf8": {"utf8", unicode.UTF8}, "empty": {"", unicode.UTF8},
		"windows": {"windows-1252", charmap.Windows1252}, "latin": {"ISO-8859-1", charmap.Windows1252}, "cp": {"cp1252", charmap.Windows1252},
		"utf16": {"UTF-16", utf16le}, "utf16be": {"UTF-16BE", unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)},
		"utf16 unsaid": {"UTF-8", utf16le}, "mark unsaid": {"windows-1252", unicode.UTF8BOM},
	} {
		t.Run(name, func(t *testing.T) {
			encoded, err := c.enc.NewEncoder().String(text)
			require.NoError(t, err)
			a := opened(t, zipped(t, map[string]string{"meta.xml": meta(`encoding="`+c.stated+`"`, three("o.txt")), "o.txt": encoded}))
			assert.Equal(t, [][]string{{"a1", "Eupithecia ultimaria", "Hübner £5 – œuvre"}}, values(t, a.Core))
		})
	}
	// IBM's code page 850, as MS-DOS kept notebooks.
	a := opened(t, zipped(t, map[string]string{"meta.xml": meta(`encoding="IBM850"`, three("o.txt")), "o.txt": "a1,x,H\x81bner\n"}))
	assert.Equal(t, "Hübner", values(t, a.Core)[0][2])
}

func TestDescriptorInAnotherEncoding(t *testing.T) {
	text := meta(`fieldsEnclosedBy="¦"`, three("o.txt"))
	for name, enc := range map[string]encoding.Encoding{"mark": unicode.UTF8BOM, "UTF-16": unicode.UTF16(unicode.LittleEndian, unicode.UseBOM)} {
		encoded, err := enc.NewEncoder().String(text)
		require.NoError(t, err)
		a := opened(t, zipped(t, map[string]string{"meta.xml": encoded, "o.txt": "a1,¦b,c¦,d"}))
		assert.Equal(t, [][]string{{"a1", "b,c", "d"}}, values(t, a.Core), name)
	}
	latin, err := charmap.ISO8859_1.NewEncoder().String(`<?xml version="1.0" encoding="ISO-8859-1"?>` + text[len(`<?xml version="1.0" encoding="UTF-8"?>`):])
	require.NoError(t, err)
	a := opened(t, zipped(t, map[string]string{"meta.xml": latin, "o.txt": "a1,¦b,c¦,d"}))
	assert.Equal(t, [][]string{{"a1", "b,c", "d"}}, values(t, a.Core))
}

func TestDefaultsAndColumnsWithoutIndex(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{
		"meta.xml": meta("", `<files><location>o.txt</location></files><id index="2"/>
			<field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
			<field index="0" term="http://rs.tdwg.org/dwc/terms/sex" default="undetermined"/>
			<field term="http://rs.tdwg.org/dwc/terms/country" default="United Kingdom"/>
			<field index="3" term="http://example.org/terms/lamp" delimitedBy=" | " vocabulary="http://example.org/lamps"/>`),
		"o.txt": "male,Agrotis puta,a1,actinic\n,Noctua pronuba,a2\n",
	}))
	var got []dwc.Occurrence
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		var o dwc.Occurrence
		row.Fill(&o)
		got = append(got, o)
		if row.ID() == "a1" {
			assert.Equal(t, "actinic", row.Get("http://example.org/terms/lamp"))
			assert.Equal(t, "United Kingdom", row.Get("country"))
			assert.Empty(t, row.Notes)
			continue
		}
		assert.Equal(t, []string{"The row has 3 values where the table has 4 columns; the missing ones were taken for empty."}, row.Notes)
		assert.Equal(t, 2, row.Line)
	}
	assert.Equal(t, []dwc.Occurrence{
		{OccurrenceID: "a1", ScientificName: "Agrotis puta", Sex: "male", Country: "United Kingdom"},
		{OccurrenceID: "a2", ScientificName: "Noctua pronuba", Sex: "undetermined", Country: "United Kingdom"},
	}, got)
	lamp := a.Core.Columns()[3]
	assert.Equal(t, dwc.Column{Term: dwc.Term{Name: "http://example.org/terms/lamp", IRI: "http://example.org/terms/lamp"}, Index: 3,
		DelimitedBy: " | ", Vocabulary: "http://example.org/lamps"}, lamp)
	assert.False(t, lamp.Term.Known())
}

func TestDateFormats(t *testing.T) {
	read := func(format, date string) (value, archiveNotes string, rowNotes []string) {
		a := opened(t, zipped(t, map[string]string{
			"meta.xml": meta(`dateFormat="`+format+`"`, `<files><location>o.txt</location></files><id index="0"/>
				<field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/><field index="2" term="http://rs.tdwg.org/dwc/terms/verbatimEventDate"/>`),
			"o.txt": "a1," + date + "," + date + "\n",
		}))
		for row, err := range a.Core.Rows() {
			require.NoError(t, err)
			assert.Equal(t, date, row.Get("verbatimEventDate"))
			value, rowNotes = row.Get("eventDate"), row.Notes
		}
		return value, notes(a), rowNotes
	}
	for _, c := range []struct{ format, date, want string }{
		{"DD/MM/YYYY", "12/06/2021", "2021-06-12"},
		{"MM/DD/YYYY", "12/06/2021", "2021-12-06"},
		{"D/M/YYYY", "3/6/2021", "2021-06-03"},
		{"dd.mm.yyyy", "3.06.2021", "2021-06-03"},
		{"YYYYMMDD", "20210603", "2021-06-03"},
		{"YYYY-DD-MM", "2021-03-06", "2021-06-03"},
		{"DD/MM/YYYY", "2021-06", "2021-06"},
	} {
		got, archiveNotes, rowNotes := read(c.format, c.date)
		assert.Equal(t, c.want, got, c)
		assert.Contains(t, archiveNotes, "“"+c.format+"”; they were read so", c)
		assert.Empty(t, rowNotes, c)
	}
	for _, c := range []struct{ format, date string }{{"DD/MM/YYYY", "31/02/2021"}, {"DD/MM/YYYY", "June 2021"}, {"DD/MM/YYYY", "12/06/21"}, {"DD/MM/YYYY", "12/06/2021 late"}} {
		got, _, rowNotes := read(c.format, c.date)
		assert.Equal(t, c.date, got)
		assert.Equal(t, []string{"The eventDate “" + c.date + "” is not written as DD/MM/YYYY, as stated, and was left as it is."}, rowNotes)
	}
	for _, format := range []string{"DD/MM/YY", "DD MMM YYYY", "MM/YYYY", "as Ines does", "Y/M/D", "DD/MM/YYYY/DD"} {
		got, archiveNotes, _ := read(format, "12/06/21")
		assert.Equal(t, "12/06/21", got)
		assert.Contains(t, archiveNotes, "which was not understood; they were left as they are", format)
	}
	for _, format := range []string{"", "YYYY-MM-DD", "yyyy-mm-dd"} {
		got, archiveNotes, _ := read(format, "12/06/21")
		assert.Equal(t, "12/06/21", got)
		assert.Empty(t, archiveNotes)
	}
}

func TestSeveralFilesATable(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{
		"meta.xml":     meta(`ignoreHeaderLines="1"`, `<files><location>2020.csv</location><location>sub/2021.csv</location></files><id index="0"/><field index="0" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/><field index="1" term="http://rs.tdwg.org/dwc/terms/year"/>`),
		"2020.csv":     "occurrenceID,year\na1,2020\n",
		"sub/2021.csv": "occurrenceID,year\na2,2021\na3,2021",
	}))
	assert.Equal(t, [][]string{{"a1", "2020"}, {"a2", "2021"}, {"a3", "2021"}}, values(t, a.Core))
	assert.Equal(t, []string{"2020.csv", "sub/2021.csv"}, a.Core.Files())
	assert.Empty(t, a.Notes)
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		if row.ID() == "a3" {
			assert.Equal(t, "sub/2021.csv", row.File)
			assert.Equal(t, 3, row.Line)
		}
	}
}

func TestFileNames(t *testing.T) {
	for location, name := range map[string]string{
		"./o.txt": "o.txt", "my records.txt": "my records.txt", "my%20records.txt": "my records.txt", "100%.txt": "100%.txt",
		"Hübner.txt":   "H\x81bner.txt", // IBM code page 437
		"data/./o.txt": "data/o.txt", "O.TXT": "o.txt",
	} {
		a := opened(t, zipped(t, map[string]string{"meta.xml": meta("", three(location)), name: "a1,b,c\n"}))
		assert.Equal(t, [][]string{{"a1", "b", "c"}}, values(t, a.Core), location)
		assert.Equal(t, location == "my%20records.txt" || location == "O.TXT", len(a.Notes) == 1, location)
	}
}

func TestLeniencyIsNoted(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{
		"META.XML": `<archive metadata="https://example.org/eml.xml"><core rowType="https://rs.tdwg.org/dwc/terms/occurrence" ignoreHeaderLines="1">
			<files><location>Occurrence.TXT</location></files><id index="0"/>
			<field index="0" term="http://rs.tdwg.org/dwc/terms/OccurrenceId"/>
			<field index="1" term="https://rs.tdwg.org/dwc/terms/scientificname"/>
			<field index="2" term="http://purl.org/dc/terms/type"/>
			<field index="3" term="http://rs.tdwg.org/dwc/terms/decimalLatitude"/></core></archive>`,
		"occurrence.txt": "occurrenceID,scientificName,type,decimalLongitude,lamp\na1,Agrotis puta,Event,52.5,actinic,extra\n",
	}))
	for _, want := range []string{
		"namespace is not", "“Occurrence.TXT” here; they were taken for the same",
		"The row type “https://rs.tdwg.org/dwc/terms/occurrence” was read as http://rs.tdwg.org/dwc/terms/Occurrence",
		"The term “http://rs.tdwg.org/dwc/terms/OccurrenceId” was read as http://rs.tdwg.org/dwc/terms/occurrenceID.",
		"“http://purl.org/dc/terms/type” was read as http://purl.org/dc/elements/1.1/type",
		"The heading of column 4 is “decimalLongitude”, but the descriptor says decimalLatitude",
		"which term the column “lamp” is", "The metadata is at https://example.org/eml.xml",
	} {
		assert.Contains(t, notes(a), want)
	}
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		assert.Equal(t, "actinic", row.Get("lamp"), "nothing is lost")
		assert.Equal(t, "Event", row.Get("type"))
		assert.Equal(t, []string{"The row has 6 values where the table has 5 columns; left out was “extra”."}, row.Notes)
	}
}

func TestSimpleArchives(t *testing.T) {
	want := [][]string{{"a1", "Agrotis puta", "worn, small"}}
	for name, path := range map[string]string{
		"zip":         zipped(t, map[string]string{"records.csv": "occurrenceID,scientificName,occurrenceRemarks\na1,Agrotis puta,\"worn, small\"\n", "eml.xml": eml(t, sallowmere()), "readme.md": "x"}),
		"folder":      foldered(t, map[string]string{"records.txt": "occurrenceID\tscientificName\toccurrenceRemarks\na1\tAgrotis puta\tworn, small\n"}),
		"csv":         saved(t, "r.csv", []byte("occurrenceID,scientificName,occurrenceRemarks\r\na1,Agrotis puta,\"worn, small\"\r\n")),
		"mark":        saved(t, "r.csv", []byte("\ufeffoccurrenceID;scientificName;occurrenceRemarks\na1;Agrotis puta;worn, small\n")),
		"other case":  saved(t, "r", []byte("OCCURRENCEID|dwc:scientificName|http://rs.tdwg.org/dwc/terms/occurrenceRemarks\na1|Agrotis puta|worn, small")),
		"returns":     saved(t, "r.txt", []byte("occurrenceID\tscientificName\toccurrenceRemarks\ra1\tAgrotis puta\tworn, small\r")),
		"read me too": zipped(t, map[string]string{"dwc.txt": "occurrenceID\tscientificName\toccurrenceRemarks\na1\tAgrotis puta\tworn, small\n", "readme.txt": "These are Ines's moths.\n"}),
	} {
		t.Run(name, func(t *testing.T) {
			a := opened(t, path)
			assert.Equal(t, want, values(t, a.Core))
			assert.Equal(t, dwc.RowOccurrence, a.Core.RowType())
			assert.NotContains(t, notes(a), "Rows end")
			for row, err := range a.Core.Rows() {
				require.NoError(t, err)
				assert.Equal(t, "a1", row.ID())
			}
			d, err := a.Metadata()
			require.NoError(t, err)
			assert.Equal(t, name == "zip", d != nil)
		})
	}
}

func TestSimpleArchivesOfOtherRows(t *testing.T) {
	for header, rowType := range map[string]string{
		"eventID,eventDate,locality":                     dwc.RowEvent,
		"taxonID,scientificName,taxonRank":               dwc.RowTaxon,
		"eventID,measurementType,measurementValue":       dwc.RowMeasurement,
		"eventID,scientificName,eventDate":               dwc.RowOccurrence,
		"id,scientificName":                              dwc.RowOccurrence,
		"taxonID,scientificName,eventDate,basisOfRecord": dwc.RowOccurrence,
	} {
		a := opened(t, saved(t, "r.csv", []byte(header+"\n1,2,3\n")))
		assert.Equal(t, rowType, a.Core.RowType(), header)
	}
	a := opened(t, saved(t, "r.csv", []byte("id,scientificName,lamp colour\n1,Agrotis puta,H\xfcbner\n")))
	assert.Contains(t, notes(a), "The file is not UTF-8; it was read as Windows-1252.")
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		var o dwc.Occurrence
		row.Fill(&o)
		assert.Equal(t, dwc.Occurrence{OccurrenceID: "1", ScientificName: "Agrotis puta"}, o)
		assert.Equal(t, "Hübner", row.Get("lamp colour"))
	}
}

func TestChecklist(t *testing.T) {
	a := opened(t, zipped(t, map[string]string{
		"meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Taxon" fieldsTerminatedBy="\t">
			<files><location>taxon.txt</location></files><id index="0"/>
			<field index="0" term="http://rs.tdwg.org/dwc/terms/taxonID"/>
			<field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
			<field index="2" term="http://rs.tdwg.org/dwc/terms/acceptedNameUsageID"/></core>
			<extension rowType="http://rs.gbif.org/terms/1.0/VernacularName" fieldsTerminatedBy="\t">
			<files><location>vernacular.txt</location></files><coreid index="0"/>
			<field index="1" term="http://rs.tdwg.org/dwc/terms/vernacularName"/>
			<field index="2" term="http://purl.org/dc/terms/language"/>
			<field index="3" term="http://rs.gbif.org/terms/1.0/isPreferredName"/></extension></archive>`,
		"taxon.txt":      "1\tAgrotis puta\t\n2\tNoctua puta\t1\n",
		"vernacular.txt": "1\tShuttle-shaped Dart\ten\ttrue\n",
	}))
	assert.Empty(t, a.Notes)
	var taxa []dwc.Taxon
	for row, err := range a.Core.Rows() {
		require.NoError(t, err)
		var taxon dwc.Taxon
		row.Fill(&taxon)
		taxa = append(taxa, taxon)
	}
	assert.Equal(t, []dwc.Taxon{{TaxonID: "1", ScientificName: "Agrotis puta"}, {TaxonID: "2", ScientificName: "Noctua puta", AcceptedNameUsageID: "1"}}, taxa)
	for row, err := range a.Extensions[0].Rows() {
		require.NoError(t, err)
		var v dwc.VernacularName
		row.Fill(&v)
		assert.Equal(t, dwc.VernacularName{TaxonID: "1", VernacularName: "Shuttle-shaped Dart", Language: "en", IsPreferredName: "true"}, v)
	}
}

func ExampleOpenArchive() {
	dir, err := os.MkdirTemp("", "")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(dir)
	file := dir + "/records.csv"
	if err := os.WriteFile(file, []byte("occurrenceID,scientificName,eventdate\ns1,Agrotis puta,2021-06-12\n"), 0o600); err != nil {
		fmt.Println(err)
		return
	}
	archive, err := dwc.OpenArchive(file)
	if err != nil {
		fmt.Println(err)
		return
	}
	defer archive.Close()
	for _, note := range archive.Notes {
		fmt.Println(note)
	}
	for row, err := range archive.Core.Rows() {
		if err != nil {
			fmt.Println(err)
			return
		}
		var o dwc.Occurrence
		row.Fill(&o)
		fmt.Println(row.Line, row.ID(), o.ScientificName, o.EventDate)
	}
	// Output:
	// records.csv, line 1: The heading “eventdate” was read as eventDate.
	// 2 s1 Agrotis puta 2021-06-12
}

func BenchmarkReader(b *testing.B) {
	records := make([]*dwc.Occurrence, 20_000)
	for i := range records {
		o := *fullOccurrence()
		o.OccurrenceID = fmt.Sprintf("urn:uuid:3f0c9a1e-6a1c-4f0e-9a53-%012x", i*2654435761)
		records[i] = &o
	}
	a := opened(b, occurrenceArchive(b, records...))
	rows := 0
	for b.Loop() {
		rows = 0
		for row, err := range a.Core.Rows() {
			if err != nil {
				b.Fatal(err)
			}
			var o dwc.Occurrence
			row.Fill(&o)
			rows++
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*rows), "ns/row")
}
