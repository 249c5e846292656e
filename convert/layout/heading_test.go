package layout

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestHeadingWords: the words above columns, by their likeliest sense (common
// practice, no source).
func TestHeadingWords(t *testing.T) {
	for m, words := range map[Meaning][]string{
		Date:        {"Date", "WHEN", "night", "noc.", "Date of record", "date (dd/mm/yyyy)", "Trap night", "Datte", "Recording date", "Date seen:"},
		Site:        {"Site", "locality", "Localty", "Place", "location", "where?", "Name of site", "Site name", "Trap site"},
		GridRef:     {"G.R.", "NGR", "OS ref.", "Map ref", "grid", "Grid Referance", "Grid ref (6 fig)", "1km", "O.S. grid ref", "GridRef", "Site grid ref"},
		Taxon:       {"Species", "taxon", "Speceis", "Moth", "what", "Species name", "NAME OF SPECIES"},
		Scientific:  {"Latin", "Latin name", "Scientific Name", "scientfic name"},
		Vernacular:  {"Common name", "English", "Vernacular", "Common Nmae"},
		Count:       {"no.", "Qty", "Number", "tot", "Count", "Abundance", "♂", "M", "F", "larvae", "No. of moths", "Quantitiy", "Number seen", "Count (larvae)"},
		Recorder:    {"Recorder", "obs", "Observer", "by", "Who", "leg.", "coll.", "Recorder's name", "Recorder(s)", "Recorded by", "Recoder"},
		Determiner:  {"det", "Det. by", "identified by", "ID by", "Determiner"},
		Verifier:    {"conf", "Verified", "verified by", "Conf. by"},
		Method:      {"Method", "how", "lamp", "at light", "MV", "Trap type"},
		Stage:       {"Stage", "Life stage", "lifeStage"},
		Sex:         {"sex", "M/F"},
		Remarks:     {"Comments", "notes", "Remarks", "details", "Any other comments?", "Coments"},
		ViceCounty:  {"VC", "v.c.", "Vice-county", "vice county no."},
		County:      {"County"},
		Weather:     {"Weather", "Moon", "Wind direction"},
		Temperature: {"Min temp", "Min. temp (°C)", "temp", "Overnight min"},
		RecordID:    {"Record ID", "occurrenceID"},
		TaxonNumber: {"Code", "Species no.", "Checklist no"},
	} {
		for _, w := range words {
			ms := headingSenses(w, false)
			if assert.NotEmpty(t, ms, w) {
				assert.Equal(t, m, ms[0].meaning, w)
			}
		}
	}
}

// TestTermsOfTheStandard: every term of Darwin Core that a record has is
// recognised by its own name (https://dwc.tdwg.org/terms/).
func TestTermsOfTheStandard(t *testing.T) {
	for _, name := range termNames {
		ms := headingSenses(name, true)
		if assert.Len(t, ms, 1, name) {
			assert.Equal(t, weightTerm, ms[0].weight)
		}
		ms = headingSenses("dwc:"+name, true)
		assert.Len(t, ms, 1, name)
	}
}

func ExampleSurvey() {
	page := sheetOf(
		"Site: Tinker's Row  TL 453 812",
		"2014",
		"Night|Moth|Qty|Obs.",
		"12/6|Heart and Dart|3|IC",
		"|Flame|1|",
		`13/6|Drinker|2|"`,
	)
	plan, err := Survey(page, Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	plan.Print(os.Stdout)
	_ = plan.Walk(page, func(o *Outcome) error {
		for _, d := range o.Drafts {
			var parts []string
			for _, v := range d.Values {
				parts = append(parts, fmt.Sprintf("%s=%s (%s)", v.Meaning, v.Text, v.From))
			}
			fmt.Println(strings.Join(parts, " "))
		}
		return nil
	})
	// Output:
	// page.csv
	//   Taken for a list, one record a row: from row 4, headings on row 3
	//     A   date — the heading “Night”; blanks repeat the value above
	//     B   name — the heading “Moth”
	//     C   count — the heading “Qty”
	//     D   recorder — the heading “Obs.”; blanks repeat the value above
	//     For all rows that lack their own: site “Tinker's Row” (page fact, A1)
	//     For all rows that lack their own: grid reference “TL 453 812” (page fact, A1)
	//     Dates without a year are of 2014 (page fact)
	//   6 rows, 3 records; 16 cells used
	//     Carried down: date, 1 time
	//     Carried down: recorder, 2 times
	//     Skipped: headings, 1 row (3)
	//     Skipped: title, 2 rows (1-2)
	// date=12/6/2014 (cell) name=Heart and Dart (cell) count=3 (cell) recorder=IC (cell) site=Tinker's Row (page fact) grid reference=TL 453 812 (page fact)
	// name=Flame (cell) count=1 (cell) date=12/6/2014 (carried down) recorder=IC (carried down) site=Tinker's Row (page fact) grid reference=TL 453 812 (page fact)
	// date=13/6/2014 (cell) name=Drinker (cell) count=2 (cell) recorder=IC (carried down) site=Tinker's Row (page fact) grid reference=TL 453 812 (page fact)
}

func TestRowsNamed(t *testing.T) {
	for want, rows := range map[string][]int{"row 3": {3}, "rows 3 and 4": {3, 4}, "rows 3, 4 and 5": {3, 4, 5}} {
		assert.Equal(t, want, rowsNamed(rows))
	}
}
