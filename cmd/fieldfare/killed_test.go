package main_test

import (
	"archive/zip"
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestKilled ends the program at moments of chance without letting it tidy up,
// as a power cut would. Whatever the moment, the submission is a whole one, and
// the next run succeeds.
func TestKilled(t *testing.T) {
	out, notebook := filepath.Join(t.TempDir(), "out"), write(t, "season.csv", "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n")
	begun := time.Now()
	require.Zero(t, fieldfare(t, "", "convert", notebook, "--out", out).status)
	usual := time.Since(begun)
	seed := uint64(time.Now().UnixNano())
	r := rand.New(rand.NewPCG(seed, 0))
	for range 12 {
		c := exec.Command(program, "convert", notebook, "--out", out)
		require.NoError(t, c.Start())
		time.Sleep(time.Duration(r.Int64N(int64(usual) + int64(usual)/4)))
		c.Process.Kill()
		c.Wait() // the error says that it was killed
		archive, err := zip.OpenReader(filepath.Join(out, "submission.zip"))
		if assert.NoError(t, err, "seed %d", seed) {
			archive.Close()
		}
	}
	require.Zero(t, fieldfare(t, "", "convert", notebook, "--out", out).status)
}
