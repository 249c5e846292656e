package convert_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/compare"
	"fieldfare/convert/ledger"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

const lastingHead = "Date,Species,Count,Site,Grid ref,Method,Recorder\n"

var lastingRows = []string{
	"12/6/2021,Heart and Dart,3,Sallowmere Reserve,TL4588,MV trap,Ines Calloway",
	"12/6/2021,Large Yellow Underwing,2,Sallowmere Reserve,TL4588,MV trap,Ines Calloway",
	"12/6/2021,Buff-tip,1,Sallowmere Reserve,TL4588,MV trap,Ines Calloway",
	"19/6/2021,Heart and Dart,5,Sallowmere Reserve,TL4588,MV trap,Ines Calloway",
	"19/6/2021,Setaceous Hebrew Character,4,Sallowmere Reserve,TL4588,MV trap,Ines Calloway",
	"26/6/2021,Buff-tip,7,Tinker's Row,TL4688,actinic,Tom Achterberg",
}

// desk is a folder with a project file, as a recorder has it from year to year.
type desk struct {
	t      *testing.T
	folder string
	runs   int
}

func newDesk(t *testing.T) *desk {
	d := &desk{t: t, folder: t.TempDir()}
	d.put("fieldfare.toml", "[dataset]\ntitle = \"Moths of the fen\"\n")
	return d
}

func (d *desk) path(name string) string { return filepath.Join(d.folder, name) }

func (d *desk) put(name, text string) string {
	require.NoError(d.t, os.WriteFile(d.path(name), []byte(text), 0o644))
	return d.path(name)
}

func (d *desk) read(name string) string {
	data, err := os.ReadFile(d.path(name))
	require.NoError(d.t, err)
	return string(data)
}

// book writes a notebook of rows.
func (d *desk) book(name string, rows ...string) string {
	return d.put(name, lastingHead+strings.Join(rows, "\n")+"\n")
}

// handIn converts notebooks and returns the submission.
func (d *desk) handIn(files ...string) string {
	d.runs++
	out := d.path("out" + string(rune('0'+d.runs)))
	run(d.t, convert.Job{Files: files, Out: out})
	return filepath.Join(out, convert.SubmissionFile)
}

// ids are the occurrenceIDs of a submission, sorted.
func (d *desk) ids(submission string) []string {
	list := ids(table(d.t, submission, "occurrence.txt"))
	slices.Sort(list)
	return list
}

func diff(t *testing.T, old, now string) *compare.Result {
	t.Helper()
	d, err := compare.Submissions(old, now)
	require.NoError(t, err)
	return d
}

// with returns the rows with one of them put otherwise.
func with(i int, old, now string) []string {
	rows := slices.Clone(lastingRows)
	rows[i] = strings.Replace(rows[i], old, now, 1)
	return rows
}

