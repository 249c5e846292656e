package tally

// kind is what a word or sign does in a count.
type kind uint8

const (
	unknown  kind = iota
	number        // 12, 1,200, "twelve"
	dozen         // multiplies the number before it by meaning.n
	pair          // 2 individuals each
	vague         // a quantity in words
	approx        // makes the number beside it inexact
	sex           //
	stage         //
	caste         //
	vitality      //
	sign          // something an animal leaves or makes: counted, but no individual
	unit          // "moths", "individuals": says nothing more
	remark        // says more, without bearing on the count
	place         // "on", "at": what follows is a remark
	includes      // "of which"
	none          // "no", "nil"
	presence      // "seen"
	other         // what is counted is no animal: traps, hours, per cent
	sep           // , ; + & / and
	dash          // -
	to            // "to", "or" between numbers
	open          // ( [
	shut          // ) ]
	question      // ?
	glue          // : = and other signs that only join
	times         // x beside a number
)

// meaning is a word's entry. text is the term's value; stage goes with signs
// and with words such as "teneral" that imply one; n is a number's value.
type meaning struct {
	kind  kind
	text  string
	stage string
	n     int
	// keep: the word itself is kept as a remark.
	keep bool
	// doubt: likely, but the word could mean something else.
	doubt bool
}

// entries writes one meaning for several words.
type entries struct {
	m     meaning
	words []string
}

