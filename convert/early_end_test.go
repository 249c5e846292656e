package convert_test

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"
	"testing/iotest"
	"time"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// earlyEnd notes the pieces of a run, and calls at when it comes to one of them:
// where it begins, or where its first step is done.
type earlyEnd struct {
	names   []string
	now     string
	stop    string
	stepped bool
	at      func()
}

func (s *earlyEnd) Stage(name string, _ int) {
	s.now = name
	if name != "" && !slices.Contains(s.names, name) {
		s.names = append(s.names, name)
	}
	if name == s.stop && !s.stepped {
		s.at()
	}
}

func (s *earlyEnd) Step(int) {
	if s.now == s.stop && s.stepped {
		s.at()
	}
}

// longNotebook has more rows than fit into the batches on their way, so that
// somebody waits for somebody when the work ends early.
func longNotebook() []byte {
	var b bytes.Buffer
	b.WriteString("Date,Species,Count,Site,Grid ref,Recorder,Method\n")
	for i := range 8000 {
		fmt.Fprintf(&b, "%d/06/20%02d,Heart and Dart,%d,Sallowmere Reserve,TL4588,Ines Calloway,actinic light trap\n", 1+i%28, 10+i%12, 1+i)
	}
	return b.Bytes()
}

// goroutinesLeft counts the goroutines once no more than before are left, or
// after a while: one may be on its last step when the run returns.
func goroutinesLeft(before int) int {
	for range 500 {
		if runtime.NumGoroutine() <= before {
			break
		}
		time.Sleep(10 * time.Millisecond)
	}
	return runtime.NumGoroutine()
}

// However early a run ends, nothing of it goes on and nothing of it is left.
func TestNothingGoesOnAfterAnEarlyEnd(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "long.csv")
	require.NoError(t, os.WriteFile(path, longNotebook(), 0o644))
	seen := &earlyEnd{}
	run(t, convert.Job{Files: []string{path}, Out: filepath.Join(folder, "whole"), Progress: seen})
	require.Len(t, seen.names, 4, "looking through, reading, comparing, writing")
	for _, name := range seen.names {
		for _, stepped := range []bool{false, true} {
			out := filepath.Join(folder, "out")
			before := runtime.NumGoroutine()
			ctx, cancel := context.WithCancel(context.Background())
			job := convert.Job{Files: []string{path}, Out: out, Today: today, Progress: &earlyEnd{stop: name, stepped: stepped, at: cancel}}
			_, err := convert.Run(ctx, job)
			require.ErrorIs(t, err, context.Canceled, "%s %v", name, stepped)
			assert.LessOrEqual(t, goroutinesLeft(before), before, "%s %v", name, stepped)
			assert.NoDirExists(t, out)
		}
	}
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Len(t, left, 2)
}

// A run that is stopped before it begins ends among the lists, and lets go of
// the project's folder.
func TestStoppedAmongTheLists(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"season.csv": season, "places.csv": "name,grid reference\nSallowmere Reserve,TL4588\n", "people.csv": "name,initials\nInes Calloway,IC\n",
		"fieldfare.toml": "[lists]\nplaces = \"places.csv\"\npeople = \"people.csv\"\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	job := convert.Job{Files: []string{filepath.Join(folder, "season.csv")}, Out: filepath.Join(folder, "out"), Today: today}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := convert.Run(ctx, job)
	require.ErrorIs(t, err, context.Canceled)
	assert.NoDirExists(t, job.Out)
	run(t, job)
}

// A notebook that cannot be read to its end ends the run as well.
func TestNothingGoesOnAfterABrokenNotebook(t *testing.T) {
	before := runtime.NumGoroutine()
	text := longNotebook()
	for _, n := range []int{0, 100, len(text)} {
		broken := io.MultiReader(bytes.NewReader(text[:n]), iotest.ErrReader(io.ErrUnexpectedEOF))
		out := filepath.Join(t.TempDir(), "out")
		_, err := convert.Run(context.Background(), convert.Job{Files: []string{"-"}, Out: out, Today: today, Stdin: broken})
		require.Error(t, err)
		assert.NoDirExists(t, out)
	}
	// The descriptor promises a table that is cut off in the middle of a row.
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "meta.xml"), []byte(`<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence" fieldsTerminatedBy="," fieldsEnclosedBy='"' linesTerminatedBy="\n"><files><location>o.csv</location></files><id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/></core></archive>`), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "o.csv"), append(bytes.Repeat([]byte("a,Noctua pronuba\n"), 8000), 'b', ',', '"'), 0o644))
	_, err := convert.Run(context.Background(), convert.Job{Files: []string{folder}, Out: filepath.Join(folder, "out"), Today: today})
	require.ErrorContains(t, err, "line 8001")
	assert.LessOrEqual(t, goroutinesLeft(before), before)
}
