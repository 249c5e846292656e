package main_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"fieldfare/testdata/results"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// handedIn are the outputs of a folder, name to content.
func handedIn(t *testing.T, folder string) map[string]string {
	t.Helper()
	return results.In(t, folder)
}

const oneRow = "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n"

// smallDisk is a folder on a disk of its own.
func smallDisk(t *testing.T, size string) string {
	t.Helper()
	if runtime.GOOS != "linux" || os.Geteuid() != 0 {
		t.Skip("only root on Linux can mount a small disk")
	}
	disk := t.TempDir()
	if said, err := exec.Command("mount", "-t", "tmpfs", "-o", "size="+size, "tmpfs", disk).CombinedOutput(); err != nil {
		t.Skipf("a small disk cannot be mounted here: %s", said)
	}
	t.Cleanup(func() { assert.NoError(t, exec.Command("umount", disk).Run()) })
	return disk
}

// TestFullDisk converts into a file system of 300 kB: first what fits, then
// what does not.
func TestFullDisk(t *testing.T) {
	out := filepath.Join(smallDisk(t, "300k"), "out")
	r := fieldfare(t, "", "convert", write(t, "small.csv", oneRow), "--out", out)
	require.Zero(t, r.status, r.err)
	before := handedIn(t, out)
	require.Len(t, before, 4)

	var large strings.Builder
	large.WriteString("Date,Species,Count,Grid ref,Recorder,Notes\n")
	for i := range 20_000 {
		large.WriteString("12/6/2021,Heart and Dart,3,TL4588,Ines Calloway,")
		for range 4 { // so that it does not pack away to nothing
			i = i*1103515245 + 12345
			large.WriteString(string(rune('a'+i>>16&15)) + "x")
		}
		large.WriteByte('\n')
	}
	r = fieldfare(t, "", "convert", write(t, "large.csv", large.String()), "--out", out)
	assert.NotZero(t, r.status)
	assert.Contains(t, r.err, "the disk is full. Nothing was changed; make room and run again")
	assert.Equal(t, before, handedIn(t, out), "the earlier outputs are as they were, and nothing is left beside them")
}

// TestReadOnlyFolder converts into a folder that may not be written in. Root
// may write in every folder, so there it is one of a disk that takes nothing.
func TestReadOnlyFolder(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("made with the means of Linux")
	}
	folder := t.TempDir()
	notebook := write(t, "small.csv", oneRow)
	out := filepath.Join(folder, "out")
	require.Zero(t, fieldfare(t, "", "convert", notebook, "--out", out).status)
	says := "you may not write here. Give another folder after --out"
	if os.Geteuid() != 0 {
		require.NoError(t, os.Chmod(out, 0o500))
		t.Cleanup(func() { os.Chmod(out, 0o700) })
	} else {
		says = "nothing can be written on this disk. Give another folder after --out"
		for _, how := range [][]string{{"--bind", folder, folder}, {"-o", "remount,bind,ro", folder}} {
			if said, err := exec.Command("mount", how...).CombinedOutput(); err != nil {
				t.Skipf("a folder cannot be closed here: %s", said)
			}
			if how[0] == "--bind" {
				t.Cleanup(func() { assert.NoError(t, exec.Command("umount", folder).Run()) })
			}
		}
	}
	before := handedIn(t, out)
	require.Len(t, before, 4)
	for _, to := range []string{out, filepath.Join(folder, "new")} {
		r := fieldfare(t, "", "convert", notebook, "--out", to)
		if to != out && os.Geteuid() != 0 {
			continue // the folder above is open to its owner
		}
		assert.Equal(t, 3, r.status)
		assert.Contains(t, r.err, says)
	}
	assert.Equal(t, before, handedIn(t, out))
}

// TestNoPlaceForOutputs names what can be no folder; whoever runs the program.
func TestNoPlaceForOutputs(t *testing.T) {
	notebook := write(t, "small.csv", oneRow)
	places := map[string]string{
		notebook:                         "this is a file, and the outputs need a folder",
		filepath.Join(notebook, "below"): "a part of this name is a file and not a folder",
	}
	if runtime.GOOS == "linux" {
		places["/proc/out"] = "the outputs cannot be written here (the system says: no such file or directory)"
	}
	for out, says := range places {
		r := fieldfare(t, "", "convert", notebook, "--out", out)
		assert.Equal(t, 3, r.status, out)
		assert.Contains(t, r.err, says, out)
		assert.Contains(t, r.err, "after --out", out)
	}
	assert.Equal(t, oneRow, handedIn(t, filepath.Dir(notebook))["small.csv"])
}

// TestFileGrownToTheLimit: no file may grow beyond 20 kB, as where a person's
// share of the disk is used up.
func TestFileGrownToTheLimit(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("there is no such limit")
	}
	out, small := filepath.Join(t.TempDir(), "out"), write(t, "small.csv", oneRow)
	require.Zero(t, fieldfare(t, "", "convert", small, "--out", out).status)
	before := handedIn(t, out)
	large := write(t, "large.csv", oneRow+strings.Repeat("12/6/2021,Buff-tip,3,TL4588,Ines Calloway\n", 5000))
	said, err := exec.Command("sh", "-c", `ulimit -f 40 && "$@"`, "sh", program, "convert", large, "--out", out).CombinedOutput()
	assert.Error(t, err)
	assert.Contains(t, string(said), "the disk is full. Nothing was changed; make room and run again")
	assert.Equal(t, before, handedIn(t, out))
}

// TestFolderInTheWay finds a folder where one of the outputs belongs: none is
// replaced, and the folder keeps what it holds.
func TestFolderInTheWay(t *testing.T) {
	for _, name := range []string{"submission.zip", "queries.xlsx", "report.html", "summary.json"} {
		out := filepath.Join(t.TempDir(), "out")
		notebook := write(t, "small.csv", oneRow)
		require.Zero(t, fieldfare(t, "", "convert", notebook, "--out", out).status)
		require.NoError(t, os.Remove(filepath.Join(out, name)))
		before := handedIn(t, out)
		mine := filepath.Join(out, name, "mine")
		require.NoError(t, os.MkdirAll(mine, 0o755))
		r := fieldfare(t, "", "convert", write(t, "other.csv", oneRow+"13/6/2021,Buff-tip,3,TL4588,Ines Calloway\n"), "--out", out)
		assert.NotZero(t, r.status, name)
		assert.Contains(t, r.err, name)
		assert.DirExists(t, mine)
		require.NoError(t, os.RemoveAll(filepath.Join(out, name)))
		assert.Equal(t, before, handedIn(t, out), "with a folder for %s nothing else is replaced", name)
	}
}
