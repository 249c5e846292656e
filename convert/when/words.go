package when

// class is what a word does in a date.
type class uint8

const (
	noWord     class = iota // not understood
	monthWord               // val 1-12
	romanWord               // val 1-12
	dayWord                 // a weekday, val 0 (Sunday) to 6
	fillWord                // the, of, on
	suffixWord              // st, nd, rd, th
	nightWord
	aboutWord
	beforeWord
	afterWord
	fromWord
	toWord
	andWord
	partWord  // val is a part
	nthWord   // first to fifth, last: val 1-5, 9
	weekWord  // week
	halfWord  // half
	endWord   // ending
	startWord // commencing
	weekendWord
	seasonWord // val is a season
	manyWord   // the s of 1990s
	hourWord   // h, hrs
	noonWord   // am, pm: val 0, 12
	spellWord  // a part of the day: morning, dusk
	joinWord   // the T of ISO 8601
	blankWord  // xx
	feastWord  // a fixed feast: val month*100+day
	movingWord // a movable feast
	emptyWord  // unknown, undated
	pointWord  // ditto, yesterday: points at another date
	doubtWord  // probably
	setWord    // trap, collected: says nothing more of the date after it
	denyWord   // not, days: changes what the date beside it means
)

// part is a named part of a month, season, year or decade.
type part uint8

const (
	wholePart part = iota
	earlyPart
	midPart
	latePart
	week1Part
	week2Part
	week3Part
	week4Part
	week5Part
	lastWeekPart
	half1Part
	half2Part
)

type season uint8

const (
	spring season = iota + 1
	summer
	autumn
	winter
)

// quality says how a month's name was written.
type quality uint8

const (
	plain    quality = iota
	misspelt         // one slip in a long name: there is no other it could be
	likely           // more than one slip, or a short name
	foreign          // a name in another language
	twoWays          // two names are equally near
)

