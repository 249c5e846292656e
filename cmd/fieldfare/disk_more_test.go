package main_test

import (
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// manyRows are rows that do not pack away to nothing.
func manyRows(n int) string {
	var text strings.Builder
	text.WriteString("Date,Species,Count,Grid ref,Recorder,Notes\n")
	x := uint32(1)
	for i := range n {
		x = x*1664525 + 1013904223
		fmt.Fprintf(&text, "%d/6/2021,Heart and Dart,%d,TL%04d,Ines Calloway,%08x\n", i%28+1, i%9+1, 4000+i%1000, x)
	}
	return text.String()
}

// TestFullDiskForEachCommand lets every command that writes run out of room: it
// says so, an earlier file is as it was, and nothing is left beside it.
func TestFullDiskForEachCommand(t *testing.T) {
	small, large := write(t, "small.csv", oneRow), write(t, "large.csv", manyRows(6000))
	one, other := filepath.Join(t.TempDir(), "one"), filepath.Join(t.TempDir(), "other")
	require.Zero(t, fieldfare(t, "", "convert", small, "--out", one).status)
	require.LessOrEqual(t, fieldfare(t, "", "convert", large, "--out", other).status, 1)
	old, now := filepath.Join(one, "submission.zip"), filepath.Join(other, "submission.zip")
	earlierPart := filepath.Join(t.TempDir(), "earlier.part")
	require.Zero(t, fieldfare(t, "", "convert", small, "--part", earlierPart).status)
	part, err := os.ReadFile(earlierPart)
	require.NoError(t, err)
	for name, c := range map[string]struct {
		earlier string
		args    func(path string) []string
	}{
		"--part":             {string(part), func(path string) []string { return []string{"convert", large, "--part", path} }},
		"compare":            {"earlier", func(path string) []string { return []string{"compare", old, now, "--out", path} }},
		"compare, JSON":      {"earlier", func(path string) []string { return []string{"compare", old, now, "--format", "json", "--out", path} }},
		"compare, workbook":  {"earlier", func(path string) []string { return []string{"compare", old, now, "--format", "xlsx", "--out", path} }},
		"check, the reading": {"", func(path string) []string { return []string{"check", small, "--write-reading", path} }},
	} {
		t.Run(name, func(t *testing.T) {
			disk := smallDisk(t, "60k")
			if name == "check, the reading" { // it is short
				require.NoError(t, os.WriteFile(filepath.Join(disk, "filler"), make([]byte, 60<<10), 0o644))
			}
			path := filepath.Join(disk, "file")
			if c.earlier != "" {
				require.NoError(t, os.WriteFile(path, []byte(c.earlier), 0o644))
			}
			before := handedIn(t, disk)
			r := fieldfare(t, "", c.args(path)...)
			assert.Equal(t, 3, r.status)
			assert.Contains(t, r.err, "the disk is full")
			assert.Equal(t, before, handedIn(t, disk))
		})
	}
	t.Run("demo", func(t *testing.T) {
		disk := smallDisk(t, "60k")
		r := fieldfare(t, "", "demo", filepath.Join(disk, "demo"))
		assert.Equal(t, 3, r.status)
		assert.Contains(t, r.err, "the disk is full")
		for name, data := range handedIn(t, filepath.Join(disk, "demo")) {
			whole, err := os.ReadFile(filepath.Join("..", "..", "convert", "demo", "notebooks", name))
			require.NoError(t, err)
			assert.Equal(t, string(whole), data, "what is there is whole, so that the demonstration can be run again")
		}
	})
	t.Run("check, for its work files", func(t *testing.T) {
		disk := smallDisk(t, "60k")
		t.Setenv("TMPDIR", disk)
		r := fieldfare(t, "", "check", large)
		assert.Equal(t, 3, r.status)
		assert.Contains(t, r.err, "the disk is full")
		assert.Empty(t, handedIn(t, disk))
	})
	t.Run("the remembered ids", func(t *testing.T) {
		disk := smallDisk(t, "60k")
		project := filepath.Join(disk, "fieldfare.toml")
		require.NoError(t, os.WriteFile(project, nil, 0o644))
		require.Zero(t, fieldfare(t, "", "convert", small, "--project", project, "--out", one).status)
		before := handedIn(t, disk)
		require.Contains(t, before, "fieldfare-ledger.tsv")
		r := fieldfare(t, "", "convert", large, "--project", project, "--out", other)
		assert.Contains(t, r.err, "the ids of their records could not be remembered")
		assert.Contains(t, r.err, "the disk is full")
		assert.Equal(t, before, handedIn(t, disk))
	})
}

// TestStandardOutputFull: what goes to standard output and is cut off is told
// of, whatever the command, and never taken for the whole. The file /dev/full
// takes nothing (Linux manual, full(4)).
func TestStandardOutputFull(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip("only Linux has a file that is always full")
	}
	defer full.Close()
	notebook, out := write(t, "small.csv", oneRow), filepath.Join(t.TempDir(), "out")
	require.Zero(t, fieldfare(t, "", "convert", notebook, "--out", out).status)
	submission := filepath.Join(out, "submission.zip")
	for _, args := range [][]string{
		{"gridref", "TL4588"}, {"gridref"}, {"gridref", "--column", "Grid ref", notebook},
		{"explain", "date", "12/6/2021"}, {"explain", "name"}, {"compare", submission, submission, "--format", "json"},
		{"check", notebook, "--format", "json"}, {"check", notebook, "--show-reading"}, {"check", notebook, "--standard"},
		{"help"}, {"convert", "--help"}, {"version"},
	} {
		c := exec.Command(program, args...)
		var said strings.Builder
		c.Stdin, c.Stdout, c.Stderr = strings.NewReader(oneRow), full, &said
		c.Run()
		assert.Equal(t, 3, c.ProcessState.ExitCode(), "%q", args)
		assert.Contains(t, said.String(), "Standard output: the disk is full, so what is written there is cut off. Make room and run again.\n", "%q", args)
	}
}

