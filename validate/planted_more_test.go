package validate_test

import "strings"

// seasons is a taxon list that states months of young stages and highest
// counts.
const seasons = "scientificName,scientificNameAuthorship,taxonRank,vernacular name,flight months,months of larvae,months of pupae,months of eggs,maximum count,family,order,class,phylum,kingdom\n" +
	"Deilephila elpenor,\"(Linnaeus, 1758)\",species,Elephant Hawk-moth,5-7,7-9,9-5,6-7,40,Sphingidae,Lepidoptera,Insecta,Arthropoda,Animalia\n"

var moreFaults = []fault{
	{name: "a larva outside its months", code: "stage-out-of-season", list: seasons, plant: cells(cSpecies, "Elephant Hawk-moth", cStage, "larva", cMethod, "searching", cTime, "", cDate, "14/05/2021")},
	{name: "a pupa outside its months", code: "stage-out-of-season", list: seasons, plant: cells(cSpecies, "Elephant Hawk-moth", cStage, "pupa", cMethod, "digging", cTime, "", cDate, "14/07/2021")},
	{name: "an egg outside its months", code: "stage-out-of-season", list: seasons, plant: cells(cSpecies, "Elephant Hawk-moth", cStage, "egg", cMethod, "searching", cTime, "", cDate, "02/10/2021")},
	{name: "more than the list expects", code: "count-too-large", list: seasons, plant: cells(cSpecies, "Elephant Hawk-moth", cCount, "55", cDate, "14/06/2021")},
	{name: "twice, by initial and surname", code: "near-duplicate", plant: func(s *planted, at int) []int {
		return s.insert(at+1, s.like(at, func(r *row) { r[cRecorder], r[cComments] = "I Calloway", "worn" }))
	}},
	{name: "in two notebooks, by initial and surname, with another count", code: "two-notebooks", plant: func(s *planted, at int) []int {
		s.second = []row{s.like(at, func(r *row) { r[cRecorder], r[cCount] = "I. Calloway", r[cCount]+"0" })}
		return nil
	}},
	{name: "a date in the future", code: "in-future date-in-future future", plant: cell(cDate, "12/06/2029")},
	{name: "a day that leap years alone have", code: "no-such-day", plant: cell(cDate, "29/02/2021")},
	{name: "a count below nothing", code: "negative-count count-negative negative", plant: cell(cCount, "-3")},
	{name: "a count with a letter for a figure", code: "count-not-understood count-unread not-a-count count-unknown", plant: cell(cCount, "l0")},
	{name: "easting and northing of different lengths", code: "odd-digits uneven-figures", plant: cell(cRef, "TL 458 88")},
	{name: "letters that no grid has", code: "irish-grid-meant no-such-letters", plant: cell(cRef, "IQ4588")},
	{name: "a name written as a number", code: "name-missing name-not-listed", plant: cell(cSpecies, "73.342x")},
	{name: "male larvae", code: "sex-of-young", plant: cells(cStage, "larvae", cSex, "m", cMethod, "sweep net", cTime, "")},
	{name: "a caterpillar in the trap", code: "stage-at-light", plant: cell(cStage, "caterpillar")},
	{name: "kept as livestock", code: "remarks-contradict", plant: cell(cComments, "reared from an egg")},
	{name: "perhaps something else", code: "remarks-contradict", plant: cell(cComments, "possibly misidentified")},
	{name: "another person's place far off on that night", code: "two-places-at-once", plant: func(s *planted, at int) []int {
		return s.insert(at, s.like(at, func(r *row) { r[cSite], r[cRef], r[cCounty], r[cComments] = "Carn Hill", "SW4040", "1", "holiday" }))
	}},
	{name: "an eighth of the year early", code: "out-of-season", plant: func(s *planted, at int) []int {
		return s.insert(0, s.like(0, func(r *row) { r[cSpecies] = "Lunar Underwing" }))
	}},
	{name: "present with none", code: "present-without-any absent-with-count absence nothing-recorded", plant: cells(cStatus, "present", cCount, "0")},
	{name: "a phone number for a count", code: "count-too-large count-is-a-code", plant: cell(cCount, "015233")},
	{name: "a light trap at noon", code: "trap-in-daylight", plant: cell(cTime, "12:00")},
	{name: "the county of another country", code: "county-disagrees", area: fens, project: "[[lists.area]]\nname = \"Cambridgeshire\"\nvice_county = \"29\"\nfile = \"area.geojson\"\n", plant: cell(cCounty, "VC 107")},
	{name: "a site once, a letter dropped", code: "name-once site-misspelt", plant: func(s *planted, at int) []int {
		for s.rows[at][cSite] != "Sallowmere Reserve" {
			at = (at + 1) % len(s.rows)
		}
		return s.set(at, cSite, strings.Replace(s.rows[at][cSite], "mm", "m", 1)+"e")
	}},
	{name: "months swapped with days by one row", code: "year-breaks-order out-of-season date-out-of-order ambiguous-date", plant: func(s *planted, at int) []int {
		return s.insert(at, s.like(at, func(r *row) { r[cDate] = "06/01/2021" }))
	}},
}
