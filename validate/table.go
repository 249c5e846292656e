package validate

import "fieldfare/convert/reading"

// Check is one check: what it is called, what it asks, and the state that its
// findings have.
type Check struct {
	// Name is the code of the check's findings.
	Name string
	// Asks is the check as a question, answered no by a record without fault.
	Asks string
	// State is the worst state that the check gives. Fair means advice: it is
	// counted, and changes nothing.
	State reading.State
	// Source is where the check or its figures come from.
	Source string
	// When is when the check is made.
	When Stage
}

// Stage is when a check is made.
type Stage string

const (
	// WhileReading: by the readers of dates, names, counts and places, which
	// know what was written.
	WhileReading Stage = "while reading"
	OfRecord     Stage = "of one record"
	OfSet        Stage = "of the whole set"
)

const (
	practice = "common practice, no source"
	asked    = "the project file's [asks]"
)

// Checks are all checks, in the order in which they are made.
func Checks() []Check {
	var all []Check
	add := func(c Check, s Stage) {
		c.When = s
		all = append(all, c)
	}
	for _, c := range readingChecks {
		add(c, WhileReading)
	}
	for i := range recordChecks {
		add(recordChecks[i].Check, OfRecord)
	}
	for _, c := range setChecks {
		add(c, OfSet)
	}
	return all
}

// readingChecks are what the readers ask that concerns the sense of a record
// and not only the wording of a value.
var readingChecks = []Check{
	{Name: "date-missing", Asks: "Is there no date?", State: reading.Held, Source: practice},
	{Name: "name-missing", Asks: "Is there no name?", State: reading.Held, Source: practice},
	{Name: "place-missing", Asks: "Is there neither a place nor a reference?", State: reading.Held, Source: practice},
	{Name: "place-not-mapped", Asks: "Has the place a name and nothing to put it on a map?", State: reading.Query, Source: practice},
	{Name: "recorder-missing", Asks: "Is nobody named as the recorder?", State: reading.Query, Source: practice},
	{Name: "name-not-listed", Asks: "Is the name on none of the taxon lists?", State: reading.Held, Source: "the taxon lists"},
	{Name: "year-as-count", Asks: "Is the count a year?", State: reading.Held, Source: practice},
	{Name: "open-sea", Asks: "Is the square one of the grid's that have no land?", State: reading.Held, Source: "the national grids' index of 100 km squares, from memory"},
	{Name: "site-reference-disagrees", Asks: "Does the reference lie far from the named place?", State: reading.Query, Source: practice + ": 1000 m unless the project file says otherwise"},
	{Name: "site-references-apart", Asks: "Does the reference lie far from where most of the site's records are?", State: reading.Query, Source: practice},
	{Name: "trap-in-daylight", Asks: "Was a light trap lit between sunrise and sunset?", State: reading.Query, Source: "Jean Meeus, Astronomical Algorithms, 1998"},
}

// recordCheck is a check of one record. It is made for every record, so run
// must cost nothing to speak of where nothing is wrong.
type recordCheck struct {
	Check
	run func(s *subject)
}