// vocabulary is every word in lower case but the months and weekdays, which
// are known by any beginning of three letters or more.
var vocabulary = map[string]struct {
	class class
	val   int
}{
	"sa": {dayWord, 6}, "su": {dayWord, 0}, "mo": {dayWord, 1}, "tu": {dayWord, 2},
	"i": {romanWord, 1}, "ii": {romanWord, 2}, "iii": {romanWord, 3}, "iv": {romanWord, 4},
	"v": {romanWord, 5}, "vi": {romanWord, 6}, "vii": {romanWord, 7}, "viii": {romanWord, 8},
	"ix": {romanWord, 9}, "x": {romanWord, 10}, "xi": {romanWord, 11}, "xii": {romanWord, 12},
	"tues": {dayWord, 2}, "weds": {dayWord, 3}, "thurs": {dayWord, 4}, "thur": {dayWord, 4},
	"st": {suffixWord, 0}, "nd": {suffixWord, 0}, "rd": {suffixWord, 0}, "th": {suffixWord, 0}, "jly": {monthWord, 7},
	"the": {fillWord, 0}, "of": {fillWord, 0}, "de": {fillWord, 0}, "on": {fillWord, 0}, "in": {fillWord, 0}, "at": {fillWord, 0},
	"date": {fillWord, 0}, "dated": {fillWord, 0}, "during": {fillWord, 0}, "day": {fillWord, 0}, "year": {fillWord, 0},
	"inclusive": {fillWord, 0}, "incl": {fillWord, 0}, "all": {fillWord, 0}, "throughout": {fillWord, 0}, "whole": {fillWord, 0}, "sometime": {fillWord, 0},
	"night": {nightWord, 0}, "nights": {nightWord, 0}, "overnight": {nightWord, 0}, "nt": {nightWord, 0}, "noc": {nightWord, 0}, "noct": {nightWord, 0},
	"c": {aboutWord, 0}, "ca": {aboutWord, 0}, "circa": {aboutWord, 0}, "about": {aboutWord, 0}, "approx": {aboutWord, 0}, "abt": {aboutWord, 0}, "aprox": {aboutWord, 0},
	"approximately": {aboutWord, 0}, "around": {aboutWord, 0}, "roughly": {aboutWord, 0},
	"before": {beforeWord, 0}, "pre": {beforeWord, 0}, "by": {beforeWord, 0}, "prior": {beforeWord, 0}, "earlier": {beforeWord, 0}, "latest": {beforeWord, 0}, "earliest": {afterWord, 0},
	"probably": {doubtWord, 0}, "possibly": {doubtWord, 0}, "perhaps": {doubtWord, 0}, "maybe": {doubtWord, 0}, "likely": {doubtWord, 0}, "prob": {doubtWord, 0}, "poss": {doubtWord, 0},
	"after": {afterWord, 0}, "since": {afterWord, 0}, "post": {afterWord, 0}, "later": {afterWord, 0}, "onwards": {afterWord, 0}, "present": {afterWord, 0}, "now": {afterWord, 0},
	"from": {fromWord, 0}, "between": {fromWord, 1},
	"to": {toWord, 0}, "until": {toWord, 1}, "till": {toWord, 1}, "til": {toWord, 1}, "through": {toWord, 0}, "thru": {toWord, 0}, "into": {toWord, 0},
	"and": {andWord, 0}, "or": {andWord, 0},
	"early": {partWord, int(earlyPart)}, "beginning": {partWord, int(earlyPart)}, "start": {partWord, int(earlyPart)}, "begin": {partWord, int(earlyPart)}, "beg": {partWord, int(earlyPart)},
	"mid": {partWord, int(midPart)}, "middle": {partWord, int(midPart)},
	"late": {partWord, int(latePart)}, "end": {partWord, int(latePart)},
	"first": {nthWord, 1}, "second": {nthWord, 2}, "third": {nthWord, 3}, "fourth": {nthWord, 4}, "last": {nthWord, 9},
	"week": {weekWord, 0}, "wk": {weekWord, 0}, "half": {halfWord, 0}, "ending": {endWord, 0},
	"commencing": {startWord, 0}, "starting": {startWord, 0}, "wc": {startWord, 0}, "wb": {startWord, 0}, "weekend": {weekendWord, 0},
	"spring": {seasonWord, int(spring)}, "summer": {seasonWord, int(summer)}, "autumn": {seasonWord, int(autumn)}, "winter": {seasonWord, int(winter)},
	"s": {manyWord, 0}, "h": {hourWord, 0}, "hr": {hourWord, 0}, "hrs": {hourWord, 0}, "hours": {hourWord, 0},
	"am": {noonWord, 0}, "pm": {noonWord, 12},
	"morning": {spellWord, 3}, "afternoon": {spellWord, 3}, "evening": {spellWord, 0}, "eve": {spellWord, 0},
	"dusk": {spellWord, 1}, "dark": {spellWord, 1}, "sunset": {spellWord, 1}, "sunrise": {spellWord, 2}, "dawn": {spellWord, 2}, "noon": {spellWord, 3}, "midday": {spellWord, 3}, "daylight": {spellWord, 3}, "midnight": {spellWord, 0}, "daytime": {spellWord, 3},
	"t": {joinWord, 0}, "xx": {blankWord, 0}, "xxx": {blankWord, 0}, "xxxx": {blankWord, 0},
	"christmas": {feastWord, 1225}, "boxing": {feastWord, 1226},
	"easter": {movingWord, 0}, "midsummer": {movingWord, 0}, "midwinter": {movingWord, 0}, "whitsun": {movingWord, 0}, "whit": {movingWord, 0}, "pentecost": {movingWord, 0}, "holiday": {movingWord, 0}, "bank": {movingWord, 0},
	"nodate": {emptyWord, 0}, "undated": {emptyWord, 0}, "unknown": {emptyWord, 0}, "none": {emptyWord, 0}, "na": {emptyWord, 0}, "no": {emptyWord, 0}, "n": {emptyWord, 0},
	"not": {denyWord, 0}, "except": {denyWord, 0}, "never": {denyWord, 0}, "days": {denyWord, 0}, "weeks": {denyWord, 0}, "months": {denyWord, 0}, "years": {denyWord, 0}, "ago": {denyWord, 0}, "born": {denyWord, 0}, "fortnight": {denyWord, 0}, "up": {denyWord, 0}, "than": {denyWord, 0},
	"trap": {setWord, 0}, "moth": {setWord, 0}, "light": {setWord, 0}, "trapping": {setWord, 0}, "collected": {setWord, 0}, "coll": {setWord, 0}, "leg": {setWord, 0},
	"found": {setWord, 0}, "seen": {setWord, 0}, "caught": {setWord, 0}, "taken": {setWord, 0}, "recorded": {setWord, 0},
	"ditto": {pointWord, 0}, "do": {pointWord, 0}, "same": {pointWord, 0}, "yesterday": {pointWord, 0}, "today": {pointWord, 0}, "above": {pointWord, 0},
}

