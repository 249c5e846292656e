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

// TestNoNetwork watches the program's calls of the system with strace while it
// converts the demonstration notebooks: it opens no socket.
func TestNoNetwork(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("strace watches programs on Linux only")
	}
	strace := need.Tool(t, "strace", "install strace")
	calls := filepath.Join(t.TempDir(), "calls")
	c := exec.Command(strace, "-f", "-qq", "-e", "trace=%network,execve", "-o", calls, program, "demo", filepath.Join(t.TempDir(), "demo"))
	said, err := c.CombinedOutput()
	if err != nil && strings.Contains(string(said), "ptrace") {
		t.Skip("this system does not let one program watch another")
	}
	require.NoError(t, err, "%s", said)
	seen, err := os.ReadFile(calls)
	require.NoError(t, err)
	assert.Contains(t, string(seen), "execve(", "the program was watched")
	for _, call := range []string{"socket(", "connect(", "sendto(", "sendmsg(", "bind("} {
		assert.NotContains(t, string(seen), call)
	}
}
