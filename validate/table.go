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
}

const (
	practice = "common practice, no source"
	asked    = "the project file's [asks]"
)

// Checks are all checks of this package, those of one record first, in the
// order in which they are made.
func Checks() []Check {
	var all []Check
	for i := range recordChecks {
		all = append(all, recordChecks[i].Check)
	}
	return append(all, setChecks...)
}

// recordCheck is a check of one record. It is made for every record, so run
// must cost nothing to speak of where nothing is wrong.
type recordCheck struct {
	Check
	run func(s *subject)
}

// recordChecks are the checks of one record.
var recordChecks = []recordCheck{
	{Check{"field-", "Does a term hold a value that the standard does not allow? (The term's name follows.)", reading.Held, "Darwin Core, quick reference guide"}, checkFields},
	{Check{"absent-with-count", "Is something said to be absent and counted?", reading.Held, practice}, checkAbsence},
	{Check{"present-without-any", "Is something said to be present, and none of it counted?", reading.Query, practice}, checkPresence},
	{Check{"count-is-a-year", "Is the count the year of the record, or a year of our time?", reading.Query, practice}, checkCountYear},
	{Check{"count-is-a-code", "Is the count the checklist number of the taxon, or the figures of the reference?", reading.Query, practice}, checkCountCode},
	{Check{"count-too-large", "Is the count larger than is ever seen?", reading.Query, practice + ": 1000 adults, 10000 of anything, 20 of a taxon that is accepted only with proof"}, checkCountLarge},
	{Check{"stage-at-light", "Did a light trap catch what cannot fly?", reading.Query, practice}, checkStageAtLight},
	{Check{"adult-by-search-for-young", "Was an adult found by a method that finds the young stages?", reading.Query, practice}, checkStageBySearch},
	{Check{"stage-before-flight", "Was a young stage found in a month in which it cannot be there?", reading.Query, practice}, checkYoungSeason},
	{Check{"sex-of-young", "Is there a sex for an egg or a larva, which show none?", reading.Query, practice}, checkSexOfYoung},
	{Check{"out-of-season", "Is the date outside the flight months that the list gives, by more than a week?", reading.Query, "the taxon list's flight months; the week is " + practice}, checkSeason},
	{Check{"light-by-day", "Do the remarks on a light-trap record tell of the day?", reading.Query, practice}, checkDaylight},
	{Check{"specimen-needed", "Is the taxon accepted only with a specimen, and none mentioned?", reading.Query, "the taxon list"}, checkSpecimen},
	{Check{"note-needed", "Is the taxon accepted only with a description, and none given?", reading.Query, "the taxon list"}, checkNote},
	{Check{"remarks-contradict", "Do the remarks say what makes the record another one: not seen, dead, bred, escaped, released, doubtful?", reading.Query, practice}, checkRemarks},
	{Check{"no-land", "Is the place in the sea, far from any land?", reading.Query, practice + ": from the national grids' 100 km squares"}, checkLand},
	{Check{"high-ground", "Is the elevation above any ground of these islands, or are its two values the wrong way round?", reading.Query, practice + ": 1345 m is the top of Ben Nevis (Ordnance Survey, from memory)"}, checkElevation},
	{Check{"asks-square", "Is the place coarser than the scheme asks for?", reading.Held, asked}, checkAsksSquare},
	{Check{"asks-date", "Is the date longer than the scheme asks for?", reading.Held, asked}, checkAsksDate},
	{Check{"asks-period", "Is the date outside the years that the scheme asks for?", reading.Held, asked}, checkAsksPeriod},
	{Check{"asks-rank", "Is the taxon of a rank that the scheme does not accept?", reading.Held, asked}, checkAsksRank},
	{Check{"asks-count", "Does the scheme ask for a count, and there is none?", reading.Held, asked}, checkAsksCount},
	{Check{"asks-vice-county", "Is another vice-county stated than the scheme asks for?", reading.Held, asked}, checkAsksViceCounty},
	{Check{"asks-term", "Does a term lack that the scheme asks for?", reading.Held, asked}, checkAsksTerms},
}

// setChecks are the checks of the whole set.
var setChecks = []Check{
	{"duplicate", "Does the same observation stand there twice, letter for letter?", reading.Query, practice},
	{"near-duplicate", "Does the same observation stand there twice, with another count or remark?", reading.Query, practice},
	{"two-notebooks", "Does the same observation stand in two notebooks?", reading.Query, practice},
	{"handed-in-before", "Was the same observation handed in before, worded otherwise?", reading.Query, practice},
	{"two-places-at-once", "Is a person at places too far apart on one night or day?", reading.Query, practice + ": 50 km for a night, 300 km for a day"},
	{"count-above-history", "Is the count far above the site's own history of the taxon?", reading.Query, "modified z-score above 3.5 (Iglewicz and Hoaglin, How to Detect and Handle Outliers, 1993; from memory), of logarithms, from five counts on"},
	{"first-for-hectad", "Is it the first record of the taxon for the hectad, past records given?", reading.Query, practice},
	{"first-for-site", "Is it the first record of the taxon for a site with past records?", reading.Query, practice},
	{"name-once", "Does a name occur once, one letter from one that is common?", reading.Query, practice},
	{"counts-repeat", "Do counts repeat, or rise by one, in a way that looks like autofill?", reading.Query, practice},
	{"dates-repeat", "Do dates repeat, or rise by one, in a way that looks like autofill?", reading.Query, practice},
	{"references-rise", "Do grid references rise by one from row to row, as autofill makes them?", reading.Query, practice},
	{"determiner-missing", "Is there no determiner, where the page names one nearly everywhere?", reading.Query, practice},
	{"trap-nights", "Was a trap run on more than three nights in seven?", reading.Fair, practice + ": two or three a week at most is what careful trappers advise, so that the moths can feed and breed"},
}
