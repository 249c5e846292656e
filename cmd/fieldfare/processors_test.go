package main_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The outputs are the same bytes with one processor as with two.
func TestProcessors(t *testing.T) {
	var list strings.Builder
	list.WriteString("Date,Species,Count,Site,Grid ref,Recorder\n")
	for i := range 3000 {
		fmt.Fprintf(&list, "%02d/%02d/2021,%s,%d,Carr Edge,TL4%d88,Ines Calloway\n", 1+i%28, 5+i%3, []string{"Heart and Dart", "Setaceous Hebrew Character", "no such moth"}[i%3], i%7, i%10)
	}
	notebook, out := write(t, "list.csv", list.String()), filepath.Join(t.TempDir(), "out")
	outputs := func(processors string) map[string][]byte {
		c := exec.Command(program, "convert", notebook, "--out", out)
		c.Env = append(os.Environ(), "GOMAXPROCS="+processors)
		said, err := c.CombinedOutput()
		require.NoError(t, err, "%s", said)
		files := map[string][]byte{}
		for _, name := range []string{"submission.zip", "queries.xlsx", "report.html", "summary.json"} {
			files[name], err = os.ReadFile(filepath.Join(out, name))
			require.NoError(t, err)
		}
		return files
	}
	one, two := outputs("1"), outputs("2")
	for name := range one {
		assert.True(t, bytes.Equal(one[name], two[name]), "%s differs", name)
	}
}
