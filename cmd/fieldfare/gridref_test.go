package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestGridrefCommand(t *testing.T) {
	file := filepath.Join(t.TempDir(), "traps.csv")
	require.NoError(t, os.WriteFile(file, []byte("Trap,\"Grid ref\"\nA,TL 483 812\n"), 0o600))
	const header = "value,state,grid,reference,easting,northing,size_m,decimalLatitude,decimalLongitude,coordinateUncertaintyInMeters,message\n"
	for _, tt := range []struct {
		args   []string
		in     string
		status int
		out    string
		err    string // part of what is said
	}{
		{args: []string{"TL 483 812"}, out: "TL 483 812: TL483812 is 52.4091617, 0.1795509 within 71.9 m\n"},
		{args: []string{"--format", "csv"}, in: "TL483812\n", out: header + "TL483812,fair,British,TL483812,548300,281200,100,52.4091617,0.1795509,71.9,\n"},
		{args: []string{"--to", "gridref", "--size", "10000"}, in: "52.4091617,0.1795509\n", out: "52.4091617,0.1795509: TL48 is 52.4437491, 0.1319619 within 7077 m\n"},
		{args: []string{"--column", "Grid ref", file}, out: "Trap,\"Grid ref\"," + strings.TrimPrefix(header, "value,") +
			"A,TL 483 812,fair,British,TL483812,548300,281200,100,52.4091617,0.1795509,71.9,\n"},
		{args: []string{"--column", "Place", file}, status: exitUsage, err: "There is no column “Place”; the file has “Trap”, “Grid ref”"},
		{args: []string{"--size", "300", "TL48"}, status: exitUsage, err: "--size 300"},
		{args: []string{"--to", "moon"}, status: exitUsage, err: "moon"},
		{args: []string{"--format", "xml"}, status: exitUsage, err: "xml"},
		{args: []string{"--format", "json", "--column", "Grid ref"}, status: exitUsage, err: "always writes CSV"},
		{args: []string{"--nonsense"}, status: exitUsage, err: "nonsense"},
		{args: []string{"--column", "Grid ref", file + ".missing"}, status: exitFailed, err: "the file cannot be opened"},
	} {
		var out, errs bytes.Buffer
		status := gridrefCommand(tt.args, strings.NewReader(tt.in), &out, &errs)
		assert.Equal(t, tt.status, status, "%v", tt.args)
		assert.Equal(t, tt.out, out.String(), "%v", tt.args)
		assert.Contains(t, errs.String(), tt.err, "%v", tt.args)
		if tt.err == "" {
			assert.Empty(t, errs.String(), "%v", tt.args)
		}
	}
}

// The example of the help is what the command says.
func TestGridrefHelp(t *testing.T) {
	var out, errs bytes.Buffer
	require.Equal(t, exitDone, gridrefCommand([]string{"--help"}, nil, &out, &errs))
	help := out.String()
	out.Reset()
	require.Equal(t, exitDone, gridrefCommand([]string{"TL 483 812"}, nil, &out, &errs))
	assert.Contains(t, help, out.String())
	assert.Contains(t, help, "--column")
}
