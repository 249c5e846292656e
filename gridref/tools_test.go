package gridref

import (
	"bytes"
	"fmt"
	"os/exec"
	"strings"
	"testing"

	"fieldfare/testdata/need"

	"github.com/stretchr/testify/require"
)

// tool runs a program on the lines and returns its lines.
func tool(t *testing.T, debianPackage string, lines []string, name string, args ...string) []string {
	t.Helper()
	cmd := exec.Command(need.Tool(t, name, "apt-get install "+debianPackage), args...)
	cmd.Stdin = strings.NewReader(strings.Join(lines, "\n") + "\n")
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	require.NoError(t, err, stderr.String())
	return strings.Split(strings.TrimRight(string(out), "\n"), "\n")
}

// scan reads the first two numbers of a line.
func scan(t *testing.T, line string) (a, b float64) {
	t.Helper()
	_, err := fmt.Sscan(line, &a, &b)
	require.NoError(t, err, line)
	return a, b
}