func TestIDsOutliveWhatIsDoneToANotebook(t *testing.T) {
	reversed := slices.Clone(lastingRows)
	slices.Reverse(reversed)
	for _, c := range []struct {
		name         string
		file         string
		rows         []string
		new, changed int
		term         string // that is told of as changed
	}{
		{name: "nothing", rows: lastingRows},
		{name: "rows in another order", rows: reversed},
		{name: "new rows above", rows: append([]string{"5/6/2021,Heart and Dart,9,Sallowmere Reserve,TL4588,MV trap,Ines Calloway"}, lastingRows...), new: 1},
		{name: "a spelling", rows: with(0, "Heart and Dart", "Heart & Dart"), changed: 1, term: "verbatimIdentification"},
		{name: "another species", rows: with(4, "Setaceous Hebrew Character", "Double Square-spot"), changed: 1, term: "scientificName"},
		{name: "a count", rows: with(1, ",2,", ",21,"), changed: 1, term: "individualCount"},
		{name: "a date", rows: with(5, "26/6/2021", "27/6/2021"), changed: 1, term: "eventDate"},
		{name: "a recorder", rows: with(5, "Tom Achterberg", "Ines Calloway"), changed: 1, term: "recordedBy"},
		{name: "a reference", rows: with(5, "TL4688", "TL4689"), changed: 1, term: "decimalLatitude"},
		{name: "a method", rows: with(5, "actinic", "MV trap"), changed: 1, term: "samplingProtocol"},
		{name: "a date and a count", rows: with(5, "26/6/2021,Buff-tip,7", "27/6/2021,Buff-tip,8"), changed: 1, term: "eventDate"},
		{name: "a spelling and a count", rows: with(0, "Heart and Dart,3", "Heart & Dart,33"), changed: 1, term: "individualCount"},
		{name: "a species and a count", rows: with(5, "Buff-tip,7", "Flame,8"), changed: 1, term: "scientificName"},
		{name: "the file's name", file: "moths corrected.csv", rows: lastingRows},
		{name: "the file's name and a count", file: "moths corrected.csv", rows: with(1, ",2,", ",21,"), changed: 1, term: "individualCount"},
		{name: "a count, with new rows above", rows: append([]string{"5/6/2021,Buff-tip,9,Sallowmere Reserve,TL4588,MV trap,Ines Calloway"}, with(1, ",2,", ",21,")...), new: 1, changed: 1, term: "individualCount"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := newDesk(t)
			book := d.book("moths.csv", lastingRows...)
			old := d.handIn(book)
			if c.file != "" {
				require.NoError(t, os.Remove(book))
				book = d.path(c.file)
			}
			d.book(filepath.Base(book), c.rows...)
			now := d.handIn(book)
			got := diff(t, old, now)
			assert.Len(t, got.New, c.new)
			assert.Empty(t, got.Withdrawn)
			require.Len(t, got.Changed, c.changed)
			if c.term != "" {
				assert.Contains(t, terms(got.Changed[0]), c.term)
			}
			for _, id := range d.ids(old) {
				assert.Contains(t, d.ids(now), id)
			}
			// And once more: what was corrected stays settled.
			again := diff(t, now, d.handIn(book))
			assert.Empty(t, again.New)
			assert.Empty(t, again.Changed)
			assert.Empty(t, again.Withdrawn)
		})
	}
}

// terms are those that a change concerns.
func terms(c compare.Record) []string {
	var list []string
	for _, x := range c.Changes {
		list = append(list, x.Term)
	}
	return list
}

// A whole night that was dated wrongly: every record and the event keep their
// ids.
func TestAnEventOutlivesACorrectedNight(t *testing.T) {
	d := newDesk(t)
	book := d.book("moths.csv", lastingRows...)
	old := d.handIn(book)
	rows := slices.Clone(lastingRows)
	for i := range 3 {
		rows[i] = strings.Replace(rows[i], "12/6/2021", "13/6/2021", 1)
	}
	d.book("moths.csv", rows...)
	now := d.handIn(book)
	assert.Equal(t, d.ids(old), d.ids(now))
	assert.Equal(t, eventsOf(t, old), eventsOf(t, now), "each occurrence is of the event it was of")
	dates := map[string]string{}
	for _, e := range table(t, now, "event.txt") {
		dates[e["eventID"]] = e["eventDate"]
	}
	for _, e := range table(t, old, "event.txt") {
		if strings.HasPrefix(e["eventDate"], "2021-06-12") {
			assert.True(t, strings.HasPrefix(dates[e["eventID"]], "2021-06-13"), dates[e["eventID"]])
		}
	}
}

// A night on which nothing was caught keeps its event's id as well, whatever is
// corrected of it, and stands in the ledger without an occurrence.
func TestAnEmptyNightOutlivesACorrection(t *testing.T) {
	d := newDesk(t)
	empty := func(row string) []string { return append(slices.Clone(lastingRows), row) }
	nights := func(submission string) (ids []string) {
		caught := map[string]bool{}
		for _, o := range table(t, submission, "occurrence.txt") {
			caught[o["eventID"]] = true
		}
		for _, e := range table(t, submission, "event.txt") {
			if e["eventType"] != "season" && !caught[e["eventID"]] {
				ids = append(ids, e["eventID"])
			}
		}
		return ids
	}
	book := d.book("moths.csv", empty("3/7/2021,nothing caught,,Sallowmere Reserve,TL4588,MV trap,Ines Calloway")...)
	old := d.handIn(book)
	require.Len(t, nights(old), 1)
	assert.Contains(t, d.read(ledger.FileName), "\n\t"+nights(old)[0])
	for _, row := range []string{
		"4/7/2021,nothing caught,,Sallowmere Reserve,TL4588,MV trap,Ines Calloway",
		"4/7/2021,nothing caught,,Sallowmere Reserve,TL4589,MV trap,Ines Calloway",
		"4/7/2021,nothing caught,,Sallowmere Reserve,TL4589,actinic,Ines Calloway",
	} {
		d.book("moths.csv", empty(row)...)
		now := d.handIn(book)
		assert.Equal(t, nights(old), nights(now), row)
		assert.Equal(t, d.ids(old), d.ids(now), row)
	}
	d.book("moths.csv", empty("4/7/2021,Flame,1,Sallowmere Reserve,TL4589,actinic,Ines Calloway")...)
	assert.Len(t, d.ids(d.handIn(book)), len(lastingRows)+1, "a record is no visit")
}

