package convert_test

import (
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/compare"
	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// odd are texts that are hard to carry through tables, workbooks and JSON.
var odd = []string{
	"", "worn", `one "very" worn`, "tab\there", "two\nlines", "two\r\nlines", "emoji 🦋👩‍👩‍👧", "=1+1", "'quoted'", "@cell", "+44", "-1", "0012", "1/2", "TRUE",
	"1e5", "2021-06-12", "café", "cafe\u0301", "a | b", "a; b, c", "_x000D_", "<b>&amp;</b>", "مرحبا", "non\u00a0breaking", "zero\u200bwidth", "ends with \\", `\t \n`, "\u2028",
	"[method: guess]", "#N/A", "100%", "null", "N/A", "“curly”", "{\"json\": 1}",
}

// made writes a notebook of so many records and visits from a seed, and the
// project file beside it.
func made(t *testing.T, seed uint64, n int) string {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 11))
	pick := func(list ...string) string { return list[r.IntN(len(list))] }
	folder := t.TempDir()
	toml := "[dataset]\ntitle = \"Moths of the fen\"\nlicence = \"CC0\"\nshape = \"" + pick("event", "occurrence") + "\"\n[[privacy.taxon]]\nname = \"Phalera bucephala\"\n[[privacy.place]]\nname = \"Ferry Cottage\"\n"
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte(toml), 0o644))
	path := filepath.Join(folder, "made.csv")
	file, err := os.Create(path)
	require.NoError(t, err)
	defer file.Close()
	w := csv.NewWriter(file)
	require.NoError(t, w.Write([]string{"Date", "Time", "Species", "Count", "Sex", "Stage", "Site", "Grid ref", "Latitude", "Longitude", "Uncertainty", "Recorder", "Determiner", "Method", "Effort", "Habitat", "Weather", "Temperature (°C)", "Forewing (mm)", "Comments", "dynamicProperties", "locationRemarks"}))
	for range n {
		day := fmt.Sprintf("%d/%d/%d", 1+r.IntN(28), 5+r.IntN(4), 2010+r.IntN(12))
		row := []string{
			pick(day, day, day, "June 2019", "12-14/6/2020"), pick("", "", "22:45"), pick("Heart and Dart", "Buff-tip", "Noctua pronuba", "Flame", "no moths", "Common Rustic agg."),
			pick("", "1", "3", "12", "several", "c. 20", "2m 1f"), "", "", pick("Sallowmere Reserve", "Long Drove", "Ferry Cottage", "Hide №"+strconv.Itoa(r.IntN(3))),
			pick("TL4588", "TL 458 883", "TF49", "TL4588 3321", "", ""), "", "", "", pick("Ines Calloway", "Tom Achterberg", "Ines Calloway & Tom Achterberg"), pick("", "Tom Achterberg"),
			pick("actinic light trap", "MV trap", "walk", ""), pick("", "2 traps", "6 hours"), pick("", "fen", "carr"), pick("", "mild", "wind SW 3"), pick("", "11", "8.5"), pick("", "17.2", "18"),
			pick(odd...), pick("", `{"bait":"ropes"}`, odd[r.IntN(len(odd))]), pick("", odd[r.IntN(len(odd))]),
		}
		if row[7] == "" {
			row[8], row[9], row[10] = fmt.Sprintf("%.5f", 52.4+r.Float64()/10), fmt.Sprintf("%.5f", 0.1+r.Float64()/10), pick("", "25", "1000")
		}
		require.NoError(t, w.Write(row))
	}
	w.Flush()
	require.NoError(t, w.Error())
	return path
}

// Whatever the records are, the copies and the archive read back to the same
// records, id for id, with the same events and measurements; and once more.
func TestMadeSetsReadBack(t *testing.T) {
	seeds := 6
	if text := os.Getenv("FIELDFARE_ROUND_TRIPS"); text != "" {
		var err error
		seeds, err = strconv.Atoi(text)
		require.NoError(t, err)
	}
	for seed := range seeds {
		first := filepath.Join(t.TempDir(), "first")
		result := run(t, convert.Job{Files: []string{made(t, uint64(seed), 60)}, Out: first, Formats: convert.Formats()})
		require.Greater(t, result.Summary.Occurrences, 20)
		for _, name := range []string{convert.SubmissionFile, "records.csv", "records.xlsx", "records.geojson"} {
			t.Run(fmt.Sprint(seed, " ", name), func(t *testing.T) { readsBackAsItWas(t, first, name) })
		}
	}
}

func readsBackAsItWas(t *testing.T, first, name string) {
	again := filepath.Join(t.TempDir(), "again")
	run(t, convert.Job{Files: []string{filepath.Join(first, name)}, Out: again})
	old, now := filepath.Join(first, convert.SubmissionFile), filepath.Join(again, convert.SubmissionFile)
	diff, err := compare.Submissions(old, now)
	require.NoError(t, err)
	// An archive of occurrences has no visits without one; the copies have.
	news := slices.DeleteFunc(diff.New, func(r compare.Record) bool { return r.EventID != "" })
	for _, list := range [][]compare.Record{news, diff.Changed, diff.Withdrawn} {
		for i := range list[:min(3, len(list))] {
			t.Errorf("%+v", list[i])
		}
	}
	assert.Equal(t, rowsOf(t, old, dwc.RowOccurrence, "occurrenceID", "eventID", "parentEventID"), rowsOf(t, now, dwc.RowOccurrence, "occurrenceID", "eventID", "parentEventID"))
	if events := rowsOf(t, old, dwc.RowEvent, "eventID", "eventDate", "eventType", "samplingProtocol"); events != nil {
		assert.ElementsMatch(t, events, rowsOf(t, now, dwc.RowEvent, "eventID", "eventDate", "eventType", "samplingProtocol"))
		measured := []string{"eventID", "occurrenceID", "measurementType", "measurementValue", "measurementUnit"}
		assert.ElementsMatch(t, rowsOf(t, old, dwc.RowMeasurement, measured...), rowsOf(t, now, dwc.RowMeasurement, measured...))
	}
}

// rowsOf are the terms of every row of a table of an archive; nil where there
// is no such table.
func rowsOf(t *testing.T, path, rowType string, terms ...string) (rows []string) {
	t.Helper()
	a, err := dwc.OpenArchive(path)
	require.NoError(t, err)
	defer a.Close()
	table := a.Table(rowType)
	if table == nil {
		return nil
	}
	for r, err := range table.Rows() {
		require.NoError(t, err)
		var values []string
		for _, term := range terms {
			value := ""
			for i, c := range table.Columns() {
				if c.Term.Name == term {
					value = r.Value(i)
				}
			}
			values = append(values, value)
		}
		rows = append(rows, fmt.Sprintf("%q", values))
	}
	return rows
}
