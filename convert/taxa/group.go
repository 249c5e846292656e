package taxa

import "strings"

// groupWords are everyday words for groups of taxa and the higher taxa that
// they mean. A minus means without.
var groupWords = map[string][]string{
	"moth":        {"Lepidoptera", "-Papilionidae", "-Hesperiidae", "-Pieridae", "-Nymphalidae", "-Lycaenidae", "-Riodinidae", "-Satyridae"},
	"butterfly":   {"Papilionidae", "Hesperiidae", "Pieridae", "Nymphalidae", "Lycaenidae", "Riodinidae", "Satyridae", "Papilionoidea"},
	"dragonfly":   {"Odonata"},
	"damselfly":   {"Odonata"},
	"bumblebee":   {"Bombus"},
	"bee":         {"Apidae", "Andrenidae", "Halictidae", "Megachilidae", "Colletidae", "Melittidae"},
	"wasp":        {"Hymenoptera"},
	"ant":         {"Formicidae"},
	"ladybird":    {"Coccinellidae"},
	"beetle":      {"Coleoptera"},
	"hoverfly":    {"Syrphidae"},
	"fly":         {"Diptera"},
	"cranefly":    {"Tipulidae", "Limoniidae", "Pediciidae", "Cylindrotomidae"},
	"bug":         {"Hemiptera"},
	"shieldbug":   {"Pentatomidae", "Acanthosomatidae", "Scutelleridae"},
	"grasshopper": {"Orthoptera"},
	"cricket":     {"Orthoptera"},
	"spider":      {"Araneae"},
	"harvestman":  {"Opiliones"},
	"woodlouse":   {"Isopoda"},
	"snail":       {"Gastropoda"},
	"slug":        {"Gastropoda"},
	"caddis":      {"Trichoptera"},
	"caddisfly":   {"Trichoptera"},
	"mayfly":      {"Ephemeroptera"},
	"lacewing":    {"Neuroptera"},
	"insect":      {"Insecta"},
	"bird":        {"Aves"},
	"mammal":      {"Mammalia"},
	"bat":         {"Chiroptera"},
	"fish":        {"Actinopterygii", "Actinopteri", "Teleostei"},
	"amphibian":   {"Amphibia"},
	"reptile":     {"Reptilia", "Squamata"},
	"fungus":      {"Fungi"},
	"plant":       {"Plantae"},
	"flower":      {"Plantae"},
	"tree":        {"Plantae"},
	"moss":        {"Bryophyta"},
	"lichen":      {"Fungi"},
	"animal":      {"Animalia"},
}

// groupPhrases are ways of writing a group that are not its word in the
// singular or plural.
var groupPhrases = map[string]string{
	"macro": "moth", "macros": "moth", "macromoth": "moth", "macromoths": "moth", "micro": "moth", "micros": "moth",
	"micromoth": "moth", "micromoths": "moth", "macrolepidoptera": "moth", "microlepidoptera": "moth", "largermoths": "moth", "largermoth": "moth",
	"heterocera": "moth", "rhopalocera": "butterfly", "bumble": "bumblebee", "bumblebees": "bumblebee", "fungi": "fungus",
	"craneflies": "cranefly", "hoverflies": "hoverfly", "wildflowers": "flower", "higherplants": "plant", "vascularplants": "plant",
	"floweringplants": "plant", "harvestmen": "harvestman", "woodlice": "woodlouse", "caddisflies": "caddisfly", "mosses": "moss", "fishes": "fish",
	"shieldbugs": "shieldbug", "leps": "Lepidoptera", "lep": "Lepidoptera", "owletmoths": "Noctuidae",
}

// group is what a page or a project is about: higher taxa that a taxon must
// belong to one of. The zero value says nothing.
type group struct {
	in, out []string
	word    string // a list's own group word, folded
}

// groupOf understands the words for a group: "moths", "Butterflies & moths",
// "Noctuidae", "Macro-moths 2019". known tells a higher taxon of the lists.
func groupOf(text string, known func(string) bool) group {
	g := group{word: key(text)}
	if text == "" {
		return group{}
	}
	take := func(word string) bool {
		if w, ok := groupPhrases[word]; ok {
			word = w
		}
		taxa, ok := groupWords[word]
		for _, s := range singular(word) {
			if t, there := groupWords[s]; there && !ok {
				taxa, ok = t, true
			}
		}
		if !ok {
			if c := capitalised(word); word != "" && known(c) {
				g.in = append(g.in, c)
				return true
			}
			return false
		}
		for _, t := range taxa {
			if rest, minus := strings.CutPrefix(t, "-"); minus {
				g.out = append(g.out, rest)
			} else {
				g.in = append(g.in, t)
			}
		}
		return true
	}
	if !take(g.word) {
		for _, w := range strings.FieldsFunc(text, func(r rune) bool {
			return r == ' ' || r == ',' || r == '&' || r == '/' || r == '+' || r == ';' || r == '(' || r == ')'
		}) {
			take(key(w))
		}
	}
	// "moths and butterflies": what one word leaves out another takes in.
	out := g.out[:0]
	for _, o := range g.out {
		keep := true
		for _, i := range g.in {
			keep = keep && i != o
		}
		if keep {
			out = append(out, o)
		}
	}
	g.out = out
	return g
}

// says reports whether the group says anything about taxa.
func (g *group) says() bool { return len(g.in) > 0 || g.word != "" }

// understood reports whether the words were understood as higher taxa.
func (g *group) understood() bool { return len(g.in) > 0 }

// has reports whether a taxon belongs to the group.
func (g *group) has(t *Taxon) bool {
	if g.word != "" && t.Group != "" {
		if strings.TrimSuffix(key(t.Group), "s") == strings.TrimSuffix(g.word, "s") {
			return true
		}
	}
	in := false
	for _, name := range g.in {
		in = in || t.belongsTo(name)
	}
	if !in {
		return false
	}
	for _, name := range g.out {
		if t.belongsTo(name) {
			return false
		}
	}
	return true
}

// belongsTo reports whether a higher taxon stands in t's classification, or
// is t.
func (t *Taxon) belongsTo(name string) bool {
	if strings.EqualFold(t.ScientificName, name) {
		return true
	}
	for _, r := range higherRanks {
		if strings.EqualFold(t.at(r), name) {
			return true
		}
	}
	return false
}
