package taxa_test

import (
	"testing"

	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The examples of the terms scientificName, taxonRank, acceptedNameUsage,
// infraspecificEpithet and identificationQualifier in the Darwin Core list of
// terms (https://dwc.tdwg.org/list/, CC BY 4.0), as a list and as written.
const darwinCoreExamples = `scientificName,acceptedNameUsage,kingdom,order,family
Coleoptera,,Animalia,,
Vespertilionidae,,Animalia,,
Manis,,Animalia,,
Ctenomys sociabilis,,Animalia,,
Ambystoma tigrinum diaboli,,Animalia,,
"Roptrocerus typographi (Györfi, 1952)",,Animalia,,
Quercus agrifolia,,Plantae,,Fagaceae
Quercus agrifolia var. oxyadenia (Torr.) J.T. Howell,,Plantae,,Fagaceae
×Agropogon littoralis (Sm.) C. E. Hubb.,,Plantae,,
Mentha ×smithiana R. A. Graham,,Plantae,,
Tamias minimus,,Animalia,,
Eutamias minimus,Tamias minimus,Animalia,,
Puma concolor concolor,,Animalia,,
Cheilanthes hirta f. laxa,,Plantae,,
`

func TestDarwinCoreExamples(t *testing.T) {
	l, problems := load(t, "terms.csv", darwinCoreExamples)
	assert.Empty(t, problems)
	m := taxa.NewIndex(l).NewMatcher()
	for _, tt := range []struct{ written, name, author, rank, epithet, infra, qualifier string }{
		{"Coleoptera", "Coleoptera", "", "order", "", "", ""},
		{"Vespertilionidae", "Vespertilionidae", "", "family", "", "", ""},
		{"Manis", "Manis", "", "genus", "", "", ""},
		{"Ctenomys sociabilis", "Ctenomys sociabilis", "", "species", "sociabilis", "", ""},
		{"Ambystoma tigrinum diaboli", "Ambystoma tigrinum diaboli", "", "subspecies", "tigrinum", "diaboli", ""},
		{"Roptrocerus typographi (Györfi, 1952)", "Roptrocerus typographi", "(Györfi, 1952)", "species", "typographi", "", ""},
		{"Roptrocerus typographi (Gyorfi)", "Roptrocerus typographi", "(Györfi, 1952)", "species", "typographi", "", ""},
		{"Quercus agrifolia var. oxyadenia (Torr.) J.T. Howell", "Quercus agrifolia var. oxyadenia", "(Torr.) J.T. Howell", "variety", "agrifolia", "oxyadenia", ""},
		{"Quercus agrifolia var. oxyadenia", "Quercus agrifolia var. oxyadenia", "(Torr.) J.T. Howell", "variety", "agrifolia", "oxyadenia", ""},
		{"×Agropogon littoralis (Sm.) C. E. Hubb.", "×Agropogon littoralis", "(Sm.) C. E. Hubb.", "species", "littoralis", "", ""},
		{"Agropogon littoralis", "×Agropogon littoralis", "(Sm.) C. E. Hubb.", "species", "littoralis", "", ""},
		{"Mentha ×smithiana R. A. Graham", "Mentha ×smithiana", "R. A. Graham", "species", "smithiana", "", ""},
		{"Mentha x smithiana", "Mentha ×smithiana", "R. A. Graham", "species", "smithiana", "", ""},
		{"Eutamias minimus", "Tamias minimus", "", "species", "minimus", "", ""},
		{"Puma concolor concolor", "Puma concolor concolor", "", "subspecies", "concolor", "concolor", ""},
		{"Cheilanthes hirta f. laxa", "Cheilanthes hirta f. laxa", "", "form", "hirta", "laxa", ""},
		{"Quercus aff. agrifolia var. oxyadenia", "Quercus", "", "genus", "", "", "aff. agrifolia var. oxyadenia"},
		{"Quercus agrifolia cf. var. oxyadenia", "Quercus agrifolia", "", "species", "agrifolia", "", "cf. var. oxyadenia"},
	} {
		r := m.Match(taxa.Written{Name: tt.written}, taxa.Context{})
		require.NotNil(t, r.Taxon, "%s: %s", tt.written, r.Message)
		x := r.Taxon
		got := []string{x.ScientificName, x.Authorship, x.Rank, x.SpecificEpithet(), x.InfraspecificEpithet(), r.Qualifier}
		assert.Equal(t, []string{tt.name, tt.author, tt.rank, tt.epithet, tt.infra, tt.qualifier}, got, "%s: %s", tt.written, r.Message)
	}
}
