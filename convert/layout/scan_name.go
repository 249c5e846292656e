package layout

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// latinEndings are usual endings of specific epithets (from memory, no
// source): enough to tell "Noctua pronuba" from "Large yellow".
var latinEndings = []string{"a", "us", "um", "is", "i", "ae", "or", "ens", "ans", "ix", "ax", "es", "on", "ys", "ex", "os", "ops", "ides"}

// isBinomial reports whether a text starts like a scientific name: a
// capitalised genus, or its letter with a full stop, and a small-lettered
// epithet with a Latin ending.
func isBinomial(s string) bool {
	genus, rest, ok := strings.Cut(s, " ")
	if !ok || genus == "" {
		return false
	}
	if genus[0] < 'A' || genus[0] > 'Z' {
		return false
	}
	for i := 1; i < len(genus); i++ {
		if c := genus[i]; (c < 'a' || c > 'z') && c < utf8.RuneSelf && !(c == '.' && i == len(genus)-1 && i <= 4) && c != '-' {
			return false
		}
	}
	rest = strings.TrimSpace(rest)
	if strings.HasPrefix(rest, "(") { // a subgenus
		if i := strings.IndexByte(rest, ')'); i > 0 {
			rest = strings.TrimSpace(rest[i+1:])
		}
	}
	epithet, _, _ := strings.Cut(rest, " ")
	switch strings.TrimRight(epithet, ".") {
	case "sp", "spp", "agg", "cf", "indet":
		return len(genus) > 3
	}
	if len(epithet) < 3 || epithet[0] < 'a' || epithet[0] > 'z' {
		return false
	}
	for i := 0; i < len(epithet); i++ {
		if c := epithet[i]; (c < 'a' || c > 'z') && c != '-' && c < utf8.RuneSelf {
			return false
		}
	}
	if vernacularWords[epithet] || englishWords[epithet] {
		return false
	}
	for _, e := range latinEndings {
		if strings.HasSuffix(epithet, e) {
			return true
		}
	}
	return strings.HasSuffix(genus, ".")
}

// englishWords end like Latin but stand behind a capital in plain English.
var englishWords = wordSet("is was has this his us plus various several area data extra idea sea a i on season " +
	"person station upon common iron reservoir garden mia species moths records nights individuals seen visitor recorder river open ova")

// vernacularWords are words that vernacular names of these islands' animals
// end in, in the singular (from memory, no source). They serve to tell a
// column of names from a column of places; the names themselves are the
// taxon list's.
var vernacularWords = wordSet("moth underwing carpet pug dart rustic wainscot hawkmoth hawk-moth footman tiger beauty " +
	"emerald wave prominent kitten arches quaker chestnut sallow dagger minor brocade ear snout fanfoot fan-foot " +
	"silver-lines pearl plume tortrix butterfly fritillary skipper hairstreak copper admiral peacock comma brimstone " +
	"darter hawker damselfly chaser skimmer demoiselle bumblebee bumble-bee ladybird drinker lackey eggar swift ermine " +
	"clay gothic drab thorn spectacle shark herald burnet cinnabar ringlet gatekeeper brown blue umber lady buff-tip " +
	"character magpie veneer grass-veneer bell roller knot-horn tussock vapourer lutestring satin peppered dot pinion shoulder " +
	"ground yellow green orange heath argus speckled-wood white sweep knot hooktip hook-tip hoverfly beetle shieldbug " +
	"bug cricket grasshopper wasp bee hornet ant spider snail slug newt frog toad bat vole shrew mouse hare fox badger " +
	"hedgehog otter robin wren blackbird thrush warbler finch bunting tit owl gull tern duck goose swan heron harrier " +
	"buzzard kestrel swallow martin lark pipit wagtail starling sparrow crow jackdaw plover sandpiper snipe crake rail bittern " +
	"fieldfare redwing orchid sedge rush reed fern moss lichen buttercup violet dart-moth y gem delicate vestal mocha streak seraph " +
	"looper spinach phoenix chevron highflyer rivulet shell tissue scallop shell-moth lappet leopard goat " +
	"puss lobster muslin ruby nutmeg cabbage-moth dun-bar dunbar flounced satellite herald antler crescent ranunculus " +
	"angle-shades shades mouse-moth copper-underwing shuttle-shaped cutworm treble-bar v-pug small-square-spot square-spot merveille " +
	"clouded-drab bright-line brown-eye bordered-white mother-shipton shipton red-admiral tortoiseshell painted-lady damsel hawkmoths")

func wordSet(s string) map[string]bool {
	set := map[string]bool{}
	for w := range strings.FieldsSeq(s) {
		set[w] = true
	}
	return set
}

