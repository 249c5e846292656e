package taxa

// Words that stand beside a name without being part of it, by their keys.

func wordSet(words ...string) map[string]bool {
	m := make(map[string]bool, len(words))
	for _, w := range words {
		m[w] = true
	}
	return m
}

// noteWords are sex, stage, state, number and circumstance as written behind
// (or before) a name.
var noteWords = wordSet(
	"m", "f", "male", "males", "female", "females", "fem", "worn", "fresh", "tatty", "faded", "battered", "dead", "alive", "live",
	"larva", "larvae", "larval", "caterpillar", "caterpillars", "cat", "cats", "coc", "pupa", "pupae", "pupal", "cocoon", "egg", "eggs", "ova", "ovum", "ovipositing",
	"adult", "adults", "imago", "imagines", "ad", "ads", "imm", "immature", "juv", "nymph", "nymphs", "exuvia", "exuviae", "teneral",
	"queen", "queens", "worker", "workers", "drone", "drones", "pair", "pairs", "mating", "cop", "copula", "copulating", "tandem", "incop",
	"ex", "exx", "exs", "indiv", "inds", "ind", "individual", "individuals", "specimen", "specimens", "seen", "several", "many", "few", "lots", "plenty",
	"single", "singles", "one", "two", "three", "numerous", "abundant", "frequent", "present", "total", "count", "about", "approx", "approximately", "circa", "ca", "c",
	"at", "on", "in", "to", "by", "from", "near", "with", "under", "the", "a", "of", "and", "plus", "around", "over",
	"light", "sugar", "trap", "rest", "flight", "flying", "window", "wall", "house", "garden", "porch", "actinic", "mv", "moth", "moths", "butterfly", "ladybird", "ladybirds", "dragonfly", "damselfly", "bumblebee",
	"det", "conf", "confirmed", "verified", "dissected", "dissection", "gen", "genitalia", "gendet", "photo", "photos", "photographed", "photograph", "pic", "picture", "image",
	"retained", "released", "kept", "potted", "voucher", "fide", "per", "teste", "leg", "again", "new", "first", "nfg", "nfy", "nfs",
	"dark", "pale", "melanic", "typical", "large", "small", "tiny", "big", "form", "dusk", "dawn", "day", "night", "evening", "morning", "early", "late",
	"x", "no", "nos", "sic", "id", "caught", "netted", "swept", "beaten", "reared", "bred", "feeding", "nectaring", "basking", "spent", "size", "sized", "still", "very", "only", "outside", "inside",
	"abd", "ab", "min", "max", "est", "estimated", "yellow", "white", "red", "brown", "black", "orange", "grey", "escaped", "emerged", "emerging", "egglaying", "roosting", "hibernating", "gravid",
)

// denials before a name say that it was not seen, or is not it.
var denials = wordSet("no", "not", "none", "nil", "without", "isnt", "wasnt", "never")

// placeWords begin a note about where or how.
var placeWords = wordSet("at", "on", "in", "to", "by", "from", "near", "under", "outside", "inside", "around", "over", "with", "through", "among", "along", "behind", "beside", "flying", "feeding", "nectaring", "laying", "resting", "found", "seen", "caught", "netted", "swept", "beaten", "taken", "det", "conf", "fide", "teste", "per", "photo")

// weakNotes are note words that are also words of vernacular names: alone
// behind a vernacular name they may be part of another name.
var weakNotes = wordSet(
	"dark", "pale", "large", "small", "tiny", "big", "yellow", "white", "red", "brown", "black", "orange", "grey", "early", "light", "night", "day", "dusk",
	"moth", "moths", "butterfly", "ladybird", "ladybirds", "dragonfly", "damselfly", "bumblebee", "wall", "garden", "with", "of", "and", "the", "a", "single", "house", "window", "dawn", "evening", "late", "plus", "under", "typical",
)

// doubtWords say that the name is not certain.
var doubtWords = map[string]string{
	"cf": "cf.", "aff": "aff.", "nr": "nr", "possibly": "possibly", "possible": "possibly", "poss": "possibly", "posibly": "possibly",
	"probably": "probably", "probable": "probably", "prob": "probably", "probs": "probably", "maybe": "possibly", "perhaps": "possibly",
	"likely": "probably", "query": "?", "unconfirmed": "?", "presumed": "probably", "tentative": "?", "confer": "cf.", "affinis": "",
}

// openWords say that the species is left open.
var openWords = map[string]string{
	"sp": "sp.", "spp": "spp.", "species": "sp.", "indet": "indet.", "indeterminate": "indet.", "indetermined": "indet.",
	"unidentified": "indet.", "unid": "indet.", "unident": "indet.", "undet": "indet.", "undetermined": "indet.",
	"unknown": "indet.", "spec": "sp.",
}

// nothingWords are cells that name nothing.
var nothingWords = wordSet("unknown", "unidentified", "unid", "unident", "indet", "na", "nk", "nil", "none", "nothing", "nomoths", "nomoth", "nocatch", "nothingcaught", "nothingseen", "blank", "empty", "tbc", "tba", "tbd", "notidentified", "notknown", "dontknow", "dunno", "mystery", "mysterymoth", "unknownmoth", "sp", "spp", "species", "unsure", "notsure")

// doubtPhrases are notes that say nothing but that the name is not certain.
var doubtPhrases = wordSet("unsure", "notsure", "notcertain", "uncertain", "notconfirmed", "unconfirmed", "tobeconfirmed", "tbc", "needsconfirming", "needsconfirmation",
	"needschecking", "tobechecked", "tocheck", "thinkso", "ithink", "ithinkso", "ithought", "probably", "possibly", "perhaps", "maybe", "prob", "poss", "likely", "mostlikely", "verylikely",
	"idtbc", "iduncertain", "idunsure", "idnotcertain", "idunconfirmed", "idtobeconfirmed", "notsureofid", "notverified", "unverified", "queried", "doubtful", "dubious", "bestguess", "aguess", "guess", "query", "tentative", "tentativeid", "provisional", "provisionally")

// remarkDoubts are words in a note that throw doubt on the name before it.
var remarkDoubts = wordSet("possibly", "probably", "maybe", "perhaps", "unsure", "unconfirmed", "cf", "aff", "prob", "poss", "likely", "unlikely", "doubtful", "doubt", "notsure", "not", "or", "check", "query", "uncertain", "tentative", "queried", "needs", "sure", "wrong", "could", "might", "may", "think", "thought", "guess", "tbc", "dubious", "questionable", "suspect", "suspected", "unclear", "either", "presumably", "apparently", "none", "nil", "absent")

// shortForms are the ways in which words of vernacular names are cut short.
var shortForms = map[string]string{
	"lge": "large", "lrg": "large", "lg": "large", "sml": "small", "sm": "small", "com": "common", "comm": "common", "cmn": "common",
	"gt": "great", "grt": "great", "yell": "yellow", "yel": "yellow", "yw": "yellow", "ylw": "yellow", "uw": "underwing", "uwing": "underwing", "underw": "underwing",
	"und": "underwing", "lsr": "lesser", "less": "lesser", "bb": "broadbordered", "heb": "hebrew", "char": "character", "set": "setaceous", "setac": "setaceous",
	"hm": "hawkmoth", "hmoth": "hawkmoth", "brd": "bordered", "sq": "square", "rus": "rustic", "rust": "rustic", "ft": "footman", "carp": "carpet", "prom": "prominent", "wains": "wainscot", "wain": "wainscot",
	"br": "brown", "bl": "black", "wh": "white", "gr": "grey", "gn": "green", "bumb": "bumblebee",
}
