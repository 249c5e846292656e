package taxa_test

import (
	"archive/zip"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"golang.org/x/text/encoding/charmap"
)

func write(t testing.TB, name, content string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	return path
}

func load(t testing.TB, name, content string) (*taxa.List, []taxa.Problem) {
	t.Helper()
	l, problems, err := taxa.Load(write(t, name, content))
	require.NoError(t, err)
	return l, problems
}

// match reads a name against lists and returns the accepted name, or "-".
func match(name string, lists ...*taxa.List) (string, taxa.Reading) {
	r := taxa.NewIndex(lists...).NewMatcher().Match(taxa.Written{Name: name}, taxa.Context{})
	if r.Taxon == nil {
		return "-", r
	}
	return r.Taxon.ScientificName, r
}

func TestHeadingsAreFoundByMeaning(t *testing.T) {
	for _, tt := range []struct{ name, content string }{
		{"darwin core", "taxonID,scientificName,scientificNameAuthorship,taxonRank,vernacularName,family\n1,Noctua pronuba,\"(Linnaeus, 1758)\",species,Large Yellow Underwing,Noctuidae\n"},
		{"term addresses", "http://rs.tdwg.org/dwc/terms/taxonID,http://rs.tdwg.org/dwc/terms/scientificName,http://rs.tdwg.org/dwc/terms/scientificNameAuthorship,dwc:vernacularName,dwc:family\n1,Noctua pronuba,\"(Linnaeus, 1758)\",Large Yellow Underwing,Noctuidae\n"},
		{"plain words", "No.,Taxon,Author,English name,Family\n1,Noctua pronuba,\"(Linnaeus, 1758)\",Large Yellow Underwing,Noctuidae\n"},
		{"latin name", "Latin name;Authority;Common name;Family\nNoctua pronuba;(Linnaeus, 1758);Large Yellow Underwing;Noctuidae\n"},
		{"tabs", "Family\tSpecies\tAuthority\tVernacular\nNoctuidae\tNoctua pronuba\t(Linnaeus, 1758)\tLarge Yellow Underwing\n"},
		{"genus and species", "Family,Genus,Species,Author,English\nNoctuidae,Noctua,pronuba,\"(Linnaeus, 1758)\",Large Yellow Underwing\n"},
		{"author in the name", "Species,English name,Family\n\"Noctua pronuba (Linnaeus, 1758)\",Large Yellow Underwing,NOCTUIDAE\n"},
		{"title above", "Our moths,,,\n,,,\nScientific name,Authors,English name,Family\nNoctua pronuba,\"(Linnaeus, 1758)\",Large Yellow Underwing,Noctuidae\n"},
		{"capitals", "NAME,AUTHORITY,COMMON NAME,FAMILY\nNOCTUA PRONUBA,\"(Linnaeus, 1758)\",Large Yellow Underwing,NOCTUIDAE\n"},
		{"bars", "Species|Author|Common|Family\nNoctua pronuba|(Linnaeus, 1758)|Large Yellow Underwing|Noctuidae\n"},
		{"year apart", "Scientific Name,Author,Year,English Name,Family\nNoctua pronuba,(Linnaeus),1758,Large Yellow Underwing,Noctuidae\n"},
		{"byte order mark", "\ufeffScientific name,Author,English name,Family\r\nNoctua pronuba,\"(Linnaeus, 1758)\",Large Yellow Underwing,Noctuidae\r\n"},
		{"species name and name", "Name,Species name,Author,Family\nLarge Yellow Underwing,Noctua pronuba,\"(Linnaeus, 1758)\",Noctuidae\n"},
		{"species and vernacular", "Species (scientific),Vernacular name (English),Authority,Family\nNoctua pronuba,Large Yellow Underwing,\"(Linnaeus, 1758)\",Noctuidae\n"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			l, problems := load(t, "list.csv", tt.content)
			assert.Empty(t, problems)
			require.Equal(t, 1, l.Len())
			for _, name := range []string{"Noctua pronuba", "large yellow underwing"} {
				_, r := match(name, l)
				require.NotNil(t, r.Taxon, "%s: %s", name, r.Message)
				assert.Equal(t, "Noctua pronuba", r.Taxon.ScientificName)
				assert.Equal(t, "(Linnaeus, 1758)", r.Taxon.Authorship)
				assert.Equal(t, "Noctuidae", r.Taxon.Family)
				assert.Equal(t, "Noctua", r.Taxon.Genus)
				assert.Equal(t, "species", r.Taxon.Rank)
				assert.Equal(t, "Large Yellow Underwing", r.Taxon.Vernacular)
				assert.Equal(t, "Noctua pronuba (Linnaeus, 1758)", r.Taxon.FullName())
			}
		})
	}
}