// looksVernacular reports whether a text ends, marks and counts apart, in a
// word that vernacular names end in.
func looksVernacular(s string) bool {
	if len(s) > 60 {
		return false
	}
	end := len(s)
	for range 3 { // a trailing count, bracket or mark may follow
		word := lastWord(s[:end])
		w := strings.ToLower(strings.Trim(word, ".,;:()?!'\"*"))
		if vernacularWords[w] || vernacularWords[strings.TrimSuffix(w, "s")] && len(w) > 3 {
			return true
		}
		if i := strings.LastIndexByte(w, '-'); i > 0 && vernacularWords[w[i+1:]] {
			return true
		}
		if w != "" && !isDigit(w[0]) && w != "agg" && w != "sp" && w != "m" && w != "f" && w != "x" {
			return false
		}
		end = strings.LastIndex(s[:end], word)
		end = len(strings.TrimRight(s[:end], " "))
		if end <= 0 {
			return false
		}
	}
	return false
}

func lastWord(s string) string {
	return s[strings.LastIndexByte(s, ' ')+1:]
}

// isGroupName reports whether a text is a family, superfamily or subfamily by
// its ending, or the everyday name of a group.
func isGroupName(s string) bool {
	w := strings.ToLower(strings.Trim(s, " :.-*"))
	if groupWords[w] {
		return true
	}
	if i := strings.IndexAny(w, " ("); i > 0 { // "Noctuidae (owlets)", "Family Noctuidae"
		head := w[:i]
		if head == "family" || head == "order" || head == "subfamily" || head == "superfamily" {
			return !strings.Contains(strings.TrimSpace(w[i:]), " ")
		}
		tail := strings.TrimSpace(w[i:])
		if !strings.HasPrefix(tail, "(") && !strings.HasPrefix(tail, "-") && !strings.HasPrefix(tail, "–") {
			return false
		}
		w = head
	}
	for _, e := range [...]string{"idae", "inae", "oidea", "ptera", "aceae"} {
		if strings.HasSuffix(w, e) && len(w) > len(e)+2 {
			return true
		}
	}
	return w == "odonata"
}

var groupWords = wordSet("moths butterflies macros micros macro-moths micro-moths dragonflies damselflies beetles ladybirds bees " +
	"bumblebees wasps flies hoverflies bugs spiders birds mammals plants fungi amphibians reptiles molluscs caddis lepidoptera " +
	"grasshoppers crickets macro-lepidoptera micro-lepidoptera macrolepidoptera microlepidoptera hawk-moths hawkmoths pugs others other")

// isPerson reports whether a text is written as people write each other down:
// initials, or an initial and a surname. Full names it cannot tell from
// places.
func isPerson(s string) bool {
	if s == "" || len(s) > 60 {
		return false
	}
	switch strings.ToLower(s) {
	case "self", "me", "myself":
		return true
	}
	any := false
	for part := range strings.FieldsFuncSeq(s, func(r rune) bool { return r == ',' || r == ';' || r == '&' || r == '/' || r == '+' || r == '|' }) {
		part = strings.TrimSpace(part)
		if !isInitials(part) && !isInitialSurname(part) {
			return false
		}
		any = true
	}
	return any
}

func isInitials(s string) bool {
	letters := 0
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c >= 'A' && c <= 'Z':
			letters++
		case c != '.' && c != ' ' && c != '-':
			return false
		}
	}
	return letters >= 2 && letters <= 4 && (len(s) == letters || strings.Contains(s, ".") || len(s) == 2*letters-1)
}

func isInitialSurname(s string) bool {
	initials, surname := 0, false
	for w := range strings.FieldsSeq(s) {
		r, size := utf8.DecodeRuneInString(w)
		if !unicode.IsUpper(r) {
			return false
		}
		if rest := strings.Trim(w[size:], "."); rest == "" || isInitials(w) {
			initials++
		} else if initials > 0 || surname {
			surname = true
		} else {
			return false
		}
	}
	return initials > 0 && surname
}

// placeWords end or stand in names of places.
var placeWords = wordSet("reserve wood woods garden gardens fen lane farm road row meadow meadows marsh common heath hill green " +
	"lode drove droves bank pit pits quarry copse plantation park pond lake river bridge house cottage mill mere moor dyke drain carr " +
	"pool bed railway allotment allotments cemetery spinney weir staithe paddock embankment mire reedbed car-park churchyard orchard field fields close street site sluice pumping washes nr island warren down downs forest grove hide ride compartment")

func looksPlace(s string) bool {
	for w := range strings.FieldsSeq(strings.ToLower(s)) {
		if placeWords[strings.Trim(w, ".,;:()")] {
			return true
		}
	}
	return false
}
