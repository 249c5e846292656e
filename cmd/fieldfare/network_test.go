package main_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestNoNetwork watches the program's calls of the system with strace through
// every command: it opens no socket.
func TestNoNetwork(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("strace watches programs on Linux only")
	}
	strace := need.Tool(t, "strace", "install strace")
	demo := filepath.Join(t.TempDir(), "demo")
	notebook, out, submission := filepath.Join(demo, "butterfly walks 2023.csv"), filepath.Join(demo, "out"), filepath.Join(demo, "handed-in", "submission.zip")
	for _, args := range [][]string{
		{"demo", demo},
		{"check", notebook, "--standard", "--show-reading"},
		{"convert", notebook, "--out", out, "--against", submission, "--format", "csv,xlsx,geojson", "--exact", "--answers", filepath.Join(demo, "handed-in", "queries.xlsx")},
		{"compare", submission, filepath.Join(out, "submission.zip")},
		{"gridref", "TL 483 812"},
		{"explain", "date", "12/13.vi.98"},
		{"explain", "name", "Larg Yellow Underwing"},
		{"help"},
		{"version"},
		{notebook},
	} {
		calls := filepath.Join(t.TempDir(), "calls")
		c := exec.Command(strace, append([]string{"-f", "-qq", "-e", "trace=%network,execve", "-o", calls, program}, args...)...)
		said, err := c.CombinedOutput()
		if err != nil && strings.Contains(string(said), "ptrace") {
			t.Skip("this system does not let one program watch another")
		}
		assert.LessOrEqual(t, c.ProcessState.ExitCode(), 1, "%q: %s", args, said)
		seen, err := os.ReadFile(calls)
		require.NoError(t, err)
		assert.Contains(t, string(seen), "execve(", "the program was watched")
		for _, call := range []string{"socket(", "connect(", "sendto(", "sendmsg(", "bind("} {
			assert.NotContains(t, string(seen), call, "%q", args)
		}
	}
}
