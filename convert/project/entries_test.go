package project

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/layout"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func load(t *testing.T, text string) (*Project, error) {
	path := filepath.Join(t.TempDir(), FileName)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	return Load(path, "")
}

func TestEntriesComeBackAsWritten(t *testing.T) {
	entries := []layout.Entry{
		{File: "Tinker's Row.xlsx", Sheet: "2014", Page: "list", Headings: "4-5", Rows: "6-120",
			Columns: map[string]string{"A": "date", "B": "name", "C": "count male"},
			Facts:   map[string]string{"site": "Tinker's Row", "year": "2014"}, CarryDown: []string{"date"}, Skip: []string{"12"}},
		{File: "notes.csv", Page: "skip"},
	}
	var b bytes.Buffer
	require.NoError(t, WriteEntries(&b, entries[:1]))
	require.NoError(t, WriteEntries(&b, entries[1:]))
	p, err := load(t, b.String())
	require.NoError(t, err)
	assert.Equal(t, entries, p.Notebook)
}

func TestBadEntryIsNamed(t *testing.T) {
	for _, c := range []struct{ line, says string }{
		{`page = "grid"`, "page = “grid”"},
		{`columns = { A = "datum of day" }`, "columns: A"},
		{`facts = { moon = "full" }`, "“moon”"},
		{`carry_down = ["count"]`, "“count” cannot be carried down"},
		{`headings = "top"`, "“top” is no row"},
	} {
		_, err := load(t, "[[notebook]]\nfile = \"a.csv\"\n[[notebook]]\nfile = \"b.csv\"\nsheet = \"June\"\n"+c.line+"\n")
		require.Error(t, err, c.line)
		assert.ErrorContains(t, err, c.says)
		assert.ErrorContains(t, err, `number 2, for file "b.csv", sheet "June"`)
	}
}