// eventsOf leads from occurrences to their events.
func eventsOf(t *testing.T, submission string) map[string]string {
	m := map[string]string{}
	for _, o := range table(t, submission, "occurrence.txt") {
		m[o["occurrenceID"]] = o["eventID"]
	}
	return m
}

func TestIDsOutliveSheetsInAnotherOrder(t *testing.T) {
	d := newDesk(t)
	workbook := func(sheets ...string) string {
		f := excelize.NewFile()
		defer f.Close()
		for i, name := range sheets {
			_, err := f.NewSheet(name)
			require.NoError(t, err)
			if i == 0 {
				require.NoError(t, f.DeleteSheet("Sheet1"))
			}
			rows := map[string][]string{"June": lastingRows[:3], "Later": lastingRows[3:]}[name]
			for n, row := range append([]string{strings.TrimSpace(lastingHead)}, rows...) {
				cells := strings.Split(row, ",")
				require.NoError(t, f.SetSheetRow(name, fmt.Sprintf("A%d", n+1), &cells))
			}
		}
		require.NoError(t, f.SaveAs(d.path("moths.xlsx")))
		return d.path("moths.xlsx")
	}
	old := d.handIn(workbook("June", "Later"))
	got := diff(t, old, d.handIn(workbook("Later", "June")))
	assert.Equal(t, len(lastingRows), got.Same)
	assert.Empty(t, got.New)
	assert.Empty(t, got.Changed)
	assert.Empty(t, got.Withdrawn)
}

func TestIDsNeverRepeatAfterCorrections(t *testing.T) {
	d := newDesk(t)
	row := lastingRows[0]
	book := d.book("moths.csv", row, row, lastingRows[1])
	seen := map[string]bool{}
	unique := func(submission string, n int) []string {
		list := d.ids(submission)
		assert.Len(t, slices.Compact(slices.Clone(list)), n)
		for _, id := range list {
			seen[id] = true
		}
		return list
	}
	old := unique(d.handIn(book), 3)
	// One of two that are alike is corrected, and a new one like them is added
	// after that: nobody gets the id of another.
	corrected := strings.Replace(row, ",3,", ",30,", 1)
	d.book("moths.csv", corrected, row, lastingRows[1])
	assert.Equal(t, old, unique(d.handIn(book), 3))
	d.book("moths.csv", corrected, row, lastingRows[1], row)
	unique(d.handIn(book), 4)
	assert.Len(t, seen, 4)
}

func TestTheNotebooksOwnIDWins(t *testing.T) {
	d := newDesk(t)
	head := "Record id," + lastingHead
	book := d.put("moths.csv", head+"SR-1,"+lastingRows[0]+"\nSR-2,"+lastingRows[1]+"\n")
	old := d.handIn(book)
	assert.Equal(t, []string{"SR-1", "SR-2"}, d.ids(old))
	d.put("moths.csv", head+"SR-2,"+strings.Replace(lastingRows[1], ",2,", ",8,", 1)+"\nSR-1,"+strings.Replace(lastingRows[0], "12/6/2021", "14/6/2021", 1)+"\n")
	got := diff(t, old, d.handIn(book))
	assert.Empty(t, got.New)
	assert.Empty(t, got.Withdrawn)
	assert.Len(t, got.Changed, 2)
}