// recordChecks are the checks of one record.
var recordChecks = []recordCheck{
	{Check{Name: "field-", Asks: "Does a term hold a value that the standard does not allow? (The term's name follows.)", State: reading.Held, Source: "Darwin Core, quick reference guide"}, checkFields},
	{Check{Name: "absent-with-count", Asks: "Is something said to be absent and counted?", State: reading.Held, Source: practice}, checkAbsence},
	{Check{Name: "present-without-any", Asks: "Is something said to be present, and none of it counted?", State: reading.Query, Source: practice}, checkPresence},
	{Check{Name: "count-is-a-code", Asks: "Is the count the checklist number of the taxon, or the figures of the reference?", State: reading.Query, Source: practice}, checkCountCode},
	{Check{Name: "count-too-large", Asks: "Is the count larger than is ever seen?", State: reading.Query, Source: "the taxon list's highest count; where it has none, " + practice + ": 1000 adults, 10000 of anything, 20 of a taxon that is accepted only with proof"}, checkCountLarge},
	{Check{Name: "stage-at-light", Asks: "Did a light trap catch what cannot fly?", State: reading.Query, Source: practice}, checkStageAtLight},
	{Check{Name: "adult-by-search-for-young", Asks: "Was an adult found by a method that finds the young stages?", State: reading.Query, Source: practice}, checkStageBySearch},
	{Check{Name: "stage-before-flight", Asks: "Was a young stage found in a month in which it cannot be there?", State: reading.Query, Source: practice}, checkYoungSeason},
	{Check{Name: "stage-out-of-season", Asks: "Is an egg, a larva or a pupa outside the months that the list gives for it, by more than a week?", State: reading.Query, Source: "the taxon list's months; the week is " + practice}, checkStageSeason},
	{Check{Name: "sex-of-young", Asks: "Is there a sex for an egg or a larva, which show none?", State: reading.Query, Source: practice}, checkSexOfYoung},
	{Check{Name: "out-of-season", Asks: "Is the date outside the flight months that the list gives, by more than a week?", State: reading.Query, Source: "the taxon list's flight months; the week is " + practice}, checkSeason},
	{Check{Name: "light-by-day", Asks: "Do the remarks on a light-trap record tell of the day?", State: reading.Query, Source: practice}, checkDaylight},
	{Check{Name: "specimen-needed", Asks: "Is the taxon accepted only with a specimen, and none mentioned?", State: reading.Query, Source: "the taxon list"}, checkSpecimen},
	{Check{Name: "note-needed", Asks: "Is the taxon accepted only with a description, and none given?", State: reading.Query, Source: "the taxon list"}, checkNote},
	{Check{Name: "remarks-contradict", Asks: "Do the remarks say what makes the record another one: not seen, dead, bred, escaped, released, doubtful?", State: reading.Query, Source: practice}, checkRemarks},
	{Check{Name: "no-land", Asks: "Is the place in the sea, far from any land?", State: reading.Query, Source: "Natural Earth, 1:10 million (public domain), by hectads of the British grid"}, checkLand},
	{Check{Name: "high-ground", Asks: "Is the elevation above any ground of these islands, or are its two values the wrong way round?", State: reading.Query, Source: practice + ": 1345 m is the top of Ben Nevis (Ordnance Survey, from memory)"}, checkElevation},
	{Check{Name: "asks-square", Asks: "Is the place coarser than the scheme asks for?", State: reading.Held, Source: asked}, checkAsksSquare},
	{Check{Name: "asks-date", Asks: "Is the date longer than the scheme asks for?", State: reading.Held, Source: asked}, checkAsksDate},
	{Check{Name: "asks-period", Asks: "Is the date outside the years that the scheme asks for?", State: reading.Held, Source: asked}, checkAsksPeriod},
	{Check{Name: "asks-rank", Asks: "Is the taxon of a rank that the scheme does not accept?", State: reading.Held, Source: asked}, checkAsksRank},
	{Check{Name: "asks-count", Asks: "Does the scheme ask for a count, and there is none?", State: reading.Held, Source: asked}, checkAsksCount},
	{Check{Name: "asks-vice-county", Asks: "Is another vice-county stated than the scheme asks for?", State: reading.Held, Source: asked}, checkAsksViceCounty},
	{Check{Name: "asks-term", Asks: "Does a term lack that the scheme asks for?", State: reading.Held, Source: asked}, checkAsksTerms},
}

// ownChecks are those of the recordChecks that nobody has to ask for.
var ownChecks = func() []recordCheck {
	var own []recordCheck
	for _, c := range recordChecks {
		if c.Source != asked {
			own = append(own, c)
		}
	}
	return own
}()

// setChecks are the checks of the whole set.
var setChecks = []Check{
	{Name: "duplicate", Asks: "Does the same observation stand there twice, letter for letter?", State: reading.Query, Source: practice},
	{Name: "near-duplicate", Asks: "Does the same observation stand there twice, with another count or remark?", State: reading.Query, Source: practice},
	{Name: "two-notebooks", Asks: "Does the same observation stand in two notebooks?", State: reading.Query, Source: practice},
	{Name: "handed-in-before", Asks: "Was the same observation handed in before, worded otherwise?", State: reading.Query, Source: practice},
	{Name: "two-places-at-once", Asks: "Is a person at places too far apart on one night or day?", State: reading.Query, Source: practice + ": 50 km for a night, 150 km for a day"},
	{Name: "count-above-history", Asks: "Is the count far above the site's own history of the taxon?", State: reading.Query, Source: "modified z-score above 3.5 (Iglewicz and Hoaglin, How to Detect and Handle Outliers, 1993; from memory), of logarithms, from five counts on"},
	{Name: "first-for-hectad", Asks: "Is it the first record of the taxon for the hectad, past records given?", State: reading.Query, Source: practice},
	{Name: "first-for-site", Asks: "Is it the first record of the taxon for a site with past records?", State: reading.Query, Source: practice},
	{Name: "name-once", Asks: "Does a name occur once, one letter from one that is common?", State: reading.Query, Source: practice},
	{Name: "counts-repeat", Asks: "Do counts repeat, or rise by one, in a way that looks like autofill?", State: reading.Query, Source: practice},
	{Name: "dates-repeat", Asks: "Do dates repeat, or rise by one, in a way that looks like autofill?", State: reading.Query, Source: practice},
	{Name: "references-rise", Asks: "Do grid references rise by one from row to row, as autofill makes them?", State: reading.Query, Source: practice},
	{Name: "determiner-missing", Asks: "Is there no determiner, where the page names one nearly everywhere?", State: reading.Query, Source: practice},
	{Name: "trap-nights", Asks: "Was a trap run on more than three nights in seven?", State: reading.Fair, Source: practice + ": two or three a week at most is what careful trappers advise, so that the moths can feed and breed"},
}