func TestListWithoutHeadings(t *testing.T) {
	l, _ := load(t, "list.csv", "Noctua pronuba,Large Yellow Underwing\nNoctua comes,Lesser Yellow Underwing\n")
	got, _ := match("Lesser Yellow Underwing", l)
	assert.Equal(t, "Noctua comes", got)
	_, _, err := taxa.Load(write(t, "list.csv", "1,2\n3,4\n"))
	assert.ErrorContains(t, err, "no column of names")
}

func TestListEncodings(t *testing.T) {
	content := "Scientific name,Author\nAgrotis puta,\"(Hübner, 1803)\"\n"
	latin, err := charmap.Windows1252.NewEncoder().String(content)
	require.NoError(t, err)
	wide := "\xff\xfe"
	for _, r := range content {
		wide += string([]byte{byte(r), byte(r >> 8)})
	}
	for name, text := range map[string]string{"utf-8": content, "windows-1252": latin, "utf-16": wide} {
		l, _ := load(t, "list.txt", text)
		assert.Equal(t, "(Hübner, 1803)", l.Taxon(0).Authorship, name)
	}
}

func TestSynonymsOfEveryShape(t *testing.T) {
	for _, tt := range []struct{ name, content string }{
		{"by id", "taxonID,scientificName,acceptedNameUsageID,taxonomicStatus\na,Sphinx pinastri,a,accepted\nb,Hyloicus pinastri,a,synonym\n"},
		{"by id, accepted without", "taxonID,scientificName,acceptedNameUsageID\nb,Hyloicus pinastri,a\na,Sphinx pinastri,\n"},
		{"by name", "Name,Accepted name\nSphinx pinastri,Sphinx pinastri\nHyloicus pinastri,Sphinx pinastri\n"},
		{"by name and author", "Name,Synonym of\n\"Sphinx pinastri Linnaeus, 1758\",\n\"Hyloicus pinastri (Linnaeus, 1758)\",\"Sphinx pinastri Linnaeus, 1758\"\n"},
		{"on the line", "Species,Synonyms\nSphinx pinastri,Hyloicus pinastri; Sphinx pini\n"},
		{"chain", "taxonID,scientificName,acceptedNameUsageID\na,Sphinx pinastri,\nb,Sphinx pini,a\nc,Hyloicus pinastri,b\n"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			l, problems := load(t, "list.csv", tt.content)
			assert.Empty(t, problems)
			got, r := match("Hyloicus pinastri", l)
			assert.Equal(t, "Sphinx pinastri", got, r.Message)
			assert.Equal(t, reading.Fair, r.State)
			assert.Equal(t, taxa.CodeSynonym, r.Code)
			assert.Contains(t, r.Remarks, "Hyloicus pinastri")
		})
	}
}

