package validate_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
)

// fault is one kind of fault. Plant puts it into the season at about the row
// at, and returns the rows at which it must be found.
type fault struct {
	name string
	// code names the finding; of several, separated by spaces, any will do.
	code    string
	plant   func(s *planted, at int) (rows []int)
	project string // the project file that the fault needs
	area    string
	list    string // the taxon list that it needs, in place of the starter list
}

// planted is a season with faults.
type planted struct {
	rows   []row
	second []row // another notebook
}

// set changes a cell and returns its row.
func (s *planted) set(at, column int, text string) []int {
	s.rows[at][column] = text
	return []int{at}
}

// insert adds a row after another and returns it.
func (s *planted) insert(at int, r row) []int {
	s.rows = append(s.rows[:at+1:at+1], append([]row{r}, s.rows[at+1:]...)...)
	return []int{at + 1}
}

func (s *planted) like(at int, change func(r *row)) row {
	r := s.rows[at]
	change(&r)
	return r
}

// run changes a column of n rows.
func (s *planted) run(at, n, column int, text func(i int) string) (rows []int) {
	for i := range n {
		s.rows[at+i][column] = text(i)
		rows = append(rows, at+i)
	}
	return rows
}

func cell(column int, text string) func(*planted, int) []int {
	return func(s *planted, at int) []int { return s.set(at, column, text) }
}

func cells(pairs ...any) func(*planted, int) []int {
	return func(s *planted, at int) []int {
		for i := 0; i < len(pairs); i += 2 {
			s.set(at, pairs[i].(int), pairs[i+1].(string))
		}
		return []int{at}
	}
}

// fens is a polygon about the season's sites.
const fens = `{"type":"Polygon","coordinates":[[[0.0,52.3],[0.5,52.3],[0.5,52.55],[0.0,52.55],[0.0,52.3]]]}`

