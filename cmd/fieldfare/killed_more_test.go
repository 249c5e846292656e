package main_test

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"fieldfare/testdata/results"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEndedAtAnyMoment ends every other command that writes, at moments of
// chance, as a person does and as a power cut would. What was there before is
// there, or what the command makes, whole; a command that was told to stop
// leaves nothing beside it, and the next one clears away what a power cut left.
func TestEndedAtAnyMoment(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows sends no signals to one program")
	}
	if testing.Short() {
		t.Skip("it takes half a minute")
	}
	large, small := write(t, "large.csv", manyRows(3000)), write(t, "small.csv", oneRow)
	before, after := filepath.Join(t.TempDir(), "before"), filepath.Join(t.TempDir(), "after")
	require.Zero(t, fieldfare(t, "", "convert", small, "--out", before).status)
	require.LessOrEqual(t, fieldfare(t, "", "convert", large, "--out", after).status, 1)
	old, now := filepath.Join(before, "submission.zip"), filepath.Join(after, "submission.zip")
	seed := uint64(time.Now().UnixNano())
	chance := rand.New(rand.NewPCG(seed, 0))
	for name, c := range map[string]struct {
		earlier []string // makes what was there before
		args    func(path string) []string
	}{
		"--part":          {[]string{"convert", small, "--part"}, func(path string) []string { return []string{"convert", large, "--part", path} }},
		"compare":         {[]string{"compare", old, old, "--format", "xlsx", "--out"}, func(path string) []string { return []string{"compare", old, now, "--format", "xlsx", "--out", path} }},
		"--write-reading": {nil, func(path string) []string { return []string{"check", large, "--write-reading", path} }},
	} {
		t.Run(name, func(t *testing.T) {
			work := t.TempDir()
			t.Setenv("TMPDIR", work)
			whole := filepath.Join(t.TempDir(), "file")
			begun := time.Now()
			require.LessOrEqual(t, fieldfare(t, "", c.args(whole)...).status, 1)
			usual := time.Since(begun)
			made, err := os.ReadFile(whole)
			require.NoError(t, err)
			for i := range 4 {
				folder := t.TempDir()
				path := filepath.Join(folder, "file")
				earlier := ""
				if c.earlier != nil {
					require.Zero(t, fieldfare(t, "", append(append([]string(nil), c.earlier...), path)...).status)
					data, err := os.ReadFile(path)
					require.NoError(t, err)
					earlier = string(data)
				}
				signal := []os.Signal{os.Interrupt, syscall.SIGTERM, os.Kill, os.Interrupt}[i%4]
				run := exec.Command(program, c.args(path)...)
				require.NoError(t, run.Start())
				time.Sleep(time.Duration(chance.Int64N(int64(usual) + int64(usual)/8)))
				run.Process.Signal(signal)
				run.Wait()
				data, err := os.ReadFile(path)
				if earlier != "" || err == nil {
					require.NoError(t, err, "seed %d", seed)
					switch {
					case string(data) == earlier, string(data) == string(made):
					case name == "--part": // its bytes depend on which core was first; it has a sum that is looked at
						r := fieldfare(t, "", "check", path)
						assert.LessOrEqual(t, r.status, 1, "%s, seed %d", r.err, seed)
					default:
						t.Errorf("half a file, seed %d", seed)
					}
				}
				if signal != os.Kill {
					left, err := filepath.Glob(filepath.Join(folder, ".*"))
					require.NoError(t, err)
					assert.Empty(t, left, "seed %d", seed)
				}
			}
			require.LessOrEqual(t, fieldfare(t, "", "check", small).status, 1)
			left, err := os.ReadDir(work)
			require.NoError(t, err)
			assert.Empty(t, left, "work files of runs that were ended, seed %d", seed)
		})
	}
	t.Run("demo", func(t *testing.T) {
		folder := filepath.Join(t.TempDir(), "demo")
		begun := time.Now()
		require.Zero(t, fieldfare(t, "", "demo", filepath.Join(t.TempDir(), "demo")).status)
		usual := time.Since(begun)
		for i := range 6 {
			run := exec.Command(program, "demo", folder)
			require.NoError(t, run.Start())
			time.Sleep(time.Duration(chance.Int64N(int64(usual))) / time.Duration(1+i%3*20)) // often while the notebooks are written
			run.Process.Signal([]os.Signal{os.Kill, os.Interrupt}[i%2])
			run.Wait()
		}
		r := fieldfare(t, "", "demo", folder)
		assert.Zero(t, r.status, "it can be run again: %s, seed %d", r.err, seed)
		for file := range results.In(t, filepath.Join(folder, "handed-in")) {
			assert.False(t, strings.HasPrefix(file, "."), "%s, seed %d", file, seed)
		}
	})
}

// TestKilledWithAProject: a run that is killed while it keeps others from the
// project file does so no longer, and the ids that were remembered are there.
func TestKilledWithAProject(t *testing.T) {
	folder := t.TempDir()
	notebook, out := filepath.Join(folder, "season.csv"), filepath.Join(folder, "out")
	require.NoError(t, os.WriteFile(notebook, []byte(oneRow), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), nil, 0o644))
	require.Zero(t, fieldfare(t, "", "convert", notebook, "--out", out).status)
	ledger, err := os.ReadFile(filepath.Join(folder, "fieldfare-ledger.tsv"))
	require.NoError(t, err)

	first := exec.Command(program, "convert", "-", notebook, "--project", filepath.Join(folder, "fieldfare.toml"), "--out", filepath.Join(folder, "other"))
	waits, err := first.StdinPipe() // for rows that never come
	require.NoError(t, err)
	defer waits.Close()
	require.NoError(t, first.Start())
	require.Eventually(t, func() bool {
		_, err := os.Stat(filepath.Join(folder, ".fieldfare.lock"))
		return err == nil
	}, 20*time.Second, 10*time.Millisecond)
	require.Eventually(t, func() bool { // it has the lock, and not only made it
		r := fieldfare(t, "", "convert", notebook, "--out", out)
		return r.status == 3 && strings.Contains(r.err, "another run with this project file is at work at this moment, and two at once would not see each other's ids and answers. Wait until it has ended, and run again.")
	}, 20*time.Second, 10*time.Millisecond)
	require.NoError(t, first.Process.Kill())
	first.Wait()
	r := fieldfare(t, "", "convert", notebook, "--out", out)
	assert.Zero(t, r.status, r.err)
	now, err := os.ReadFile(filepath.Join(folder, "fieldfare-ledger.tsv"))
	require.NoError(t, err)
	assert.Equal(t, string(ledger), string(now))
	assert.NoFileExists(t, filepath.Join(folder, ".fieldfare.lock"))
}
