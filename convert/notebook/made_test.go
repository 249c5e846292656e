package notebook

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// write puts content into a new file and returns its path.
func write(t testing.TB, name, content string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	return path
}

func opened(t testing.TB, path string, o Options) *Book {
	t.Helper()
	if o.TempDir == "" {
		o.TempDir = t.TempDir()
	}
	b, err := Open(context.Background(), path, o)
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, b.Close()) })
	return b
}

// rowsOf collects a sheet's rows.
func rowsOf(t testing.TB, s Sheet) []Row {
	t.Helper()
	var rows []Row
	require.NoError(t, s.Walk(func(r *Row) error {
		c := *r
		c.Cells = append([]Cell(nil), r.Cells...)
		rows = append(rows, c)
		return nil
	}))
	return rows
}

// texts renders rows as text: cells joined by "|", trailing empty ones left out.
func texts(rows []Row) []string {
	var out []string
	for _, r := range rows {
		var cells []string
		for _, c := range r.Cells {
			cells = append(cells, c.Text)
		}
		for len(cells) > 0 && cells[len(cells)-1] == "" {
			cells = cells[:len(cells)-1]
		}
		out = append(out, strings.Join(cells, "|"))
	}
	return out
}

// readText reads content as a delimited file.
func readText(t testing.TB, content string, o Options) ([]string, []string) {
	t.Helper()
	b := opened(t, write(t, "page.csv", content), o)
	require.Len(t, b.Sheets(), 1)
	rows := texts(rowsOf(t, b.Sheets()[0]))
	return rows, b.Notes()
}
