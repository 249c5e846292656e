package taxa

import "strings"

// Ranks that the package itself gives or asks for, as in taxonRank.
const (
	RankSpecies    = "species"
	RankSubspecies = "subspecies"
	RankAggregate  = "species aggregate"
	RankGenus      = "genus"
	RankSubfamily  = "subfamily"
	RankFamily     = "family"
	RankOrder      = "order"
)

// Lineage is the higher classification of a taxon, as in the Darwin Core
// terms of the same names. An empty string means that the list does not say.
type Lineage struct {
	Kingdom, Phylum, Class, Order, Superfamily, Family, Subfamily, Tribe, Genus, Subgenus string
}

// Taxon is one accepted taxon.
type Taxon struct {
	// ID is the list's taxonID; empty for a higher taxon that the list only
	// mentions in the classification of others.
	ID string
	// NameID is the scientificNameID that the list states; NamedID gives one
	// in every case.
	NameID string
	// ScientificName is the accepted name without authorship.
	ScientificName string
	Authorship     string
	// Rank is the taxonRank in lower case: "species", "genus", "species aggregate".
	Rank string
	// Vernacular is the list's first vernacular name.
	Vernacular string
	// Number is the list's checklist number, as written there.
	Number string
	// Code is the nomenclaturalCode: ICZN, ICN, ICNP or ICVCN; empty if not known.
	Code string
	// Group is the list's own word for what the taxon belongs to ("moths").
	Group string
	Lineage
	// Flight is the months in which adults are expected; zero where the list
	// does not say.
	Flight Months
	// Eggs, Larvae and Pupae are the months in which these are found; zero
	// where the list does not say.
	Eggs, Larvae, Pupae Months
	// Most is the highest count at one time and place that is to be expected;
	// zero where the list does not say.
	Most int
	// SensitiveTo is the side in metres of the square in which places of the
	// taxon may be shown; 0 if it is not sensitive.
	SensitiveTo int
	// NeedsNote and NeedsSpecimen: a record is accepted only with a
	// description, or with a specimen or other proof of the same weight.
	NeedsNote, NeedsSpecimen bool
	// List and Line say where the taxon stands: the list's name and the line,
	// from 1; 0 for a taxon that only the classification of others mentions.
	List string
	Line int

	parent int32 // index of the parent or aggregate within its list, or none
}

const none = int32(-1)

// FullName is the accepted name with its authorship, as the codes cite it.
func (t *Taxon) FullName() string {
	if t.Authorship == "" {
		return t.ScientificName
	}
	return t.ScientificName + " " + t.Authorship
}

// String is the accepted name with the vernacular name, if any, in brackets.
func (t *Taxon) String() string {
	if t.Vernacular == "" {
		return t.ScientificName
	}
	return t.ScientificName + " (" + t.Vernacular + ")"
}

// SpecificEpithet is the second part of a name of species rank or below,
// without hybrid sign; empty for higher taxa and for aggregates of several
// epithets.
func (t *Taxon) SpecificEpithet() string {
	species, _ := t.epithets()
	return species
}

// InfraspecificEpithet is the last part of a name below species rank; empty
// for all others.
func (t *Taxon) InfraspecificEpithet() string {
	_, infra := t.epithets()
	return infra
}

func (t *Taxon) epithets() (species, infra string) {
	if !t.IsSpeciesOrBelow() {
		return "", ""
	}
	n := splitName(t.ScientificName)
	return n.epithet, n.infra
}

// IsSpeciesOrBelow reports whether the taxon is a species or part of one;
// aggregates are not.
func (t *Taxon) IsSpeciesOrBelow() bool {
	switch t.Rank {
	case RankSpecies, RankSubspecies, "variety", "form", "aberration", "subvariety", "subform", "cultivar", "nothospecies":
		return true
	}
	return false
}

// at returns the lineage's taxon name at a rank.
func (l *Lineage) at(rank string) string {
	if p := l.slot(rank); p != nil {
		return *p
	}
	return ""
}

func (l *Lineage) slot(rank string) *string {
	switch rank {
	case "kingdom":
		return &l.Kingdom
	case "phylum", "division":
		return &l.Phylum
	case "class":
		return &l.Class
	case RankOrder:
		return &l.Order
	case "superfamily":
		return &l.Superfamily
	case RankFamily:
		return &l.Family
	case RankSubfamily:
		return &l.Subfamily
	case "tribe":
		return &l.Tribe
	case RankGenus:
		return &l.Genus
	case "subgenus":
		return &l.Subgenus
	}
	return nil
}

// higherRanks are the ranks of a lineage, lowest first; a subgenus is left
// out, as its name is rarely written alone.
var higherRanks = [...]string{RankGenus, "tribe", RankSubfamily, RankFamily, "superfamily", RankOrder, "class", "phylum", "kingdom"}

// rankWords are the ways in which lists write ranks.
var rankWords = map[string]string{
	"sp": RankSpecies, "spec": RankSpecies, "spp": RankSpecies,
	"ssp": RankSubspecies, "subsp": RankSubspecies, "race": RankSubspecies,
	"gen": RankGenus, "fam": RankFamily, "ord": RankOrder, "subfam": RankSubfamily,
	"agg": RankAggregate, "aggregate": RankAggregate, "species group": RankAggregate,
	"speciesaggregate": RankAggregate, "complex": RankAggregate, "species complex": RankAggregate,
	"group": RankAggregate, "pair": RankAggregate, "species pair": RankAggregate,
	"var": "variety", "f": "form", "forma": "form", "ab": "aberration",
}

// IsRank tells whether a rank is one of those that names are recorded at, as
// RankOf returns it.
func IsRank(rank string) bool {
	t := Taxon{Rank: rank}
	return t.IsSpeciesOrBelow() || rank == RankAggregate || rank == "hybrid" || t.slot(rank) != nil
}

// RankOf reads a rank as a list writes it, into the words of taxonRank:
// "species" of "sp.", "species aggregate" of "Agg". A word that it does not
// know is returned in small letters.
func RankOf(s string) string {
	if s == RankSpecies || s == "" {
		return s
	}
	s = strings.ToLower(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(s), ".")))
	s = strings.ReplaceAll(s, "_", " ")
	if r, ok := rankWords[s]; ok {
		return r
	}
	return s
}

// rankFromName infers the rank where a list does not say: by the number of
// parts, and for one word by the ending of family-group names (ICZN Article
// 29.2: -oidea, -idae, -inae, -ini; ICN Article 18.1: -aceae).
func rankFromName(n sciName, l *Lineage) string {
	switch {
	case n.aggregate:
		return RankAggregate
	case n.infra != "":
		switch n.marker {
		case "var":
			return "variety"
		case "f":
			return "form"
		case "ab":
			return "aberration"
		}
		return RankSubspecies
	case n.epithet != "":
		return RankSpecies
	}
	for _, r := range higherRanks {
		if v := l.at(r); v != "" && strings.EqualFold(v, n.genus) {
			return r
		}
	}
	w := strings.ToLower(n.genus)
	for _, e := range [...]struct{ ending, rank string }{
		{"oidea", "superfamily"}, {"idae", RankFamily}, {"aceae", RankFamily}, {"inae", RankSubfamily}, {"ini", "tribe"}, {"optera", RankOrder},
	} {
		if strings.HasSuffix(w, e.ending) {
			return e.rank
		}
	}
	return RankGenus
}
