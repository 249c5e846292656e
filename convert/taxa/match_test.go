package taxa_test

import (
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func starter() *taxa.Matcher { return taxa.NewIndex(taxa.Starter()).NewMatcher() }

func taxonName(r taxa.Reading) string {
	if r.Taxon == nil {
		return "-"
	}
	return r.Taxon.ScientificName
}

func TestThePagesGroupDecides(t *testing.T) {
	m := starter()
	for _, tt := range []struct {
		name, group, want string
		state             reading.State
	}{
		{"Brimstone", "", "-", reading.Held},
		{"Brimstone", "moths", "Opisthograptis luteolata", reading.Fair},
		{"Brimstone", "Macro-moths", "Opisthograptis luteolata", reading.Fair},
		{"Brimstone", "Geometridae", "Opisthograptis luteolata", reading.Fair},
		{"Brimstone", "butterflies", "Gonepteryx rhamni", reading.Fair},
		{"Brimstone", "Butterflies 2019", "Gonepteryx rhamni", reading.Fair},
		{"Brimstone", "Lepidoptera", "-", reading.Held},
		{"Brimstone", "Butterflies and moths", "-", reading.Held},
		{"Peacock", "moths", "Macaria notata", reading.Fair},
		{"Peacock", "Pieridae, Nymphalidae", "Aglais io", reading.Fair},
		{"Emperor", "dragonflies", "Anax imperator", reading.Fair},
		{"Emperor", "Odonata", "Anax imperator", reading.Fair},
		{"Emperor", "moths", "Saturnia pavonia", reading.Fair},
		{"Puss", "moths", "Cerura vinula", reading.Fair},
		{"Hornet", "moths", "Sesia apiformis", reading.Fair},
		{"Hornet", "", "-", reading.Held},
		{"Red Admiral", "moths", "Vanessa atalanta", reading.Query},
		{"Vanessa atalanta", "moths", "Vanessa atalanta", reading.Fair},
		{"Red Admiral", "trap", "Vanessa atalanta", reading.Fair},
	} {
		r := m.Match(taxa.Written{Name: tt.name}, taxa.Context{Group: tt.group})
		assert.Equal(t, tt.want, taxonName(r), "%s on a page of %q: %s", tt.name, tt.group, r.Message)
		assert.Equal(t, tt.state, r.State, "%s on a page of %q: %s", tt.name, tt.group, r.Message)
	}
}

func TestHomonyms(t *testing.T) {
	l, _ := load(t, "list.csv", "Name,Author,Order,English\nAus bus,\"Smith, 1900\",Lepidoptera,Plain Thing\nAus bus,\"Jones, 1950\",Coleoptera,Other Thing\nCus dus,\"Smith, 1900\",Lepidoptera,Shared\nEus fus,\"Smith, 1900\",Coleoptera,Shared\n")
	m := taxa.NewIndex(l).NewMatcher()
	r := m.Match(taxa.Written{Name: "Aus bus"}, taxa.Context{})
	assert.Equal(t, reading.Held, r.State)
	assert.Len(t, r.Candidates, 2)
	r = m.Match(taxa.Written{Name: "Aus bus"}, taxa.Context{Group: "beetles"})
	require.NotNil(t, r.Taxon, r.Message)
	assert.Equal(t, "Coleoptera", r.Taxon.Order)
	r = m.Match(taxa.Written{Name: "Aus bus Smith, 1900"}, taxa.Context{})
	require.NotNil(t, r.Taxon, r.Message)
	assert.Equal(t, "Lepidoptera", r.Taxon.Order)
	r = m.Match(taxa.Written{Name: "Aus bus", Authorship: "Jones, 1950"}, taxa.Context{})
	require.NotNil(t, r.Taxon, r.Message)
	assert.Equal(t, "Coleoptera", r.Taxon.Order)
	r = m.Match(taxa.Written{Name: "Shared"}, taxa.Context{})
	assert.Equal(t, reading.Held, r.State)
	r = m.Match(taxa.Written{Name: "Shared"}, taxa.Context{Group: "moths"})
	require.NotNil(t, r.Taxon, r.Message)
	assert.Equal(t, "Cus dus", r.Taxon.ScientificName)
}

func TestAbbreviatedGenus(t *testing.T) {
	l, _ := load(t, "list.csv", "Name\nNoctua comes\nNola comes\nAgrotis puta\nApamea puta\nAgrotis segetum\n")
	m := taxa.NewIndex(l).NewMatcher()
	for _, tt := range []struct{ name, above, want string }{
		{"N. comes", "", "-"}, {"N. comes", "Noctua", "Noctua comes"}, {"N. comes", "Nola cucullatella", "Nola comes"}, {"No. comes", "Nola", "Nola comes"},
		{"Noc. comes", "", "Noctua comes"}, {"A. segetum", "", "Agrotis segetum"}, {"A. puta", "", "-"}, {"A. puta", "Apamea", "Apamea puta"}, {"A. puta", "Noctua", "-"},
	} {
		r := m.Match(taxa.Written{Name: tt.name}, taxa.Context{Genus: tt.above})
		assert.Equal(t, tt.want, taxonName(r), "%s below %s: %s", tt.name, tt.above, r.Message)
		if tt.want == "-" {
			assert.Len(t, r.Candidates, 2)
		}
	}
}

func TestNumbers(t *testing.T) {
	l, _ := load(t, "list.csv", "No.,Name,English\n10.1,Noctua pronuba,Large Yellow Underwing\n10.2,Noctua comes,Lesser Yellow Underwing\n007,Apamea monoglypha,Dark Arches\n")
	m := taxa.NewIndex(l).NewMatcher()
	for _, tt := range []struct {
		w     taxa.Written
		want  string
		state reading.State
		code  string
	}{
		{taxa.Written{Name: "10.1"}, "Noctua pronuba", reading.Fair, ""},
		{taxa.Written{Number: "10.1"}, "Noctua pronuba", reading.Fair, ""},
		{taxa.Written{Number: "7"}, "Apamea monoglypha", reading.Fair, ""},
		{taxa.Written{Number: "99"}, "-", reading.Held, taxa.CodeNotListed},
		{taxa.Written{Name: "10.1 Noctua pronuba"}, "Noctua pronuba", reading.Fair, ""},
		{taxa.Written{Name: "10.1: Large Yellow Underwing"}, "Noctua pronuba", reading.Fair, ""},
		{taxa.Written{Name: "10.2 Large Yellow Underwing"}, "Noctua pronuba", reading.Query, taxa.CodeNumber},
		{taxa.Written{Name: "Large Yellow Underwing", Number: "10.2"}, "Noctua pronuba", reading.Query, taxa.CodeNumber},
		{taxa.Written{Name: "Large Yellow Underwing", Number: "10.1"}, "Noctua pronuba", reading.Fair, ""},
		{taxa.Written{Name: "Large Yellow Underwing", Number: "10.9"}, "Noctua pronuba", reading.Query, taxa.CodeNumberListed},
		{taxa.Written{Name: "Yellow Underwing", Number: "10.1"}, "Noctua pronuba", reading.Query, taxa.CodeMisspelt},
		{taxa.Written{Name: "Scarce Silver Y", Number: "10.1"}, "-", reading.Held, taxa.CodeNotListed},
		{taxa.Written{Name: "3 Dark Arches"}, "Apamea monoglypha", reading.Fair, ""},
		{taxa.Written{Name: "Noctua sp.", Number: "10.1"}, "Noctua", reading.Fair, ""},
	} {
		r := m.Match(tt.w, taxa.Context{})
		assert.Equal(t, tt.want, taxonName(r), "%+v: %s", tt.w, r.Message)
		assert.Equal(t, tt.state, r.State, "%+v: %s", tt.w, r.Message)
		assert.Equal(t, tt.code, r.Code, "%+v: %s", tt.w, r.Message)
	}
}

// Spreadsheets take the zeros at the end of "73.010" away where the cell is
// taken for a number.
func TestNumbersWithLostZeros(t *testing.T) {
	l, _ := load(t, "list.csv", "checklist number,scientificName,vernacularName\n10.001,Noctua pronuba,Large Yellow Underwing\n10.010,Noctua comes,Lesser Yellow Underwing\n"+
		"10.100,Apamea monoglypha,Dark Arches\n73.010,Agrotis puta,Shuttle-shaped Dart\n73.317,Agrotis segetum,Turnip Moth\n2107,Agrotis ipsilon,Dark Sword-grass\n5.1,Xestia baja,Dotted Clay\n5.10,Xestia triangulum,Double Square-spot\n")
	m := taxa.NewIndex(l).NewMatcher()
	for _, tt := range []struct {
		w     taxa.Written
		want  string
		state reading.State
	}{
		{taxa.Written{Number: "10.001"}, "Noctua pronuba", reading.Fair},
		{taxa.Written{Number: "10.1"}, "Apamea monoglypha", reading.Query},
		{taxa.Written{Number: "10.01"}, "Noctua comes", reading.Query},
		{taxa.Written{Number: "10.10"}, "-", reading.Held}, // 10.100 or 10.010
		{taxa.Written{Number: "73.01"}, "Agrotis puta", reading.Query},
		{taxa.Written{Number: "73.1"}, "-", reading.Held},
		{taxa.Written{Number: "73,317"}, "Agrotis segetum", reading.Fair},
		{taxa.Written{Number: "5.1"}, "-", reading.Held}, // 5.1, or 5.10 without its zero
		{taxa.Written{Number: "5.10"}, "Xestia triangulum", reading.Fair},
		{taxa.Written{Number: "5.1", Name: "Double Square-spot"}, "Xestia triangulum", reading.Fair},
		{taxa.Written{Number: "5.1", Name: "Dotted Clay"}, "Xestia baja", reading.Fair},
		{taxa.Written{Number: "10.1", Name: "Dark Arches"}, "Apamea monoglypha", reading.Fair},
		{taxa.Written{Number: "10.1", Name: "Noctua pronuba"}, "Noctua pronuba", reading.Query},
		{taxa.Written{Name: "10.1"}, "Apamea monoglypha", reading.Query},
		{taxa.Written{Name: "10.01 Lesser Yellow Underwing"}, "Noctua comes", reading.Fair},
		{taxa.Written{Name: "10.01 Dark Arches"}, "Apamea monoglypha", reading.Query},
		{taxa.Written{Name: "2107"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "2107.0"}, "Agrotis ipsilon", reading.Query},
		{taxa.Written{Name: "B&F 2107"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "BF2107"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "No. 2107"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "#2107 Dark Sword-grass"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "2107 - Agrotis ipsilon"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "Agrotis ipsilon (2107)"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "Agrotis ipsilon 2107"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "Dark Sword-grass [B&F 2107]"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "Dark Sword-grass, BF 2107"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Name: "Dark Arches (B&F 2107)"}, "Apamea monoglypha", reading.Query},
		{taxa.Written{Name: "Turnip Moth 73.317"}, "Agrotis segetum", reading.Fair},
		{taxa.Written{Name: "Turnip Moth (73.01)"}, "Agrotis segetum", reading.Query},
		{taxa.Written{Name: "Turnip Moth 73.999"}, "Agrotis segetum", reading.Query},
		{taxa.Written{Name: "Dark Arches 12"}, "Apamea monoglypha", reading.Fair},
		{taxa.Written{Number: "B&F 2107"}, "Agrotis ipsilon", reading.Fair},
		{taxa.Written{Number: "XYZ 2107"}, "-", reading.Held},
	} {
		r := m.Match(tt.w, taxa.Context{})
		assert.Equal(t, tt.want, taxonName(r), "%+v: %s", tt.w, r.Message)
		assert.Equal(t, tt.state, r.State, "%+v: %s", tt.w, r.Message)
	}
	r := m.Match(taxa.Written{Name: "Agrotis ipsilon 2107"}, taxa.Context{})
	assert.Empty(t, r.Rest, "the number is no count")
}

func TestNamesInSeveralCells(t *testing.T) {
	m := starter()
	for _, tt := range []struct {
		w     taxa.Written
		want  string
		state reading.State
	}{
		{taxa.Written{Scientific: "Noctua pronuba", Vernacular: "Large Yellow Underwing"}, "Noctua pronuba", reading.Fair},
		{taxa.Written{Scientific: "Noctua pronuba", Vernacular: "Lesser Yellow Underwing"}, "-", reading.Held},
		{taxa.Written{Scientific: "Noctua pronuba", Vernacular: "Big Yellow Thing"}, "Noctua pronuba", reading.Query},
		{taxa.Written{Scientific: "Noctua pronuba", Vernacular: "Large Yelow Underwing"}, "Noctua pronuba", reading.Fair},
		{taxa.Written{Scientific: "Noctua pronubba", Vernacular: "Large Yellow Underwing"}, "Noctua pronuba", reading.Fair},
		{taxa.Written{Scientific: "Noctua janthina", Vernacular: "Large Yellow Underwing"}, "Noctua pronuba", reading.Query},
		{taxa.Written{Scientific: "Opisthograptis luteolata", Vernacular: "Brimstone"}, "Opisthograptis luteolata", reading.Fair},
		{taxa.Written{Name: "Large Yellow Underwing", Authorship: "Linnaeus, 1758"}, "Noctua pronuba", reading.Fair},
		{taxa.Written{Scientific: "Noctua pronuba", Authorship: "Hübner, 1813"}, "Noctua pronuba", reading.Query},
		{taxa.Written{Scientific: "Noctua sp.", Vernacular: "Large Yellow Underwing"}, "Noctua", reading.Fair},
		{taxa.Written{Vernacular: "Dark Arches"}, "Apamea monoglypha", reading.Fair},
		{taxa.Written{}, "-", reading.Held},
	} {
		r := m.Match(tt.w, taxa.Context{})
		assert.Equal(t, tt.want, taxonName(r), "%+v: %s", tt.w, r.Message)
		assert.Equal(t, tt.state, r.State, "%+v: %s", tt.w, r.Message)
	}
}

func TestWhatSpeaksForEachCandidate(t *testing.T) {
	l, _ := load(t, "list.csv", "Name,English,Flight,Order\nAus bus,Plain Carpet,1-3,Lepidoptera\nCus dus,Plain Carpet,6-8,Lepidoptera\nEus fus,Plain Carpet,6-8,Lepidoptera\n")
	m := taxa.NewIndex(l).NewMatcher()
	only := func(name string) func(*taxa.Taxon) bool {
		return func(t *taxa.Taxon) bool { return t.ScientificName == name }
	}
	r := m.Match(taxa.Written{Name: "Plain Carpet"}, taxa.Context{Month: 7, OnPage: only("Eus fus"), AtSite: only("Aus bus")})
	assert.Equal(t, []string{"Eus fus (Plain Carpet)", "Aus bus (Plain Carpet)", "Cus dus (Plain Carpet)"}, r.Candidates)
	assert.Contains(t, r.Message, "Eus fus (Plain Carpet) [already on the page, in season]")
	assert.Contains(t, r.Message, "Aus bus (Plain Carpet) [recorded at the site]")
	assert.Equal(t, "Eus fus", r.Possible[0].ScientificName)
	r = m.Match(taxa.Written{Name: "Plain Carpet"}, taxa.Context{Month: 2})
	assert.Equal(t, "Aus bus (Plain Carpet)", r.Candidates[0])
}

// identificationQualifier and the rank that is certain, as Darwin Core's
// examples of the term have them (https://dwc.tdwg.org/terms/#dwc:identificationQualifier:
// "aff. agrifolia var. oxyadenia"): the words of doubt and what they are about.
// What a sign before the genus means follows Bengtson 1988, Open nomenclature,
// Palaeontology 31: 223-227.
func TestQualifiers(t *testing.T) {
	m := starter()
	for _, tt := range []struct{ name, want, rank, qualifier string }{
		{"Noctua cf. pronuba", "Noctua", "genus", "cf. pronuba"},
		{"Noctua aff. pronuba", "Noctua", "genus", "aff. pronuba"},
		{"Noctua nr pronuba", "Noctua", "genus", "nr pronuba"},
		{"Noctua pronuba?", "Noctua", "genus", "? pronuba"},
		{"?Noctua pronuba", "Noctuidae", "family", "? Noctua pronuba"},
		{"cf. Noctua pronuba", "Noctuidae", "family", "cf. Noctua pronuba"},
		{"Noctua?", "Noctuidae", "family", "? Noctua"},
		{"Noctua sp.", "Noctua", "genus", "sp."},
		{"Noctua indet.", "Noctua", "genus", "indet."},
		{"Noctuidae sp.", "Noctuidae", "family", "sp."},
		{"Large Yellow Underwing?", "Noctua", "genus", "? pronuba"},
		{"Noctua pronuba agg.", "Noctua", "genus", "pronuba agg."},
		{"Noctua pronuba/comes", "Noctua", "genus", "pronuba/comes"},
		{"Acronicta psi/tridens", "Acronicta psi/tridens", "species aggregate", ""},
		{"Papilio machaon cf. gorganus", "Papilio machaon", "species", "cf. gorganus"},
	} {
		r := m.Match(taxa.Written{Name: tt.name}, taxa.Context{})
		assert.Equal(t, tt.want, taxonName(r), "%s: %s", tt.name, r.Message)
		assert.Equal(t, tt.rank, r.Taxon.Rank, tt.name)
		assert.Equal(t, tt.qualifier, r.Qualifier, tt.name)
	}
}

func TestAListOfSubspecies(t *testing.T) {
	l, _ := load(t, "list.csv", "Name\nLasiocampa quercus\nLasiocampa quercus callunae\nPapilio machaon ssp. britannicus\nPapilio machaon\n")
	m := taxa.NewIndex(l).NewMatcher()
	for name, want := range map[string]string{
		"Lasiocampa quercus callunae": "Lasiocampa quercus callunae", "Lasiocampa quercus ssp. callunae": "Lasiocampa quercus callunae",
		"L. q. callunae": "-", "Papilio machaon britannicus": "Papilio machaon ssp. britannicus", "Lasiocampa quercus": "Lasiocampa quercus",
		"Lasiocampa quercus f. olivacea": "Lasiocampa quercus", "Papilio machaon ssp. gorganus": "Papilio machaon",
	} {
		r := m.Match(taxa.Written{Name: name}, taxa.Context{})
		assert.Equal(t, want, taxonName(r), "%s: %s", name, r.Message)
	}
}

// A correctly spelt name of another taxon is never corrected to a neighbour,
// whatever short list is in use.
func TestNeighboursAreNotCorrected(t *testing.T) {
	l, _ := load(t, "list.csv", "Name,English,Order\nBombus ruderatus,Large Garden Bumblebee,Hymenoptera\nScopula emutaria,Rosy Wave,Lepidoptera\nMythimna pallens,Common Wainscot,Lepidoptera\n"+
		"Noctua janthe,Lesser Broad-bordered Yellow Underwing,Lepidoptera\nPterostoma palpina,Pale Prominent,Lepidoptera\nXestia sexstrigata,Six-striped Rustic,Lepidoptera\nColostygia pectinataria,Green Carpet,Lepidoptera\n"+
		"Cirrhia icteritia,Sallow,Lepidoptera\nEupithecia tripunctaria,White-spotted Pug,Lepidoptera\nAdalia bipunctata,2-spot Ladybird,Coleoptera\nScoliopteryx libatrix,Herald,Lepidoptera\n")
	m := taxa.NewIndex(l).NewMatcher()
	for _, name := range []string{
		"Bombus ruderarius", "Scopula emutata", "Scopula imitaria", "Noctua janthina", "Common Rustic", "Lesser Yellow Underwing", "Scarce Prominent", "Small Square-spot",
		"Grey Carpet", "Swallow", "Eupithecia bipunctaria", "Adalia tripunctata", "10-spot Ladybird", "12-spot Ladybird", "Tawny Wave", "Smoky Wave", "Green Pug", "White-spotted Pinion", "Dusky Sallow",
		"Mythimna impura", "Scopula ornata", "Common Wave", "Small Wainscot", "Garden Bumblebee", "Hoary Footman", "Rosy Wainscot", "Rosy Minor",
	} {
		r := m.Match(taxa.Written{Name: name}, taxa.Context{})
		assert.Equal(t, reading.Held, r.State, "%s was read as %s: %s", name, taxonName(r), r.Message)
	}
}

func TestReadingsSayWhatWasResolved(t *testing.T) {
	m := starter()
	r := m.Match(taxa.Written{Name: "Hyloicus pinastri"}, taxa.Context{})
	assert.Equal(t, "Recorded as Hyloicus pinastri, a synonym of Sphinx pinastri.", r.Remarks)
	r = m.Match(taxa.Written{Name: "Noctua pronubba"}, taxa.Context{})
	assert.Equal(t, "Spelt “Noctua pronubba”; read as Noctua pronuba.", r.Remarks)
	assert.Equal(t, []string{"Noctua pronuba (Large Yellow Underwing)"}, r.Candidates)
	r = m.Match(taxa.Written{Name: "Noctua pronuba ♀ x3 (worn)"}, taxa.Context{})
	assert.Equal(t, "♀; x3; worn", r.Rest)
	_, steps := m.Explain(taxa.Written{Name: "Philudoria potatora"}, taxa.Context{})
	assert.Contains(t, strings.Join(steps, " "), "Euthrix potatoria")
	assert.GreaterOrEqual(t, len(steps), 2)
}

func TestAnswersDoNotDependOnWhatWasReadBefore(t *testing.T) {
	ix := taxa.NewIndex(taxa.Starter())
	names := []string{"Brimstone", "Noctua pronubba", "Dark Archs", "Acronicta psi/tridens", "Pug", "N. pronuba", "Large Yellow Underwing x3"}
	m := ix.NewMatcher()
	for _, n := range names {
		fresh := ix.NewMatcher().Match(taxa.Written{Name: n}, taxa.Context{Month: 6})
		for range 2 {
			assert.Equal(t, fresh, m.Match(taxa.Written{Name: n}, taxa.Context{Month: 6}), n)
		}
		explained, _ := m.Explain(taxa.Written{Name: n}, taxa.Context{Month: 6})
		assert.Equal(t, fresh, explained, n)
	}
}

func FuzzMatch(f *testing.F) {
	for _, s := range []string{"Noctua pronuba", "N. pronuba (L., 1758)", "Grey/Dark Dagger x3", "?Noctua cf. pronuba [worn", "Large Yellow Underwing (Noctua comes)", "A. psi x B. betularia", "7-spot", "(((", "10.1 x", "c-nigrum f.", "\"", "×", "Underwing, Large Yellow ♀"} {
		f.Add(s, "moths")
	}
	ix := taxa.NewIndex(taxa.Starter())
	f.Fuzz(func(t *testing.T, s, group string) {
		m := ix.NewMatcher()
		r := m.Match(taxa.Written{Name: s}, taxa.Context{Group: group})
		if (r.Taxon == nil) != (r.State >= reading.Held) {
			t.Fatalf("%q: state %s with taxon %v", s, r.State, r.Taxon)
		}
		if r.State != reading.Fair && r.Message == "" {
			t.Fatalf("%q: %s without a message", s, r.State)
		}
		if len(r.Candidates) != len(r.Possible) {
			t.Fatalf("%q: %v", s, r.Candidates)
		}
		if again := ix.NewMatcher().Match(taxa.Written{Name: s}, taxa.Context{Group: group}); again.Message != r.Message || again.Taxon != r.Taxon {
			t.Fatalf("%q is read in two ways", s)
		}
	})
}

func FuzzLoad(f *testing.F) {
	f.Add("Name,Synonym of\nNoctua comes,\nTriphaena comes,Noctua comes\n")
	f.Add("taxonID;scientificName;acceptedNameUsageID\na;Noctua comes;b\nb;Noctua;a\n")
	f.Add("Species\tFlight\tSensitive\nNoctua comes\t5-9\tyes\n")
	f.Add("\xff\xfeN\x00a\x00m\x00e\x00\n\x00")
	f.Fuzz(func(t *testing.T, content string) {
		path := write(t, "list.csv", content)
		l, problems, err := taxa.Load(path)
		if err != nil {
			return
		}
		for _, p := range problems {
			if p.Line < 1 || p.Message == "" {
				t.Fatalf("%+v", p)
			}
		}
		m := taxa.NewIndex(l).NewMatcher()
		for i := range l.Len() {
			m.Match(taxa.Written{Name: l.Taxon(i).ScientificName}, taxa.Context{})
		}
	})
}

func FuzzParseMonths(f *testing.F) {
	for _, s := range []string{"5-9", "May to September", "VI, VIII-IX", "10-2", "all year", "late May", "-"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		set, ok := taxa.ParseMonths(s)
		if !ok {
			return
		}
		again, ok := taxa.ParseMonths(set.String())
		if !ok || again != set {
			t.Fatalf("%q is %s, read again as %s", s, set, again)
		}
	})
}
