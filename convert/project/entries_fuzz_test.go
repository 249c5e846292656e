package project

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"unicode/utf8"

	"fieldfare/convert/layout"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzWriteEntries: what is written of a reading, with the names of files,
// sheets and headings as notebooks have them, is read back the same.
func FuzzWriteEntries(f *testing.F) {
	f.Add("Tinker's Row.xlsx", "2021", "Grid ref")
	f.Add("a\n[limits]\nrows = 1.csv", "\"\"\"", "'''\\u0000")
	f.Add("\x1b[2J", "\u202e\u2028", "= [[notebook]] #")
	f.Fuzz(func(t *testing.T, file, sheet, heading string) {
		want := []layout.Entry{{File: file, Sheet: sheet, Headings: heading}, {File: sheet}}
		var text bytes.Buffer
		if err := WriteEntries(&text, want); err != nil {
			// TOML has only text, so that nothing can be written.
			require.False(t, utf8.ValidString(file) && utf8.ValidString(sheet) && utf8.ValidString(heading), "%v", err)
			require.Zero(t, text.Len())
			return
		}
		path := filepath.Join(t.TempDir(), FileName)
		require.NoError(t, os.WriteFile(path, text.Bytes(), 0o600))
		p := &Project{Path: path}
		require.NoError(t, p.decode(text.Bytes()), text.String())
		assert.Equal(t, want, p.Notebook)
	})
}