var faults = []fault{
	{name: "no date", code: "date-missing gap-filled-from-above", plant: cell(cDate, "")},
	{name: "a day that is none", code: "no-such-day", plant: cell(cDate, "31/06/2021")},
	{name: "no name", code: "name-missing", plant: cell(cSpecies, "")},
	{name: "a name that is not listed", code: "name-not-listed", plant: cell(cSpecies, "Grey Wonder of the Fens")},
	{name: "no place", code: "place-missing gap-filled-from-above", plant: cells(cSite, "", cRef, "", cCounty, "")},
	{name: "no recorder", code: "recorder-missing gap-filled-from-above", plant: cell(cRecorder, "")},
	{name: "no determiner", code: "determiner-missing", plant: cell(cDeterminer, "")},
	{name: "a reference in the open sea", code: "open-sea", plant: cell(cRef, "TB4588")},
	{name: "a reference in the sea off a shore", code: "no-land", plant: cell(cRef, "TG8080")},
	{name: "a reference far from the site", code: "site-references-apart", plant: cell(cRef, "TL8888")},
	{name: "the count is the year", code: "year-as-count", plant: cell(cCount, "2021")},
	{name: "the count is a year", code: "year-as-count", plant: cell(cCount, "1987")},
	{name: "the count is the figures of the reference", code: "count-is-a-code", plant: cells(cSite, "Sallowmere Reserve", cRef, "TL4588", cCount, "4588")},
	{name: "far too many", code: "count-too-large", plant: cell(cCount, "4000")},
	{name: "far more than the site has had", code: "count-above-history", plant: func(s *planted, at int) []int {
		for s.rows[at][cSpecies] != "Heart and Dart" {
			at = (at + 1) % len(s.rows)
		}
		return s.set(at, cCount, "450")
	}},
	{name: "a larva at light", code: "stage-at-light", plant: cell(cStage, "larva")},
	{name: "a pupa at light", code: "stage-at-light", plant: cell(cStage, "pupa")},
	{name: "an adult by leaf-mine", code: "adult-by-search-for-young", plant: cells(cMethod, "leaf mine", cTime, "")},
	{name: "the sex of a larva", code: "sex-of-young", plant: cells(cStage, "larva", cSex, "male", cMethod, "beating", cTime, "")},
	{name: "a summer moth in March", code: "out-of-season", plant: func(s *planted, at int) []int {
		return s.insert(0, s.like(0, func(r *row) { r[cSpecies] = "Drinker" }))
	}},
	{name: "a spring moth in October", code: "out-of-season", plant: func(s *planted, at int) []int {
		return s.insert(len(s.rows)-1, s.like(len(s.rows)-1, func(r *row) { r[cSpecies] = "Common Quaker" }))
	}},
	{name: "light in the afternoon", code: "trap-in-daylight", plant: cell(cTime, "14:15")},
	{name: "light by day, in words", code: "light-by-day", plant: cell(cComments, "flying in sunshine, by day")},
	{name: "no specimen of a taxon that needs one", code: "specimen-needed", plant: cells(cSpecies, "Acronicta psi", cDate, "21/06/2021")},
	{name: "no note on a taxon that needs one", code: "note-needed", plant: cells(cSpecies, "Amphipyra pyramidea", cDate, "21/08/2021")},
	{name: "not seen", code: "remarks-contradict", plant: cell(cComments, "looked for, not seen")},
	{name: "dead", code: "remarks-contradict", plant: cell(cComments, "found dead in the trap")},
	{name: "escaped", code: "remarks-contradict", plant: cell(cComments, "escaped from a breeding cage")},
	{name: "released", code: "remarks-contradict", plant: cell(cComments, "Released here by a dealer")},
	{name: "bred", code: "remarks-contradict", plant: cell(cComments, "bred from a pupa")},
	{name: "a question mark", code: "remarks-contradict", plant: cell(cComments, "?")},
	{name: "absent, with a count", code: "absent-with-count", plant: cells(cStatus, "absent", cCount, "4")},
	{name: "twice, letter for letter", code: "duplicate", plant: func(s *planted, at int) []int { return s.insert(at, s.rows[at]) }},
	{name: "twice, with another count", code: "near-duplicate", plant: func(s *planted, at int) []int {
		return s.insert(at, s.like(at, func(r *row) { r[cCount] += "1" }))
	}},
	{name: "twice, with another remark", code: "near-duplicate", plant: func(s *planted, at int) []int {
		return s.insert(at+3, s.like(at, func(r *row) { r[cComments] = "worn" }))
	}},
	{name: "two places on one night", code: "two-places-at-once", plant: func(s *planted, at int) []int {
		return s.insert(at, s.like(at, func(r *row) { r[cSite], r[cRef], r[cCounty] = "Glen Marrow", "NN2071", "97" }))
	}},
	{name: "a recorder once, by a letter wrong", code: "name-once", plant: cell(cRecorder, "Ines Caloway")},
	{name: "a recorder once, with initials and a letter wrong", code: "name-once", plant: cell(cRecorder, "Ines  calloway.")},
	{name: "a site once, by a letter wrong", code: "name-once", plant: func(s *planted, at int) []int {
		for s.rows[at][cSite] != "Sallowmere Reserve" {
			at = (at + 1) % len(s.rows)
		}
		return s.set(at, cSite, "Sallowmere Resreve")
	}},
	{name: "one count filled down", code: "counts-repeat", plant: func(s *planted, at int) []int {
		return s.run(at, 15, cCount, func(int) string { return "7" })
	}},
	{name: "counts that rise", code: "counts-repeat", plant: func(s *planted, at int) []int {
		return s.run(at, 9, cCount, func(i int) string { return fmt.Sprint(3 + i) })
	}},
	{name: "one date filled down", code: "dates-repeat", plant: func(s *planted, at int) []int {
		date := s.rows[at][cDate]
		return s.run(at, 60, cDate, func(int) string { return date })[:15] // questions name the first places
	}},
	{name: "dates that rise", code: "dates-repeat", plant: func(s *planted, at int) []int {
		return s.run(at, 10, cDate, func(i int) string { return fmt.Sprintf("%02d/07/2021", 5+i) })
	}},
	{name: "references that rise", code: "references-rise", plant: func(s *planted, at int) []int {
		return s.run(at, 8, cRef, func(i int) string { return fmt.Sprintf("TL45%d", 80+i) })
	}},
	{name: "a day outside the period", code: "asks-period", project: "[asks]\nfrom = \"2015-01-01\"\nto = \"2022\"\n", plant: cell(cDate, "12/06/2013")},
	{name: "a square coarser than asked", code: "asks-square", project: "[asks]\nsquare_metres = 2000\n", plant: cells(cSite, "", cRef, "TL48")},
	{name: "a date longer than asked", code: "asks-date", project: "[asks]\ndate_days = 7\n", plant: cells(cDate, "May 2021", cSpecies, "White Ermine", cTime, "")},
	{name: "a rank that is not accepted", code: "asks-rank", project: "[asks]\nranks = [\"species\", \"subspecies\"]\n", plant: cell(cSpecies, "Noctuidae")},
	{name: "no count where one is asked for", code: "asks-count", project: "[asks]\ncount_needed = true\n", plant: cell(cCount, "several")},
	{name: "no term that is asked for", code: "asks-term", project: "[asks]\nterms = [\"lifeStage\", \"occurrenceID\"]\n", plant: cell(cStage, "")},
	{name: "another vice-county than asked for", code: "asks-vice-county", project: "[asks]\nvice_county = \"VC 29\"\n", plant: cell(cCounty, "31")},
	{name: "outside the area", code: "outside-area", area: fens, project: "[[lists.area]]\nname = \"the fens\"\nfile = \"area.geojson\"\n", plant: cells(cSite, "", cRef, "TG3030")},
	{name: "outside the area asked for", code: "outside-area", area: fens, project: "[[lists.area]]\nname = \"the fens\"\nfile = \"area.geojson\"\n[asks]\narea = \"the fens\"\n", plant: cells(cSite, "", cRef, "SU3030", cCounty, "11")},
	{name: "a vice-county that the polygon speaks against", code: "county-disagrees", area: fens, project: "[[lists.area]]\nname = \"Cambridgeshire\"\nvice_county = \"29\"\nfile = \"area.geojson\"\n", plant: cell(cCounty, "28")},
	{name: "the same in two notebooks", code: "two-notebooks", plant: func(s *planted, at int) []int {
		s.second = []row{s.like(at, func(r *row) { r[cRecorder], r[cComments] = "IC", "from the pocket book" })}
		return nil
	}},
}