var dictionary = build([]entries{
	{meaning{kind: sex, text: "male"}, []string{"m", "male", "males", "♂", "♂♂", "ms", "m's", "mal"}},
	{meaning{kind: sex, text: "male", doubt: true}, []string{"mm"}},
	{meaning{kind: sex, text: "female"}, []string{"f", "female", "females", "♀", "♀♀", "fem", "fems", "f's", "ff", "fs", "femal"}},
	{meaning{kind: sex, text: "hermaphrodite"}, []string{"hermaphrodite", "hermaphrodites"}},
	{meaning{kind: sex, text: "", keep: true, n: 1}, []string{"unsexed", "undetermined", "sex unknown", "unknown sex", "unsex", "indet sex", "sex indet", "not sexed", "unknown", "indet", "undet", "other", "others", "sex not known", "sex not noted"}},

	{meaning{kind: stage, text: "adult"}, []string{"adult", "adults", "ad", "ads", "adt", "adts", "imago", "imagos", "imagines", "imagoes", "adlt"}},
	{meaning{kind: stage, text: "adult", keep: true}, []string{"teneral", "tenerals"}},
	{meaning{kind: stage, text: "adult", doubt: true}, []string{"a"}},
	{meaning{kind: stage, text: "larva"}, []string{"larva", "larvae", "larvæ", "larv", "larval", "lv", "lvs", "lva", "lvae", "larvas", "L",
		"caterpillar", "caterpillars", "cat", "cats", "cat's", "grub", "grubs", "maggot", "maggots", "tadpole", "tadpoles"}},
	{meaning{kind: stage, text: "larva", doubt: true}, []string{"l"}},
	{meaning{kind: stage, text: "larva", keep: true}, []string{"first instar", "second instar", "third instar", "fourth instar", "fifth instar",
		"final instar", "last instar", "early instar", "late instar", "instar", "instars", "small larvae", "small larva", "young larvae", "young larva",
		"full grown larva", "full grown larvae", "fullgrown larva", "fullgrown larvae"}},
	{meaning{kind: stage, text: "pupa"}, []string{"pupa", "pupae", "pupæ", "pup", "pupal", "pupas", "chrysalis", "chrysalids", "chrysalides", "chrysalises"}},
	{meaning{kind: stage, text: "pupa", doubt: true}, []string{"p"}},
	{meaning{kind: stage, text: "egg"}, []string{"egg", "eggs", "ovum", "ova", "ovae"}},
	{meaning{kind: stage, text: "egg", doubt: true}, []string{"e"}},
	{meaning{kind: stage, text: "nymph"}, []string{"nymph", "nymphs", "nym"}},
	{meaning{kind: stage, text: "juvenile"}, []string{"juvenile", "juveniles", "juv", "juvs"}},
	{meaning{kind: stage, text: "juvenile", doubt: true}, []string{"j"}},
	{meaning{kind: stage, text: "juvenile", keep: true}, []string{"fledgling", "fledglings", "spiderling", "spiderlings", "immature", "immatures", "imm", "imms", "immat"}},
	{meaning{kind: stage, text: "subadult"}, []string{"subadult", "subadults", "subad", "sub ad", "sub adult", "sub adults", "sub-adult"}},

	{meaning{kind: caste, text: "queen"}, []string{"queen", "queens", "q", "qs"}},
	{meaning{kind: caste, text: "worker"}, []string{"worker", "workers", "w", "ws", "wkr", "wkrs"}},
	{meaning{kind: caste, text: "drone"}, []string{"drone", "drones"}},
	{meaning{kind: caste, text: "gyne"}, []string{"gyne", "gynes"}},
	{meaning{kind: caste, text: "soldier"}, []string{"soldier", "soldiers"}},

	{meaning{kind: vitality, text: "dead"}, []string{"dead", "found dead", "corpse", "corpses", "drowned", "roadkill", "road kill", "road casualty", "dead on road", "squashed", "killed"}},
	{meaning{kind: vitality, text: "alive"}, []string{"alive", "live", "living"}},

	{meaning{kind: sign, stage: "larva"}, []string{"mine", "mines", "leaf mine", "leaf mines", "leafmine", "leafmines", "larval mine", "larval mines",
		"vacated mine", "vacated mines", "vacated leaf mine", "vacated leaf mines", "vac mine", "vac mines", "empty mine", "empty mines",
		"tenanted mine", "tenanted mines", "occupied mine", "occupied mines", "active mine", "active mines", "old mine", "old mines",
		"blotch", "blotches", "blotch mine", "blotch mines", "gallery", "galleries", "gallery mine", "gallery mines",
		"mined leaf", "mined leaves",
		"case", "cases", "larval case", "larval cases", "larva case", "empty case", "empty cases", "tenanted case", "tenanted cases",
		"spinning", "spinnings", "larval spinning", "larval spinnings", "spun leaf", "spun leaves", "leaf spinning", "leaf spinnings", "spun shoot", "spun shoots",
		"web", "webs", "larval web", "larval webs", "larval nest", "larval nests", "larval tent", "larval tents",
		"larval feeding", "larval feeding sign", "larval feeding signs", "feeding larvae", "larval damage", "larval frass", "larval workings"}},
	{meaning{kind: sign}, []string{"exuvia", "exuviae", "exuvium", "gall", "galls", "feeding sign", "feeding signs", "feeding damage", "feeding", "frass", "workings",
		"nest", "nests", "active nest", "active nests", "old nest", "shell", "shells", "feather", "feathers", "droppings", "tracks", "burrow", "burrows", "exit hole", "exit holes", "colony", "colonies"}},
	{meaning{kind: sign, stage: "pupa"}, []string{"pupal exuvia", "pupal exuviae", "pupal exuvium", "pupal case", "pupal cases", "pupa case", "pupa cases",
		"empty pupa", "empty pupae", "empty pupal case", "empty pupal cases", "cocoon", "cocoons", "empty cocoon", "empty cocoons", "puparium", "puparia"}},
	{meaning{kind: sign, stage: "larva"}, []string{"larval exuvia", "larval exuviae"}},
	{meaning{kind: sign, stage: "nymph"}, []string{"nymphal exuvia", "nymphal exuviae"}},
	{meaning{kind: sign, stage: "egg"}, []string{"egg batch", "egg batches", "eggbatch", "eggbatches", "batch of eggs", "batches of eggs", "egg mass", "egg masses", "egg cluster", "egg clusters",
		"egg clutch", "egg clutches", "egg raft", "egg rafts", "egg shell", "egg shells", "eggshell", "eggshells", "egg sac", "egg sacs", "batch of ova", "batches of ova", "ova batch", "ova batches", "spawn", "clump of spawn", "clumps of spawn", "spawn clump", "spawn clumps", "batch", "batches", "clutch", "clutches", "empty egg", "empty eggs"}},

	{meaning{kind: unit}, []string{"individual", "individuals", "indiv", "indivs", "ind", "inds", "specimen", "specimens", "spec", "specs", "spm", "spms", "ex", "exs", "exx", "example", "examples",
		"moth", "moths", "butterfly", "butterflies", "beetle", "beetles", "bug", "bugs", "bee", "bees", "fly", "flies", "insect", "insects", "bird", "birds", "spider", "spiders", "dragonfly", "dragonflies",
		"counted", "count", "tally", "qty", "number", "nos", "no of", "only", "just", "of", "flock of", "group of", "party of", "cluster of", "were", "was", "being", "are", "the one", "no."}},
	{meaning{kind: unit, n: 1}, []string{"in total", "total", "tot", "altogether", "in all", "total of", "a total of", "all told"}},
	{meaning{kind: presence}, []string{"present", "seen", "noted", "recorded", "yes", "found", "observed", "here", "trapped", "caught", "taken", "again"}},

	{meaning{kind: remark}, []string{"wings", "wings only", "wing", "remains", "vacated", "tenanted", "occupied", "empty", "unoccupied", "vac", "alate", "alates", "winged", "wingless", "dealate", "ovip", "laying eggs", "laying ova", "egg laying", "worn", "very worn", "v worn", "fresh", "very fresh", "tatty", "faded", "damaged", "old", "new", "small", "large", "big", "tiny", "huge", "dark", "pale", "light", "melanic", "melanics", "typical", "form",
		"gravid", "mated", "virgin", "assembling", "calling", "egglaying", "ovipositing", "singing", "displaying", "chasing", "laying", "courting", "mature", "young", "early", "late",
		"netted", "released", "retained", "ret", "retd", "potted", "kept", "reared", "bred", "emerged", "ex larva", "ex pupa", "ex larvae", "ex pupae", "ex ova", "ex ovum", "ex egg", "ex l", "ex p", "e l", "e p", "el", "flushed", "disturbed", "came to light", "hatched", "flew off", "flew away", "got away", "let go", "ab", "aberrant", "aberration", "out", "nearby", "courtship", "sunning", "roosting", "drinking", "seen well", "attending", "swept", "beaten", "beating", "sweeping", "dissected", "photo", "photographed", "photos", "pic", "pics", "photo taken", "det", "gen det", "gen", "genitalia", "genitalia checked", "dissection", "specimen kept", "specimen retained", "voucher",
		"flying", "resting", "basking", "feeding up", "nectaring", "inside", "outside", "indoors", "outdoors", "escaped", "injured", "parasitised", "full grown", "fullgrown", "full fed", "green form", "brown form",
		"first brood", "second brood", "third brood", "first generation", "second generation", "third generation", "first", "first record", "first for site", "first for garden", "new for site", "new for the site", "new to site", "new for garden", "nfg", "nfs", "nfy", "new for year", "first of year", "first of the year", "foy", "last", "late date", "migrant", "migrants", "wow", "nice", "confirmed", "definite", "heard"}},
	{meaning{kind: remark, n: 2}, []string{"mating", "copulating", "in cop", "in copula", "in copulation", "paired", "cop", "i c", "in coitu"}},
	{meaning{kind: remark, n: 3}, []string{"all", "both"}},
	{meaning{kind: place}, []string{"on", "at", "in", "under", "by", "near", "nr", "beside", "inside the", "from", "to light", "to sugar", "to lure", "to lamp", "around", "round", "along", "over the", "behind", "beneath", "among", "amongst", "off", "outside the", "with wings", "during", "via", "attracted"}},

	{meaning{kind: includes}, []string{"of which", "of these", "of them", "inc", "incl", "including", "includes", "made up of", "comprising", "viz"}},
	{meaning{kind: none}, []string{"no", "nil", "none", "zero", "nought", "not any"}},
	{meaning{kind: other}, []string{"trap", "traps", "hr", "hrs", "hour", "hours", "min", "mins", "minute", "minutes", "sec", "secs", "night", "nights", "day", "days", "week", "weeks", "month", "months", "year", "years",
		"brood", "broods", "generation", "generations", "flocks", "groups", "clump", "clumps", "patches", "locations", "places", "occasions", "species", "spp", "sites", "site", "km", "kg", "g", "cm", "metre", "metres", "meter", "meters", "mile", "miles", "yards", "yds", "feet", "ft", "inch", "inches", "leaves", "leaf", "trees", "tree", "plants", "plant",
		"percent", "per cent", "degrees", "deg", "watt", "watts", "mv", "am", "pm", "visits", "visit", "records", "record", "times", "rows", "row", "lamps", "lamp", "sheets", "sheet", "ha", "acres"}},

	{meaning{kind: approx}, []string{"c", "ca", "cca", "circa", "cir", "approx", "approximately", "approxim", "aprox", "appx", "about", "abt", "around about", "roughly", "nearly", "almost", "est", "estimate", "estimated", "plus", "ish", "or so", "or more", "or fewer", "or less", "or thereabouts", "odd", "and more",
		"at least", "min of", "minimum", "minimum of", "max", "max of", "max count", "maximum count", "peak", "peak count", "maximum", "maximum of", "up to", "over", "under", "more than", "less than", "fewer than", "in excess of", "upwards of", "some where around", "probably about", "well over", "just over", "just under", "say", "no more than", "not more than", "no fewer than", "not less than", "at most", "between", "or two", "or three", "easily", "etc", "and others"}},

	{meaning{kind: approx, doubt: true}, []string{"poss", "possibly", "maybe", "perhaps", "prob", "probably"}},

	{meaning{kind: vague}, []string{"several", "many", "very many", "few", "a few", "very few", "quite a few", "lots", "lots of", "loads", "loads of", "numerous", "some", "plenty", "plenty of", "masses", "masses of", "swarm", "swarms", "swarming", "a swarm", "myriads",
		"common", "very common", "v common", "quite common", "fairly common", "locally common", "locally frequent", "not common", "not many", "v few", "com", "abundant", "very abundant", "v abundant", "abund", "super abundant", "freq", "frequent", "very frequent", "frequently", "occ", "occas", "occasional", "rare", "very rare", "scarce", "sparse", "dominant", "locally abundant", "plentiful", "in numbers", "in number", "good numbers", "large numbers", "small numbers", "low numbers", "in good numbers", "in small numbers", "in large numbers", "a number", "a number of", "number of",
		"hundreds", "thousands", "dozens", "tens", "scores", "hundreds of", "thousands of", "dozens of", "tens of", "scores of", "a couple", "couple", "couple of", "a couple of", "couple of dozen", "a couple of dozen", "couple dozen", "a handful", "handful", "a handful of", "several dozen", "a few dozen", "a dozen or so", "dozen or so", "dozen or more", "several hundred", "a few hundred", "few hundred", "several hundreds", "few thousand", "a few thousand", "several thousand", "multiple", "various", "too many to count", "tmtc", "too many", "countless", "uncountable", "innumerable", "one or two", "two or three", "one or more", "a lot", "lot", "a lot of", "oodles", "more than one", "the odd one", "odd one", "ones and twos", "flurry", "good number", "a good number", "good count", "large number", "a large number", "small number"}},

	{meaning{kind: pair, n: 2}, []string{"pair", "pairs", "pr", "prs", "a pair", "pair of", "pairs of", "a pair of", "mating pair", "mating pairs", "pair in cop", "pairs in cop", "pair mating", "pairs mating", "a mating pair", "a pair in cop", "pr in cop", "prs in cop", "pair in copula", "pairs in copula", "pair i c", "pairs i c", "pr i c", "prs i c", "pair ic", "pr ic", "copulating pair", "copulating pairs"}},
	{meaning{kind: dozen, n: 12}, []string{"dozen", "doz", "a dozen", "a doz", "dz"}},
	{meaning{kind: dozen, n: 20}, []string{"score", "a score"}},
	{meaning{kind: number, n: 6}, []string{"half a dozen", "half dozen", "half doz", "half-dozen", "half-a-dozen", "1/2 dozen", "½ dozen"}},
	{meaning{kind: number, n: 1}, []string{"one", "single", "singles", "singleton", "singletons", "a single", "one only", "only one", "just one", "just the one", "an", "solitary", "lone"}},
	{meaning{kind: number, n: 100}, []string{"one hundred"}},
	{meaning{kind: number, n: 100, doubt: true}, []string{"a hundred", "hundred"}},
	{meaning{kind: number, n: 1000, doubt: true}, []string{"a thousand", "one thousand", "thousand"}},
	{meaning{kind: number, n: 200, doubt: true}, []string{"two hundred"}},
	{meaning{kind: number, n: 300, doubt: true}, []string{"three hundred"}},

	{meaning{kind: to}, []string{"to", "or"}},
	{meaning{kind: sep}, []string{"and", "then", "also", "with"}},
	{meaning{kind: times}, []string{"x"}},
	{meaning{kind: stage, text: "nymph", doubt: true}, []string{"n"}},
})

var units = []string{"", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
	"thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"}

var tens = []string{"", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"}

func build(list []entries) map[string]meaning {
	d := make(map[string]meaning, 1000)
	for _, e := range list {
		for _, w := range e.words {
			d[w] = e.m
		}
	}
	for n := 1; n < 100; n++ {
		word := ""
		if n < 20 {
			word = units[n]
		} else if word = tens[n/10]; n%10 != 0 {
			d[word+"-"+units[n%10]] = meaning{kind: number, n: n}
			word += " " + units[n%10]
		}
		d[word] = meaning{kind: number, n: n}
	}
	d["fourty"] = meaning{kind: number, n: 40}
	return d
}
