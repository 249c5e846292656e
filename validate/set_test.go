package validate_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/reading"
	"fieldfare/convert/report"
	"fieldfare/convert/when"
	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// against converts rows, with an earlier submission of others.
func against(t *testing.T, past, now []row) *convert.Result {
	dir := t.TempDir()
	today := when.Date{Year: 2026, Month: 1, Day: 31}
	write := func(name string, rows []row) string {
		path := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(path, []byte(text(t, rows)), 0o644))
		return path
	}
	_, err := convert.Run(context.Background(), convert.Job{Files: []string{write("past.csv", past)}, Out: filepath.Join(dir, "past"), Today: today})
	require.NoError(t, err)
	result, err := convert.Run(context.Background(), convert.Job{Files: []string{write("now.csv", now)}, Out: filepath.Join(dir, "now"), Today: today,
		Against: filepath.Join(dir, "past", convert.SubmissionFile)})
	require.NoError(t, err)
	return result
}

func TestEarlierSubmission(t *testing.T) {
	past := season(2021)
	now := append([]row{}, past...)
	now[100][cCount] += "0" // another count than was handed in
	now = append(now, now[200])
	last := len(now) - 1
	now[last][cSpecies], now[last][cDate] = "Burnished Brass", "05/07/2021"
	result := against(t, past, now)
	assert.True(t, asked(result, "handed-in-before", 102), "the count has changed since")
	assert.True(t, asked(result, "first-for-hectad", last+2), "a taxon that is new to the hectad")
	n := 0
	for _, c := range result.Summary.Checks {
		if c.Check == "handed-in-before" || c.Check == "first-for-hectad" || c.Check == "first-for-site" {
			n += c.Records
		}
	}
	assert.Equal(t, 2, n, "what was handed in before as it is, is no question")
}

func TestFirstForSite(t *testing.T) {
	past := season(2021)
	now := past[:0:0]
	for i := range past {
		if past[i][cSite] == "Carr Edge" && past[i][cSpecies] == "Drinker" {
			now = append(now, past[i])
			past[i][cSite] = "Sallowmere Reserve" // the other site of the hectad
			past[i][cRef] = "TL4588"
		}
	}
	require.NotEmpty(t, now)
	result := against(t, past, now)
	assert.True(t, asked(result, "first-for-site", 2))
	assert.Len(t, result.Questions, 1, "once for a taxon and a site")
}

func TestTrapNightsAreAdviceAndNoFault(t *testing.T) {
	var rows []row
	for day := 1; day <= 20; day++ {
		if day%7 < 5 { // five nights in seven
			rows = append(rows, row{fmt.Sprintf("%02d/06/2021", day), "Heart and Dart", "12", "adult", "", "present", "Tinker's Row", "TF491012", "29", "Ines Calloway", "", "actinic light trap", "", ""},
				row{fmt.Sprintf("%02d/06/2021", day), "Buff Ermine", fmt.Sprint(1 + day%4), "adult", "", "present", "Tinker's Row", "TF491012", "29", "Ines Calloway", "", "actinic light trap", "", ""})
		}
	}
	result := check(t, map[string]string{"season.csv": text(t, rows)})
	assert.Equal(t, len(rows), result.Summary.Fair)
	assert.Contains(t, result.Summary.Checks, report.CheckCount{Check: "trap-nights", About: "record", State: "advice", Records: 3}, "once for seven nights")
	assert.Empty(t, result.Questions)

	sparing := check(t, map[string]string{"season.csv": text(t, season(2021))})
	for _, c := range sparing.Summary.Checks {
		assert.NotEqual(t, "trap-nights", c.Check, "two nights a week are within the advice")
	}
}

func TestKeepAnswersForEverySameCase(t *testing.T) {
	rows := season(2021)
	rows[60][cComments], rows[90][cComments] = "found dead in the trap", "found dead in the trap"
	result := check(t, map[string]string{"season.csv": text(t, rows)})
	require.Len(t, result.Questions, 1, "one question for both rows")
	assert.Equal(t, 2, result.Questions[0].Records)
}

// records are n records of a set, none of which asks anything, with the given
// number of different visits.
func records(n, visits int) func(i int) validate.Entry {
	names := []string{"Orthosia gothica", "Noctua pronuba", "Agrotis exclamationis", "Xestia c-nigrum", "Apamea monoglypha", "Autographa gamma", "Noctua comes", "Idaea aversata"}
	return func(i int) validate.Entry {
		visit := i * visits / n
		o := &dwc.Occurrence{
			ScientificName: names[i%len(names)], VerbatimIdentification: names[i%len(names)], RecordedBy: fmt.Sprintf("Recorder %d", visit%50),
			Locality: fmt.Sprintf("Site %d", visit%400), IndividualCount: fmt.Sprint(1 + i*i%7), OccurrenceStatus: "present", VerbatimCoordinates: "TL4588",
			OccurrenceRemarks: fmt.Sprint(i),
		}
		f := &validate.Facts{Start: int32(10000 + visit), End: int32(10000 + visit), Dated: true, Placed: true, Latitude: 52.4, Longitude: 0.1, SquareSize: 1000, Reference: "TL4588", Count: int32(1 + i*i%7), Counted: true, Light: true}
		e := validate.Entry{N: i, Sheet: 0, Row: i + 2, Occurrence: o, Facts: f}
		for b := range 8 {
			e.Content[b] = byte(uint64(i) * 0x9e3779b97f4a7c15 >> (8 * b))
		}
		return e
	}
}

// TestMemoryOfTheSet measures that the set does not grow with its records: the
// values wait in files, and some megabytes hold what is not written yet, beside
// the small tables of sites, people and names.
func TestMemoryOfTheSet(t *testing.T) {
	const n = 400_000
	record := records(n, n/8)
	heap := func() uint64 {
		runtime.GC()
		runtime.GC()
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	before := heap()
	set := validate.NewSet()
	for i := range n {
		e := record(i)
		set.Observe(&e)
	}
	observed := heap()
	require.NoError(t, set.Settle())
	settled := heap()
	runtime.KeepAlive(set)
	perRecord := float64(int64(observed)-int64(before)) / n
	t.Logf("%.1f bytes a record observed, %.1f settled", perRecord, float64(int64(settled)-int64(before))/n)
	assert.Less(t, perRecord, 42.0)
	assert.Less(t, float64(int64(settled)-int64(before))/n, 4.0, "a clean set leaves next to nothing")
	for i := range n {
		e := record(i)
		assert.Equal(t, 1, set.Ordinal(&e.Content))
		for _, f := range set.Findings(&e, func(int, int) string { return "" }) {
			require.Equal(t, reading.Fair, f.State, f.Message)
		}
	}
}

func TestTwoTrapsAtOneSiteAreNoDuplicates(t *testing.T) {
	rows := season(2021)
	rows = rows[:60:60]
	for i := range 60 {
		other := rows[i]
		other[cMethod] = "MV light trap"
		rows = append(rows, other)
	}
	result := check(t, map[string]string{"season.csv": text(t, rows[:60]), "second.csv": text(t, rows[60:])})
	for _, q := range result.Questions {
		assert.NotContains(t, []string{"duplicate", "near-duplicate", "two-notebooks"}, q.Code, q.Message)
	}
}
