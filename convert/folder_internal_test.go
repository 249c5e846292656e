package convert

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFolderOfAJob(t *testing.T) {
	top := t.TempDir()
	touch := func(parts ...string) string {
		path := filepath.Join(append([]string{top}, parts...)...)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, nil, 0o644))
		return path
	}
	in := func(parts ...string) string { return filepath.Join(append([]string{top}, parts...)...) }
	notebook := touch("one", "walks.csv")
	touch("two", "fieldfare.toml")
	touch("three", "inner", "walks.csv")
	touch("three", "fieldfare.toml")
	touch("four", "archive", "meta.xml")
	for _, c := range []struct {
		says, want string
		files      []string
	}{
		{"beside a notebook", in("one"), []string{notebook}},
		{"a wildcard", in("one"), []string{in("one", "*.csv")}},
		{"a folder of notebooks", in("one"), []string{in("one")}},
		{"the same, with a stroke at its end", in("one"), []string{in("one") + string(filepath.Separator)}},
		{"a folder with the project file in it", in("two"), []string{in("two")}},
		{"a folder with the project file beside it", in("three"), []string{in("three", "inner")}},
		{"a folder that is a notebook", in("four"), []string{in("four", "archive")}},
		{"standard input first", in("one"), []string{"-", notebook}},
		{"standard input alone", ".", []string{"-"}},
	} {
		assert.Equal(t, c.want, filepath.Clean(Job{Files: c.files}.folder()), c.says)
	}
}