func convertPlanted(t *testing.T, f *fault, s *planted) *convert.Result {
	files := map[string]string{"season.csv": text(t, s.rows)}
	if s.second != nil {
		files["second.csv"] = text(t, s.second)
	}
	if f.project != "" {
		files["fieldfare.toml"] = f.project
	}
	if f.list != "" {
		files["fieldfare.toml"] = "[lists]\ntaxa = [\"list.csv\"]\n"
		files["list.csv"] = f.list
	}
	if f.area != "" {
		files["area.geojson"] = f.area
	}
	return check(t, files)
}

func TestPlantedFaultsAreFound(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	all := slices.Concat(faults, moreFaults)
	for i := range all {
		f := &all[i]
		s := &planted{rows: season(2021)}
		at := 40 + r.IntN(len(s.rows)-140)
		t.Run(f.name, func(t *testing.T) {
			rows := f.plant(s, at)
			result := convertPlanted(t, f, s)
			if rows == nil {
				assert.True(t, asked(result, f.code, 2), "the row of the second notebook")
			}
			for _, row := range rows {
				if assert.True(t, asked(result, f.code, row+2), "planted at row %d", row+2) {
					continue
				}
				for _, q := range result.Questions {
					t.Log(q.State, q.Code, q.Written, q.Message, q.Places[0].Cell)
				}
				break
			}
		})
	}
}
