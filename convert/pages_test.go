package convert_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"fieldfare/convert"
	"fieldfare/testdata/make/pages"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var rowOfCell = regexp.MustCompile(`\d+$`)

// TestPagesOfKnownContents makes pages in many layouts, and finds each record
// on them again with its date, taxon, count and place, or asked about. A
// failure names the page's seed. FIELDFARE_PAGES=10000 reads that many, and
// FIELDFARE_PAGES_FROM begins at another seed.
func TestPagesOfKnownContents(t *testing.T) {
	many, from := number(t, "FIELDFARE_PAGES", 60), number(t, "FIELDFARE_PAGES_FROM", 0)
	folder := t.TempDir()
	records, found := 0, 0
	missing := map[string]int{}
	for seed := from; seed < from+many; seed++ {
		page := pages.New(seed)
		f, lost := readPage(t, folder, page)
		records, found = records+len(page.Records), found+f
		missing[page.Layout] += len(page.Records) - f
		if len(lost) > 0 {
			text, err := page.CSV()
			require.NoError(t, err)
			t.Errorf("seed %d (%s, workbook %v): %q\n%s", seed, page.Layout, page.Workbook, lost, text)
		}
	}
	t.Logf("%d pages, %d records, %d found with their values, %d not", many, records, found, records-found)
	t.Logf("not found, by layout: %v", missing)
	assert.GreaterOrEqual(t, float64(found), 0.9*float64(records), "clear pages are read, not asked about")
}

func number(t *testing.T, variable string, usual uint64) uint64 {
	text := os.Getenv(variable)
	if text == "" {
		return usual
	}
	n, err := strconv.ParseUint(text, 10, 64)
	require.NoError(t, err, variable)
	return n
}

// readPage converts a page. It returns how many of its records were found, and
// what was lost or is wrong without a question.
func readPage(t *testing.T, folder string, page *pages.Page) (found int, faults []string) {
	data, ending, err := page.Bytes()
	require.NoError(t, err)
	path, out := filepath.Join(folder, "page"+ending), filepath.Join(folder, "out")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	result, err := convert.Run(t.Context(), convert.Job{Files: []string{path}, Out: out, Today: today, Workers: 1})
	if err != nil {
		return 0, []string{err.Error()}
	}
	handedIn := map[string]int{}
	for _, r := range table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt") {
		if r["scientificName"] != "" {
			handedIn[told(r["eventDate"], r["scientificName"], r["individualCount"], r["locality"])]++
		}
	}
	asked := map[int]bool{}
	for _, q := range result.Questions {
		for _, at := range q.Places {
			row, _ := strconv.Atoi(rowOfCell.FindString(at.Cell))
			asked[row] = true
		}
	}
	questioned := 0
	for _, r := range page.Records {
		key := told(r.Date, r.Taxon, strconv.Itoa(r.Count), r.Place)
		switch {
		case handedIn[key] > 0:
			handedIn[key]--
			found++
		case asked[r.Row]:
			questioned++
		default:
			faults = append(faults, fmt.Sprintf("row %d lost: %s", r.Row, key))
		}
	}
	var others []string
	for key, n := range handedIn {
		if n > 0 {
			others = append(others, "wrong, or not on the page: "+key)
		}
	}
	if len(others) > questioned {
		faults = append(faults, others...)
	}
	return found, faults
}

func told(date, taxon, count, place string) string {
	return date + " | " + taxon + " | " + count + " | " + place
}
