package convert_test

import (
	"archive/zip"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/compare"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// oddTexts are hard to write or to read again in one format or another, with
// nothing at all between them.
var oddTexts = append(append([]string{"", "", ""}, odd...),
	"👩‍🔬 at the lamp", "carriage\r\nreturn", `"quoted"`, "'", "''", "it's", "=HYPERLINK(\"x\")", "-", "- none on sugar", " led by a space", `back\slash`, `\N`, "\\", "<!-- x -->", "]]>", "_x0041_", "12/06",
	"#REF!", "עברית", "\u202eright to left", "soft\u00adhyphen", "%s %d {{x}}", "../../etc", strings.Repeat("very long ", 900),
)

// madeSeason writes a notebook with everything that must survive being written
// and read again.
func madeSeason(r *rand.Rand) (text string) {
	var b strings.Builder
	w := csv.NewWriter(&b)
	own := r.IntN(2) == 0
	head := []string{"Date", "Time", "Species", "Count", "Site", "Grid ref", "Latitude", "Longitude", "Uncertainty", "Recorder", "Method", "Effort", "Temperature (°C)", "Forewing (mm)", "Wind", "Habitat", "Comments"}
	if own {
		head = append([]string{"Record id"}, head...)
	}
	w.Write(head)
	one := func(list ...string) string { return list[r.IntN(len(list))] }
	odd := func() string { return oddTexts[r.IntN(len(oddTexts))] }
	for n := range 24 {
		day := r.IntN(27) + 1
		date := one(
			fmt.Sprintf("%d/06/2021", day), fmt.Sprintf("2021-06-%02d", day), fmt.Sprintf("2021-06-%02d/2021-06-%02d", day, day+1), fmt.Sprintf("%d June 2021", day),
			"June 2021", "2020", fmt.Sprintf("%d-%d June 2021", day, day+2),
		)
		row := []string{
			date, one("", "", "22:45", "23.30"), one("Heart and Dart", "Buff-tip", "Noctua pronuba", "Elephant Hawk-moth", "Barn Owl", "Common Quaker agg.", "Noctua pronuba"),
			one("", "1", "12", "2m 1f", "c. 20", "several", "3 larvae", "50+"), one("Sallowmere Reserve", "Long Drove", "The Sluice", "", "Tinker's Row"), "", "", "", "",
			one("Ines Calloway", "Tom Achterberg", "Ines Calloway and Tom Achterberg"), one("", "", "125W MV Robinson trap", "actinic trap", "sugar"), one("", "6 hours", "2 traps"),
			one("", "", "11", "11.5"), one("", "", "17.25"), one("", "light NE", odd()), one("", "fen carr", odd()), odd(),
		}
		switch r.IntN(4) {
		case 0:
			row[5] = one("TL4588", "TL458883", "TF4912", "TL48", "TL4588A", "TL48M")
		case 1:
			row[6], row[7], row[8] = "52.47312", "0.14562", one("", "25", "1000")
		case 2:
			row[4] = one("Sallowmere Reserve", "Long Drove")
		}
		if r.IntN(12) == 0 {
			row[2], row[3], row[11] = "no moths", "", fmt.Sprintf("%d minutes", 200+n) // a visit of its own
		}
		if own {
			row = append([]string{one("", fmt.Sprintf("ST-%d", n), fmt.Sprintf("urn:uuid:0b2c0f6e-1c7e-4a5e-9b7a-0000000000%02d", n), fmt.Sprintf("=%d", n), fmt.Sprintf("00%d", n))}, row...)
		}
		w.Write(row)
	}
	w.Flush()
	return b.String()
}

const madePrivacy = `
[privacy]
people = ["Tom Achterberg"]
[[privacy.taxon]]
name = "Elephant Hawk-moth"
square_metres = 10000
[[privacy.place]]
name = "Tinker's Row"
square_metres = 2000
`

// tablesOf are the rows of a submission's tables, as written.
func tablesOf(t *testing.T, submission string) map[string][][]string {
	t.Helper()
	z, err := zip.OpenReader(submission)
	require.NoError(t, err)
	defer z.Close()
	tables := map[string][][]string{}
	for _, f := range z.File {
		if !strings.HasSuffix(f.Name, ".txt") {
			continue
		}
		in, err := f.Open()
		require.NoError(t, err)
		r := csv.NewReader(in)
		r.Comma, r.FieldsPerRecord = '\t', 0
		rows, err := r.ReadAll()
		require.NoError(t, err)
		for i, row := range rows {
			if slices.Contains(row, "season") { // described by its first visit
				rows[i] = row[:1]
			}
		}
		tables[f.Name] = rows
	}
	return tables
}

// TestSeasonsReadBackAsTheyWere writes made seasons, in either shape, with and
// without blurring, and reads every copy back: the same records under the same
// ids, term for term, and from the archive the same rows in every table (visits
// without a record may stand further down).
// FIELDFARE_SEASONS=500 makes that many.
func TestSeasonsReadBackAsTheyWere(t *testing.T) {
	many, from := number(t, "FIELDFARE_SEASONS", 8), number(t, "FIELDFARE_SEASONS_FROM", 0)
	for seed := from; seed < from+many; seed++ {
		settings := described
		if seed%4 >= 2 {
			settings = "shape = \"occurrence\"\n" + settings
		}
		settings = "[dataset]\n" + settings
		if seed%2 == 1 {
			settings += madePrivacy
		}
		folder := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte(settings), 0o644))
		shape, _, _ := strings.Cut(strings.TrimPrefix(settings, "[dataset]\n"), "title")
		require.NoError(t, os.WriteFile(filepath.Join(folder, "shape.toml"), []byte("[dataset]\n"+shape), 0o644))
		notebook := filepath.Join(folder, "season.csv")
		require.NoError(t, os.WriteFile(notebook, []byte(madeSeason(rand.New(rand.NewPCG(seed, 1)))), 0o644))
		first := filepath.Join(folder, "first")
		result := run(t, convert.Job{Files: []string{notebook}, Out: first, Formats: convert.Formats()})
		require.Positive(t, result.Summary.Occurrences)
		valid(t, filepath.Join(first, convert.SubmissionFile))
		for _, name := range []string{convert.SubmissionFile, "records.csv", "records.xlsx", "records.geojson"} {
			again := filepath.Join(t.TempDir(), "again")
			job := convert.Job{Files: []string{filepath.Join(first, name)}, Out: again, Project: filepath.Join(folder, "shape.toml")}
			if seed%8 >= 4 {
				job.Project = filepath.Join(folder, "fieldfare.toml") // what is blurred is not blurred further
			}
			back := run(t, job)
			diff, err := compare.Submissions(filepath.Join(first, convert.SubmissionFile), filepath.Join(again, convert.SubmissionFile))
			require.NoError(t, err)
			// An archive of occurrences has no visits without one; the copies have.
			diff.New = slices.DeleteFunc(diff.New, func(r compare.Record) bool { return r.EventID != "" && result.Summary.VisitsLeft > 0 })
			assert.Empty(t, diff.New, "seed %d, %s", seed, name)
			assert.Empty(t, diff.Changed, "seed %d, %s", seed, name)
			assert.Empty(t, diff.Withdrawn, "seed %d, %s", seed, name)
			if !assert.GreaterOrEqual(t, diff.Same, result.Summary.Occurrences, "seed %d, %s", seed, name) {
				for _, q := range back.Questions {
					t.Log(q.State, q.Written, q.Message)
				}
			}
			if name == convert.SubmissionFile {
				was, is := tablesOf(t, filepath.Join(first, name)), tablesOf(t, filepath.Join(again, name))
				for table := range was {
					assert.Equal(t, was[table][0], is[table][0], "seed %d, columns of %s", seed, table)
					assert.ElementsMatch(t, was[table], is[table], "seed %d, %s", seed, table)
				}
			}
		}
	}
}
