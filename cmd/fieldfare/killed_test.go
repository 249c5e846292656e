package main_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// work converts a notebook of 3,000 rows into a folder that has outputs
// already, and ends it at moments of chance.
type work struct {
	out, notebook string
	usual         time.Duration
	chance        *rand.Rand
	seed          uint64
}

func newWork(t *testing.T) *work {
	var rows strings.Builder
	rows.WriteString("Date,Species,Count,Grid ref,Recorder\n")
	for i := range 3000 {
		fmt.Fprintf(&rows, "%d/6/20%02d,Heart and Dart,%d,TL%04d,Ines Calloway\n", i%28+1, i%24, i%9+1, 4000+i)
	}
	w := &work{out: filepath.Join(t.TempDir(), "out"), notebook: write(t, "season.csv", rows.String()), seed: uint64(time.Now().UnixNano())}
	w.chance = rand.New(rand.NewPCG(w.seed, 0))
	begun := time.Now()
	require.Zero(t, fieldfare(t, "", "convert", w.notebook, "--out", w.out).status)
	w.usual = time.Since(begun)
	return w
}

// end ends a run with the signal and returns what it said and its status.
func (w *work) end(t *testing.T, signal os.Signal) (string, int) {
	c := exec.Command(program, "convert", w.notebook, "--out", w.out)
	var said bytes.Buffer
	c.Stderr = &said
	require.NoError(t, c.Start())
	time.Sleep(time.Duration(w.chance.Int64N(int64(w.usual) + int64(w.usual)/4)))
	c.Process.Signal(signal)
	c.Wait() // the error says that it was ended
	return said.String(), c.ProcessState.ExitCode()
}

// whole requires that every output is there and none is cut short.
func (w *work) whole(t *testing.T) {
	t.Helper()
	for _, name := range []string{"submission.zip", "queries.xlsx"} {
		archive, err := zip.OpenReader(filepath.Join(w.out, name))
		if assert.NoError(t, err, "%s, seed %d", name, w.seed) {
			archive.Close()
		}
	}
	for name, end := range map[string]string{"report.html": "</html>\n", "summary.json": "}\n"} {
		text, err := os.ReadFile(filepath.Join(w.out, name))
		assert.NoError(t, err, "seed %d", w.seed)
		assert.True(t, strings.HasSuffix(string(text), end), "%s, seed %d", name, w.seed)
	}
}

// TestKilled ends the program without letting it tidy up, as a power cut would.
// Whatever the moment, all outputs are there and whole, and the next run clears
// away what was left.
func TestKilled(t *testing.T) {
	w := newWork(t)
	for range 8 {
		w.end(t, os.Kill)
		w.whole(t)
	}
	require.Zero(t, fieldfare(t, "", "convert", w.notebook, "--out", w.out).status)
	assert.Len(t, handedIn(t, w.out), 4)
	left, err := os.ReadDir(filepath.Dir(w.out))
	require.NoError(t, err)
	assert.Len(t, left, 1)
}

// TestInterrupted ends the program as a person does, and as a system that shuts
// down: it says so, and leaves the outputs as they were, or is done already.
func TestInterrupted(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows sends no signals to one program")
	}
	w := newWork(t)
	for i := range 8 {
		said, status := w.end(t, []os.Signal{os.Interrupt, syscall.SIGTERM}[i%2])
		switch status {
		case 3:
			assert.Contains(t, said, "stopped. The earlier outputs are as they were.")
		case 0:
			assert.Contains(t, said, "The outputs are in")
		default:
			assert.Equal(t, -1, status, "ended before the program had begun: %s", said)
		}
		w.whole(t)
		assert.Len(t, handedIn(t, w.out), 4, "nothing is left behind, seed %d", w.seed)
	}
}

// TestInterruptedWaiting: what waits for a person to type ends at once.
func TestInterruptedWaiting(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows sends no signals to one program")
	}
	c := exec.Command(program, "gridref")
	in, err := c.StdinPipe()
	require.NoError(t, err)
	defer in.Close()
	require.NoError(t, c.Start())
	time.Sleep(100 * time.Millisecond)
	require.NoError(t, c.Process.Signal(os.Interrupt))
	ended := make(chan error, 1)
	go func() { ended <- c.Wait() }()
	select {
	case <-ended:
	case <-time.After(20 * time.Second):
		c.Process.Kill()
		t.Fatal("it goes on")
	}
}

// TestTwoRunsAtOnce: the second into one folder is told to wait.
func TestTwoRunsAtOnce(t *testing.T) {
	w := newWork(t)
	first := exec.Command(program, "convert", "-", "--out", w.out)
	pipe, err := first.StdinPipe()
	require.NoError(t, err)
	require.NoError(t, first.Start())
	_, err = pipe.Write([]byte("Date,Species,Count,Grid ref,Recorder\n"))
	require.NoError(t, err)
	require.Eventually(t, func() bool {
		found, _ := filepath.Glob(filepath.Join(w.out, ".fieldfare-*", "for"))
		return len(found) > 0
	}, 20*time.Second, 10*time.Millisecond)
	before := outputs(t, w.out)
	r := fieldfare(t, "", "convert", w.notebook, "--out", w.out)
	assert.Equal(t, 3, r.status)
	assert.Contains(t, r.err, "another run is writing into this folder at this moment. Wait until it has ended, and run again.")
	assert.Equal(t, before, outputs(t, w.out))
	_, err = pipe.Write([]byte("12/6/2021,Buff-tip,1,TL4588,Ines Calloway\n"))
	require.NoError(t, err)
	pipe.Close()
	require.NoError(t, first.Wait())
	w.whole(t)
}

// outputs are the visible files of the folder, name to content.
func outputs(t *testing.T, folder string) map[string]string {
	files := map[string]string{}
	found, err := filepath.Glob(filepath.Join(folder, "[a-z]*"))
	require.NoError(t, err)
	for _, path := range found {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		files[filepath.Base(path)] = string(data)
	}
	return files
}