// otherTongues are names of months in languages that labels and visitors'
// notes are written in; they are read and asked about.
var otherTongues = map[string]int{
	// French
	"janvier": 1, "janv": 1, "fevrier": 2, "février": 2, "avril": 4, "mai": 5, "juin": 6, "juillet": 7, "juil": 7, "aout": 8, "août": 8,
	"septembre": 9, "octobre": 10, "novembre": 11, "decembre": 12, "décembre": 12,
	// German, Dutch and the Scandinavian languages
	"januar": 1, "jänner": 1, "januari": 1, "februar": 2, "februari": 2, "mars": 3, "marz": 3, "märz": 3, "maart": 3, "mei": 5, "maj": 5,
	"juni": 6, "juli": 7, "augustus": 8, "oktober": 10, "okt": 10, "dezember": 12, "desember": 12, "dez": 12,
	// Italian, Spanish and Portuguese
	"gennaio": 1, "enero": 1, "janeiro": 1, "febbraio": 2, "febrero": 2, "fevereiro": 2, "marzo": 3, "março": 3, "aprile": 4, "abril": 4,
	"maggio": 5, "mayo": 5, "maio": 5, "giugno": 6, "junio": 6, "junho": 6, "luglio": 7, "julio": 7, "julho": 7, "agosto": 8,
	"settembre": 9, "septiembre": 9, "setembro": 9, "ottobre": 10, "octubre": 10, "outubro": 10, "noviembre": 11, "novembro": 11,
	"dicembre": 12, "diciembre": 12, "dezembro": 12,
	// Welsh, but for the March that is a Tuesday too
	"ionawr": 1, "chwefror": 2, "ebrill": 4, "mehefin": 6, "gorffennaf": 7, "awst": 8, "medi": 9, "hydref": 10, "tachwedd": 11, "rhagfyr": 12,
	// Latin
	"maius": 5, "junius": 6, "julius": 7,
}

var monthsLower = [...]string{"january", "february", "march", "april", "may", "june", "july",
	"august", "september", "october", "november", "december"}

var weekdaysLower = [...]string{"sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"}

// lookUp tells what a word in lower case does. quality matters for months.
func lookUp(w []byte) (c class, val int, q quality) {
	if len(w) >= 3 {
		if m := monthBeginning(w); m > 0 {
			return monthWord, m, plain
		}
	}
	if v, found := vocabulary[string(w)]; found {
		if v.class == monthWord {
			return v.class, v.val, likely
		}
		return v.class, v.val, plain
	}
	if len(w) < 3 {
		return noWord, 0, plain
	}
	for i, d := range weekdaysLower {
		if hasPrefix(d, w) {
			return dayWord, i, plain
		}
	}
	if m, found := otherTongues[string(w)]; found {
		return monthWord, m, foreign
	}
	return misspelling(w)
}

// monthBeginning returns the month whose name begins with w, 0 for none.
func monthBeginning(w []byte) int {
	switch w[0] {
	case 'j', 'f', 'm', 'a', 's', 'o', 'n', 'd':
	default:
		return 0
	}
	for i, m := range monthsLower {
		if hasPrefix(m, w) {
			return i + 1
		}
	}
	return 0
}

func hasPrefix(name string, w []byte) bool {
	return len(w) <= len(name) && name[:len(w)] == string(w)
}

// misspelling finds the month or weekday that a word of four letters or more
// is nearest to: one slip away, or two in a word of seven or more. May is too
// short to be misspelt without doubt.
func misspelling(w []byte) (class, int, quality) {
	if len(w) < 4 || len(w) > 12 {
		return noWord, 0, plain
	}
	limit := 1
	if len(w) >= 7 {
		limit = 2
	}
	best, c, val, tie := limit+1, noWord, 0, false
	consider := func(name string, class class, v int) {
		if d := len(name) - len(w); d > limit || -d > limit {
			return
		}
		switch n := slips(w, name); {
		case n < best:
			best, c, val, tie = n, class, v, false
		case n == best && n <= limit:
			tie = true
		}
	}
	for i, m := range monthsLower {
		if i != 4 {
			consider(m, monthWord, i+1)
		}
	}
	consider("sept", monthWord, 9) // the one short form that is long enough
	for i, d := range weekdaysLower {
		consider(d, dayWord, i)
	}
	switch {
	case best > limit:
		return noWord, 0, plain
	case tie:
		return monthWord, val, twoWays
	case best == 1 && len(w) >= 5:
		return c, val, misspelt
	}
	return c, val, likely
}

// slips counts the letters added, left out, changed, or swapped with their
// neighbour between a word and a name: the optimal string alignment distance.
func slips(w []byte, name string) int {
	var rows [3][16]uint8
	before, above, here := &rows[0], &rows[1], &rows[2]
	for j := 0; j <= len(name); j++ {
		above[j] = uint8(j)
	}
	for i := 1; i <= len(w); i++ {
		here[0] = uint8(i)
		for j := 1; j <= len(name); j++ {
			cost := uint8(1)
			if w[i-1] == name[j-1] {
				cost = 0
			}
			n := min(above[j]+1, here[j-1]+1, above[j-1]+cost)
			if i > 1 && j > 1 && w[i-1] == name[j-2] && w[i-2] == name[j-1] {
				n = min(n, before[j-2]+1)
			}
			here[j] = n
		}
		before, above, here = above, here, before
	}
	return int(above[len(name)])
}