func TestListErrorsAreReportedWithTheirLine(t *testing.T) {
	for _, tt := range []struct {
		name, content string
		line          int
		says          string
		held          string // a name that must now be held
	}{
		{"synonym of nothing by id", "taxonID,scientificName,acceptedNameUsageID\na,Noctua comes,\nb,Noctua pronuba,zz\n", 3, "zz", "Noctua pronuba"},
		{"synonym of nothing by name", "Name,Synonym of\nNoctua comes,\nTriphaena pronuba,Noctua pronuba\n", 3, "Noctua pronuba", "Triphaena pronuba"},
		{"marked as synonym only", "Name,Status\nNoctua comes,accepted\nTriphaena pronuba,synonym\n", 3, "not accepted", "Triphaena pronuba"},
		{"circle", "taxonID,scientificName,acceptedNameUsageID\na,Noctua comes,\nb,Triphaena pronuba,c\nc,Noctua pronuba,b\n", 3, "circle", "Noctua pronuba"},
		{"two accepted, one spelling", "taxonID,scientificName,scientificNameAuthorship,order\na,Aus bus,\"Smith, 1900\",Lepidoptera\nb,Aus bus,\"Jones, 1950\",Coleoptera\n", 3, "line 2", "Aus bus"},
		{"the same line twice", "Name,English\nNoctua comes,Lesser Yellow Underwing\nNoctua comes,Lesser Yellow Underwing\n", 3, "twice", ""},
		{"one id twice", "taxonID,scientificName\na,Noctua comes\na,Noctua pronuba\n", 3, "“a”", ""},
		{"months", "Name,Flight\nNoctua comes,summer\n", 2, "summer", ""},
		{"sensitive without a size", "Name,Sensitive\nNoctua comes,yes\n", 2, "yes", ""},
		{"parent missing", "taxonID,scientificName,parentNameUsageID\na,Noctua comes,q\n", 2, "“q”", ""},
		{"parents in a circle", "taxonID,scientificName,taxonRank,parentNameUsageID\na,Noctua,genus,b\nb,Noctuidae,family,a\n", 2, "circle", ""},
		{"one number twice", "No.,Name\n7.1,Noctua comes\n7.1,Noctua pronuba\n", 3, "“7.1”", "7.1"},
		{"a quotation mark left open", "Name,English\nNoctua comes,\"Lesser Yellow Underwing\nNoctua pronuba,Large Yellow Underwing\n", 2, "quotation mark", "Noctua pronuba"},
		{"vernacular only", "Name,English\nNoctua comes,Lesser Yellow Underwing\n,Nameless\n", 3, "Nameless", "Nameless"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			l, problems := load(t, "my list.csv", tt.content)
			require.NotEmpty(t, problems)
			assert.Equal(t, "my list.csv", problems[0].Source)
			assert.Equal(t, tt.line, problems[0].Line)
			assert.Contains(t, problems[0].Message, tt.says)
			if tt.held != "" {
				got, r := match(tt.held, l)
				assert.Equal(t, "-", got)
				assert.Equal(t, reading.Held, r.State)
			}
		})
	}
}

func TestOptionalColumns(t *testing.T) {
	l, problems := load(t, "list.csv", "Species,No.,Flight period,Sensitive to,Needs\n"+
		"Noctua pronuba,2.1,May–Nov,,\nNoctua orbona,2.2,\"Jun, Aug-Sep\",10 km,specimen\nNoctua comes,2.3,10-2,2000,a note or photo\nNoctua janthe,2.4,all year,hectad,\n")
	assert.Empty(t, problems)
	want := []struct {
		flight              string
		metres              int
		note, specimen      bool
		inJanuary, inAugust bool
	}{
		{"May to November", 0, false, false, false, true},
		{"June and August to September", 10000, false, true, false, true},
		{"October to February", 2000, true, false, true, false},
		{"all year", 10000, false, false, true, true},
	}
	for i, w := range want {
		x := l.Taxon(i)
		assert.Equal(t, w.flight, x.Flight.String())
		assert.Equal(t, w.metres, x.SensitiveTo)
		assert.Equal(t, w.note, x.NeedsNote)
		assert.Equal(t, w.specimen, x.NeedsSpecimen)
		assert.Equal(t, w.inJanuary, x.Flight.Has(1))
		assert.Equal(t, w.inAugust, x.Flight.Has(8))
	}
	got, _ := match("2.3", l)
	assert.Equal(t, "Noctua comes", got)
	l, problems = load(t, "list.csv", "Species,Jan,Feb,Mar,Apr,May,Jun,Jul,Aug,Sep,Oct,Nov,Dec,Specimen needed\nNoctua pronuba,,,,,x,x,x,x,x,,,,yes\n")
	assert.Empty(t, problems)
	assert.Equal(t, "May to September", l.Taxon(0).Flight.String())
	assert.True(t, l.Taxon(0).NeedsSpecimen)
}

