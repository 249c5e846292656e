package main_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What --write-reading writes, put in a project file, gives the same records.
func TestWrittenReadingGivesTheSame(t *testing.T) {
	dir := t.TempDir()
	book := filepath.Join(dir, "book.csv")
	require.NoError(t, os.WriteFile(book, []byte("Site: Tinker's Row TL453812,,\nRecorder: Ines Calloway,,\nSpecies,12/6/2014,13/6/2014\nHeart and Dart,3,1\nFlame,,2\nTotal,3,3\n"), 0o600))
	written := filepath.Join(dir, "reading.toml")
	first := fieldfare(t, "", "check", book, "--today", "2026-01-31", "--format", "json", "--write-reading", written)
	require.Zero(t, first.status, first.err)
	text, err := os.ReadFile(written)
	require.NoError(t, err)
	assert.Contains(t, string(text), "[[notebook]]")
	assert.Contains(t, string(text), "nights across")

	second := fieldfare(t, "", "check", book, "--today", "2026-01-31", "--format", "json", "--project", written)
	require.Zero(t, second.status, second.err)
	counts := func(s string) (out []string) {
		for line := range strings.Lines(s) {
			for _, key := range []string{`"rows_read"`, `"fair"`, `"query"`, `"held"`, `"skipped"`, `"occurrences"`} {
				if strings.Contains(line, key) {
					out = append(out, strings.TrimSpace(line))
				}
			}
		}
		return out
	}
	assert.NotEmpty(t, counts(first.out))
	assert.Equal(t, counts(first.out), counts(second.out))

	again := fieldfare(t, "", "check", book, "--write-reading", written)
	assert.NotZero(t, again.status, "a file that is there already is not overwritten")
	assert.Contains(t, again.err, "is there already")
}