// TestOutputThatIsOpenElsewhere finds each of the outputs, in turn, in use by
// another program, so that it cannot be replaced. On Windows that is a workbook
// open in a spreadsheet program; on Linux nothing is so, but for a file that is
// a place of its own on the disk (mount(2): EBUSY), and before the work for a
// program that runs (open(2): ETXTBSY).
func TestOutputThatIsOpenElsewhere(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("made with the means of Linux")
	}
	notebook, next := write(t, "small.csv", oneRow), write(t, "next.csv", oneRow+"13/6/2021,Buff-tip,3,TL4588,Ines Calloway\n")
	for _, name := range []string{"submission.zip", "queries.xlsx", "report.html", "summary.json"} {
		t.Run(name, func(t *testing.T) {
			out := filepath.Join(t.TempDir(), "out")
			require.Zero(t, fieldfare(t, "", "convert", notebook, "--out", out).status)
			path := filepath.Join(out, name)
			if said, err := exec.Command("mount", "--bind", path, path).CombinedOutput(); err != nil {
				t.Skipf("a file cannot be held here: %s", said)
			}
			t.Cleanup(func() { exec.Command("umount", path).Run() })
			before := handedIn(t, out)
			r := fieldfare(t, "", "convert", next, "--out", out)
			assert.Equal(t, 3, r.status)
			assert.Contains(t, r.err, name+": this file is open in another program, so it cannot be replaced; the earlier outputs are as they were. Close it there and run again.")
			assert.Equal(t, before, handedIn(t, out), "no other is replaced either")
			require.NoError(t, exec.Command("umount", path).Run())
			assert.Zero(t, fieldfare(t, "", "convert", next, "--out", out).status, "once it is closed, all is well")
		})
	}
	t.Run("told before the work", func(t *testing.T) {
		out := filepath.Join(t.TempDir(), "out")
		require.NoError(t, os.Mkdir(out, 0o755))
		sleep, err := exec.LookPath("sleep")
		require.NoError(t, err)
		copied := filepath.Join(out, "queries.xlsx")
		data, err := os.ReadFile(sleep)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(copied, data, 0o755))
		running := exec.Command(copied, "60")
		require.NoError(t, running.Start())
		t.Cleanup(func() { running.Process.Kill(); running.Wait() })
		c := exec.Command(program, "convert", "-", "--out", out)
		waits, err := c.StdinPipe() // nothing ever comes
		require.NoError(t, err)
		defer waits.Close()
		said, err := c.StderrPipe()
		require.NoError(t, err)
		require.NoError(t, c.Start())
		ended := time.AfterFunc(20*time.Second, func() { c.Process.Kill() })
		defer ended.Stop()
		text, err := io.ReadAll(said)
		require.NoError(t, err)
		c.Wait()
		assert.Contains(t, string(text), "this file is open in another program")
		assert.Len(t, handedIn(t, out), 1)
	})
}
