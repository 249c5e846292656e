package convert_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/answers"
	"fieldfare/convert/ledger"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// during runs a job and calls do once, while its rows are read.
func during(t *testing.T, job convert.Job, do func()) (*convert.Result, error) {
	t.Helper()
	m := &meddler{during: "Looking through", change: do}
	job.Today, job.Progress = today, m
	result, err := convert.Run(context.Background(), job)
	require.Positive(t, m.steps)
	return result, err
}

// manyRows are more than are read before progress is told of.
func manyRows() []string { return strings.Split(strings.Repeat(lastingRows[0]+"\n", 3000), "\n") }

// TestTwoRunsWithOneProject: the second is told to wait, whatever its folder,
// and the ids of the first are remembered; one that only checks may go on.
func TestTwoRunsWithOneProject(t *testing.T) {
	d := newDesk(t)
	first, second := d.book("first.csv", manyRows()...), d.book("second.csv", lastingRows...)
	_, err := during(t, convert.Job{Files: []string{first}, Out: d.path("out1")}, func() {
		_, err := convert.Run(context.Background(), convert.Job{Files: []string{second}, Out: d.path("out2"), Today: today})
		assert.ErrorContains(t, err, "another run with this project file is at work at this moment")
		assert.NoDirExists(t, d.path("out2"))
		_, err = convert.Run(context.Background(), convert.Job{Files: []string{second}, Today: today})
		assert.NoError(t, err)
		_, err = convert.ReadPart(context.Background(), convert.Job{Files: []string{second}, Today: today}, d.path("second.part"))
		assert.NoError(t, err, "parts remember nothing, so any number may be read at once")
	})
	require.NoError(t, err)
	run(t, convert.Job{Files: []string{second}, Out: d.path("out2")})
	kept := d.read(ledger.FileName)
	assert.Equal(t, 1+3000+len(lastingRows)-1, strings.Count(kept, "\n"), "a line for each record; they share one")
	entries, err := os.ReadDir(d.folder)
	require.NoError(t, err)
	for _, e := range entries {
		assert.False(t, strings.HasPrefix(e.Name(), "."), "%s is left behind", e.Name())
	}
}

// TestProjectLetGo: a run that fails gives the folder up.
func TestProjectLetGo(t *testing.T) {
	d := newDesk(t)
	good := d.book("good.csv", lastingRows...)
	for _, job := range []convert.Job{
		{Files: []string{d.path("none.csv")}, Out: d.path("out")},
		{Files: []string{good}, Out: d.path("out"), Taxa: []string{d.path("none.csv")}},
		{Files: []string{good}, Out: good},
	} {
		_, err := convert.Run(context.Background(), job)
		require.Error(t, err)
	}
	run(t, convert.Job{Files: []string{good}, Out: d.path("out")})
}

// TestLedgerChangedMeanwhile: somebody has taken in a colleague's ledger while
// the run was at work. Nothing is replaced, and nothing of it is lost.
func TestLedgerChangedMeanwhile(t *testing.T) {
	d := newDesk(t)
	d.handIn(d.book("other.csv", lastingRows...))
	book := d.book("season.csv", manyRows()...)
	earlier := d.read(ledger.FileName)
	merged := earlier + strings.Replace(earlier[strings.Index(earlier, "\n")+1:], "Ines Calloway", "Tom Achterberg", 1)
	out := d.path("new")
	_, err := during(t, convert.Job{Files: []string{book}, Out: out}, func() { d.put(ledger.FileName, merged) })
	require.ErrorContains(t, err, ledger.FileName+": this file, which remembers ids, was changed while the run was at work")
	assert.Equal(t, merged, d.read(ledger.FileName))
	assert.NoDirExists(t, out)
	run(t, convert.Job{Files: []string{book}, Out: out})
}

const answersHead = "about,written,check,decision,value,note\n"

// TestAnswersChangedMeanwhile: what was added to the remembered answers while
// the run was at work is kept beside those that it was given, of which the
// latter count.
func TestAnswersChangedMeanwhile(t *testing.T) {
	for _, project := range []bool{false, true} {
		folder := t.TempDir()
		put := func(name, text string) string {
			path := filepath.Join(folder, name)
			require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
			return path
		}
		if project {
			put("fieldfare.toml", "")
		}
		put(answers.FileName, answersHead+"name,an old one,,read as,Flame,\n")
		given := put("given.csv", answersHead+"name,mine,,read as,Flame,\nname,both,,read as,Flame,\n")
		book := put("season.csv", lastingHead+strings.Join(manyRows(), "\n"))
		_, err := during(t, convert.Job{Files: []string{book}, Answers: []string{given}, Out: filepath.Join(folder, "out")}, func() {
			put(answers.FileName, answersHead+"name,both,,read as,Drinker,\nname,theirs,,read as,Drinker,\n")
		})
		require.NoError(t, err)
		now, err := os.ReadFile(filepath.Join(folder, answers.FileName))
		require.NoError(t, err)
		assert.Equal(t, answersHead+"name,both,,read as,Flame,\nname,mine,,read as,Flame,\nname,theirs,,read as,Drinker,\n", string(now))
	}
}

// TestRunsWithoutProjectAtOnce: many runs over the notebooks of one folder, each
// with answers of its own; all are remembered.
func TestRunsWithoutProjectAtOnce(t *testing.T) {
	folder := t.TempDir()
	var wait sync.WaitGroup
	names := []string{"a", "b", "c", "d", "e", "f"}
	for _, name := range names {
		book, given := filepath.Join(folder, name+".csv"), filepath.Join(folder, name+" answers.csv")
		require.NoError(t, os.WriteFile(book, []byte(lastingHead+strings.Join(lastingRows, "\n")), 0o644))
		require.NoError(t, os.WriteFile(given, []byte(answersHead+"name,"+name+",,read as,Flame,\n"), 0o644))
		wait.Go(func() {
			result, err := convert.Run(context.Background(), convert.Job{Files: []string{book}, Answers: []string{given}, Out: filepath.Join(folder, "out "+name), Today: today})
			if assert.NoError(t, err) {
				assert.NotContains(t, strings.Join(result.Notes, " "), "could not be remembered")
			}
		})
	}
	wait.Wait()
	now, err := os.ReadFile(filepath.Join(folder, answers.FileName))
	require.NoError(t, err)
	for _, name := range names {
		assert.Contains(t, string(now), "name,"+name+",,read as,Flame,\n")
	}
}