func TestWorkbook(t *testing.T) {
	f := excelize.NewFile()
	require.NoError(t, f.SetSheetRow("Sheet1", "A1", &[]any{"About this list"}))
	_, err := f.NewSheet("Moths")
	require.NoError(t, err)
	for i, r := range [][]any{{"Our moths of Sallowmere"}, {}, {"No.", "Species", "English name", "Flight"}, {1, "Noctua pronuba", "Large Yellow Underwing", "5-11"}, {2, "Noctua comes", "Lesser Yellow Underwing", "summer"}} {
		cell, _ := excelize.CoordinatesToCellName(1, i+1)
		require.NoError(t, f.SetSheetRow("Moths", cell, &r))
	}
	path := filepath.Join(t.TempDir(), "list.xlsx")
	require.NoError(t, f.SaveAs(path))
	l, problems, err := taxa.Load(path)
	require.NoError(t, err)
	require.Len(t, problems, 1)
	assert.Equal(t, 5, problems[0].Line)
	got, _ := match("Lesser Yellow Underwing", l)
	assert.Equal(t, "Noctua comes", got)
}

// A checklist archive as in the Darwin Core text guide
// (https://dwc.tdwg.org/text/): a Taxon core and a vernacular-name extension.
func TestChecklistArchive(t *testing.T) {
	files := map[string]string{
		"meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/">
 <core encoding="UTF-8" fieldsTerminatedBy="\t" linesTerminatedBy="\n" ignoreHeaderLines="1" rowType="http://rs.tdwg.org/dwc/terms/Taxon">
  <files><location>taxon.txt</location></files><id index="0"/>
  <field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/>
  <field index="2" term="http://rs.tdwg.org/dwc/terms/taxonRank"/>
  <field index="3" term="http://rs.tdwg.org/dwc/terms/acceptedNameUsageID"/>
  <field index="4" term="http://rs.tdwg.org/dwc/terms/parentNameUsageID"/>
  <field index="5" term="http://rs.tdwg.org/dwc/terms/taxonomicStatus"/>
  <field default="Animalia" term="http://rs.tdwg.org/dwc/terms/kingdom"/>
 </core>
 <extension encoding="UTF-8" fieldsTerminatedBy="\t" linesTerminatedBy="\n" ignoreHeaderLines="1" rowType="http://rs.gbif.org/terms/1.0/VernacularName">
  <files><location>names.txt</location></files><coreid index="0"/>
  <field index="1" term="http://rs.tdwg.org/dwc/terms/vernacularName"/>
  <field index="2" term="http://purl.org/dc/terms/language"/>
 </extension>
</archive>`,
		"taxon.txt": "id\tname\trank\taccepted\tparent\tstatus\n" +
			"10\tNoctuidae\tfamily\t\t\taccepted\n11\tNoctua Linnaeus, 1758\tgenus\t\t10\taccepted\n" +
			"12\tNoctua pronuba (Linnaeus, 1758)\tspecies\t\t11\taccepted\n13\tTriphaena pronuba (Linnaeus, 1758)\tspecies\t12\t\tsynonym\n" +
			"14\tTriphaena lost Nobody, 1900\tspecies\t99\t\tsynonym\n",
		"names.txt": "id\tname\tlang\n12\tHausmutter\tde\n12\tLarge Yellow Underwing\ten\n77\tNobody's Moth\ten\n",
	}
	folder := t.TempDir()
	zipped := filepath.Join(t.TempDir(), "list.zip")
	z, err := os.Create(zipped)
	require.NoError(t, err)
	w := zip.NewWriter(z)
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
		f, err := w.Create(name)
		require.NoError(t, err)
		_, err = f.Write([]byte(text))
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	require.NoError(t, z.Close())
	for _, path := range []string{folder, zipped} {
		l, problems, err := taxa.Load(path)
		require.NoError(t, err)
		require.Len(t, problems, 2)
		assert.Equal(t, 4, problems[0].Line, "the vernacular name of no taxon")
		assert.Equal(t, 6, problems[1].Line, "the synonym of nothing")
		for _, name := range []string{"Triphaena pronuba", "Large Yellow Underwing", "Noctua pronuba"} {
			_, r := match(name, l)
			require.NotNil(t, r.Taxon, "%s: %s", name, r.Message)
			assert.Equal(t, "12", r.Taxon.ID)
			assert.Equal(t, "Noctuidae", r.Taxon.Family)
			assert.Equal(t, "Noctua", r.Taxon.Genus)
			assert.Equal(t, "Animalia", r.Taxon.Kingdom)
			assert.Equal(t, "ICZN", r.Taxon.Code)
			assert.Equal(t, "Noctua pronuba (Linnaeus, 1758)", r.Taxon.FullName())
		}
		got, _ := match("Hausmutter", l)
		assert.Equal(t, "-", got)
	}
}

func TestSeveralListsInOrder(t *testing.T) {
	first, _ := load(t, "first.csv", "taxonID,Name,English\n1,Sphinx pinastri,Pine Hawk-moth\n2,Noctua pronuba,Great Underwing\n")
	second, _ := load(t, "second.csv", "taxonID,Name,English,Synonyms\nx,Hyloicus pinastri,Pine Hawk,Sphinx pinastri\ny,Noctua pronuba,Large Yellow Underwing,Triphaena pronuba\nz,Noctua comes,Great Underwing,\n")
	for name, want := range map[string]string{
		"Hyloicus pinastri": "1", "Sphinx pinastri": "1", "Pine Hawk-moth": "1", "Triphaena pronuba": "2", "Large Yellow Underwing": "2",
		"Great Underwing": "2", "Noctua comes": "z",
	} {
		_, r := match(name, first, second)
		require.NotNil(t, r.Taxon, "%s: %s", name, r.Message)
		assert.Equal(t, want, r.Taxon.ID, name)
	}
	_, r := match("Sphinx pinastri", second, first)
	assert.Equal(t, "x", r.Taxon.ID)
}

func TestStarterIsWhatItSays(t *testing.T) {
	l := taxa.Starter()
	byRank, byGroup, flight := map[string]int{}, map[string]int{}, 0
	ids := map[string]bool{}
	for i := range l.Len() {
		x := l.Taxon(i)
		byRank[x.Rank]++
		if x.Rank == "species" {
			byGroup[x.Group]++
			assert.NotEmpty(t, x.Vernacular, x.ScientificName)
			assert.NotEmpty(t, x.Authorship, x.ScientificName)
			assert.NotEmpty(t, x.Family, x.ScientificName)
			assert.Equal(t, "ICZN", x.Code)
			// ICZN Article 11.8 and 28: a genus with a capital, an epithet without.
			assert.Regexp(t, `^[A-Z][a-z]+ [a-z](-?[a-z]+)+$`, x.ScientificName)
			// ICZN Article 51 and Recommendation 22A: author, comma, year.
			assert.Regexp(t, `^\(?\p{L}.*\p{L}(, (17[5-9]\d|1[89]\d\d))?\)?$`, x.Authorship)
		}
		if x.Flight != 0 {
			flight++
		}
		assert.False(t, ids[x.ID], x.ID)
		assert.True(t, strings.HasPrefix(x.ID, "starter:"), x.ID)
		ids[x.ID] = true
	}
	assert.GreaterOrEqual(t, byRank["species"], 300)
	assert.GreaterOrEqual(t, byGroup["moths"], 220)
	assert.GreaterOrEqual(t, flight, 500)
	for _, g := range []string{"butterflies", "dragonflies", "bumblebees", "ladybirds"} {
		assert.GreaterOrEqual(t, byGroup[g], 15, g)
	}
}

func TestSeveralVernacularNamesInACell(t *testing.T) {
	l, problems := load(t, "list.csv", "Name;English names\nPyronia tithonus;Gatekeeper, Hedge Brown\nLasiommata megera;Wall (Wall Brown)\nQuercus robur;Pedunculate Oak / English Oak\nPicus viridis;-\n")
	assert.Empty(t, problems)
	for name, want := range map[string]string{"Gatekeeper": "Pyronia tithonus", "Hedge Brown": "Pyronia tithonus", "Wall": "Lasiommata megera", "Wall Brown": "Lasiommata megera", "English Oak": "Quercus robur"} {
		got, r := match(name, l)
		assert.Equal(t, want, got, "%s: %s", name, r.Message)
	}
	assert.Equal(t, "Gatekeeper", l.Taxon(0).Vernacular)
	assert.Empty(t, l.Taxon(3).Vernacular)
	l, _ = load(t, "list.csv", "Name;English names\nXanthorhoe fluctuata;Carpet, Garden\nColostygia pectinataria;Carpet, Green\n")
	assert.Equal(t, "Garden Carpet", l.Taxon(0).Vernacular)
	got, _ := match("Carpet", l)
	assert.Equal(t, "-", got)
	got, _ = match("Green Carpet", l)
	assert.Equal(t, "Colostygia pectinataria", got)
}

func TestOtherWaysOfPointing(t *testing.T) {
	for _, content := range []string{
		"No.,Name,Synonym of\n1,Sphinx pinastri,\n2,Hyloicus pinastri,1\n",
		"id,Name,See\na,Sphinx pinastri,\nb,Hyloicus pinastri,a\n",
		"Name,Status\nSphinx pinastri,accepted\nHyloicus pinastri,synonym of Sphinx pinastri\n",
	} {
		l, problems := load(t, "list.csv", content)
		assert.Empty(t, problems, content)
		got, r := match("Hyloicus pinastri", l)
		assert.Equal(t, "Sphinx pinastri", got, "%s: %s", content, r.Message)
	}
	l, problems := load(t, "list.csv", "Name,Accepted\nSphinx pinastri,yes\nHyloicus pinastri,no\n")
	assert.Len(t, problems, 1)
	assert.Equal(t, 1, l.Len())
}

func TestHybridsAndAggregatesOnAList(t *testing.T) {
	l, _ := load(t, "list.csv", "Name\nSalix x rubra\nTaraxacum officinale agg.\nRosa canina agg.\nRosa canina\nSalix alba\nSalix fragilis\n")
	for name, want := range map[string]string{
		"Salix × rubra": "Salix x rubra", "Salix x rubra": "Salix x rubra", "Rosa canina s.l.": "Rosa canina agg.", "Rosa canina": "Rosa canina",
		"Taraxacum officinale": "-", "Salix alba x fragilis": "Salix", "Salix alba × Salix fragilis": "Salix",
	} {
		got, r := match(name, l)
		assert.Equal(t, want, got, "%s: %s", name, r.Message)
	}
	_, r := match("Taraxacum officinale", l)
	assert.Equal(t, []string{"Taraxacum officinale agg."}, r.Candidates)
}