func TestADamagedLedgerIsReportedWithItsLine(t *testing.T) {
	for _, c := range []struct{ name, old, now, says string }{
		{"a line cut short", "\tInes Calloway", "", "line 2"},
		{"half a merge", "\nurn:uuid:", "\n<<<<<<< theirs\nurn:uuid:", "line 2"},
		{"another file", "occurrenceID\t", "id\t", "line 1"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := newDesk(t)
			book := d.book("moths.csv", lastingRows...)
			d.handIn(book)
			damaged := strings.Replace(d.read(ledger.FileName), c.old, c.now, 1)
			require.NotEqual(t, d.read(ledger.FileName), damaged)
			d.put(ledger.FileName, damaged)
			_, err := convert.Run(context.Background(), convert.Job{Files: []string{book}, Out: d.path("late"), Today: today})
			require.ErrorContains(t, err, c.says)
			require.ErrorContains(t, err, ledger.FileName)
			assert.NotContains(t, err.Error(), "outputs", "it is not what was being written")
			assert.Equal(t, damaged, d.read(ledger.FileName), "it is left as it is")
			assert.NoFileExists(t, filepath.Join(d.path("late"), convert.SubmissionFile))
		})
	}
}

// Two people who each handed in from a copy put their ledgers together line by
// line.
func TestLedgersMergeByTheirLines(t *testing.T) {
	d := newDesk(t)
	book := d.book("moths.csv", lastingRows[:4]...)
	d.handIn(book)
	mine := strings.SplitAfter(d.read(ledger.FileName), "\n")
	other := d.book("other.csv", lastingRows[4:]...)
	first := d.handIn(other)
	theirs := strings.SplitAfter(d.read(ledger.FileName), "\n")
	for name, lines := range map[string][]string{
		"concatenated":           append(slices.Clone(mine), theirs[1:]...),
		"with both headings":     append(slices.Clone(mine), theirs...),
		"concatenated, sorted":   sorted(append(slices.Clone(mine), theirs...)),
		"with Windows line ends": {strings.ReplaceAll(strings.Join(theirs, ""), "\n", "\r\n")},
	} {
		t.Run(name, func(t *testing.T) {
			d.put(ledger.FileName, strings.Join(lines, ""))
			d.book("moths.csv", with(1, ",2,", ",21,")[:4]...)
			both := d.handIn(book, other)
			assert.Len(t, d.ids(both), len(lastingRows))
			assert.Empty(t, diff(t, first, both).Changed)
			assert.Len(t, strings.Split(strings.TrimSpace(d.read(ledger.FileName)), "\n"), len(lastingRows)+1, "one line a record")
			d.book("moths.csv", lastingRows[:4]...)
			back := d.handIn(book, other)
			assert.Equal(t, d.ids(both), d.ids(back))
		})
	}
}

func sorted(lines []string) []string {
	slices.Sort(lines)
	return lines
}

func TestANotebookNotReadKeepsItsLines(t *testing.T) {
	d := newDesk(t)
	first, second := d.book("a.csv", lastingRows[:3]...), d.book("b.csv", lastingRows[3:]...)
	both := d.handIn(first, second)
	before := d.read(ledger.FileName)
	d.handIn(second)
	assert.Equal(t, before, d.read(ledger.FileName))
	d.book("a.csv", with(1, ",2,", ",21,")[:3]...)
	assert.Equal(t, d.ids(both), d.ids(d.handIn(first, second)))
}

func TestCheckingWritesNoLedger(t *testing.T) {
	d := newDesk(t)
	book := d.book("moths.csv", lastingRows...)
	run(t, convert.Job{Files: []string{book}})
	assert.NoFileExists(t, d.path(ledger.FileName))
	d.handIn(book)
	before := d.read(ledger.FileName)
	d.book("moths.csv", with(1, ",2,", ",21,")...)
	run(t, convert.Job{Files: []string{book}})
	assert.Equal(t, before, d.read(ledger.FileName))
}

// One copy has a correction that the other does not know of: the merged ledger
// has two lines of one id, and still no two records get it.
func TestAMergedLedgerGivesAnIDOnce(t *testing.T) {
	d := newDesk(t)
	book := d.book("moths.csv", lastingRows...)
	old := d.handIn(book)
	theirs := d.read(ledger.FileName)
	corrected := with(1, ",2,", ",21,")
	d.book("moths.csv", corrected...)
	d.handIn(book)
	d.put(ledger.FileName, d.read(ledger.FileName)+theirs)
	assert.Equal(t, d.ids(old), d.ids(d.handIn(book)))
	d.put(ledger.FileName, d.read(ledger.FileName)+theirs)
	d.book("moths.csv", append(slices.Clone(corrected), lastingRows[1])...)
	list := d.ids(d.handIn(book))
	assert.Len(t, slices.Compact(list), len(lastingRows)+1)
}
