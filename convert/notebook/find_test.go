package notebook

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tree makes files below a new folder.
func tree(t *testing.T, files map[string]string) string {
	t.Helper()
	root := t.TempDir()
	for name, content := range files {
		path := filepath.Join(root, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
	}
	return root
}

// found runs Find below root and returns the paths relative to it.
func found(t *testing.T, root string, args ...string) (paths []string, notes string) {
	t.Helper()
	for i, a := range args {
		if a != Stdin {
			args[i] = filepath.Join(root, filepath.FromSlash(a))
		}
	}
	got, said, err := Find(args)
	require.NoError(t, err)
	for _, p := range got {
		if p != Stdin {
			rel, err := filepath.Rel(root, p)
			require.NoError(t, err)
			p = filepath.ToSlash(rel)
		}
		paths = append(paths, p)
	}
	return paths, strings.ReplaceAll(filepath.ToSlash(joined(said)), filepath.ToSlash(root)+"/", "")
}

func TestFindFolder(t *testing.T) {
	root := tree(t, map[string]string{
		"2014.csv": "a,b\n1,2\n", "2003/b.tsv": "a\tb\n", "2003/a.XLSX": "x", "2003/deep/c.ods": "y",
		"~$2014.xlsx": "lock", ".hidden.csv": "h", ".git/x.csv": "h", "2003/.~lock.c.ods#": "l",
		"old.xlsb": "z", "photo.jpg": "p", "letter.docx": "d", "garden.numbers/Index.zip": "n",
		"archive/meta.xml": "<archive/>", "archive/occurrence.txt": "id\n",
	})
	paths, notes := found(t, root, ".")
	assert.Equal(t, []string{"2003/a.XLSX", "2003/b.tsv", "2003/deep/c.ods", "2014.csv", "archive"}, paths)
	assert.Contains(t, notes, "old.xlsb was not read")
	assert.Contains(t, notes, "garden.numbers was not read")
	assert.Contains(t, notes, "letter.docx, photo.jpg")
	assert.NotContains(t, notes, "~$2014")
}

func TestFindOnce(t *testing.T) {
	root := tree(t, map[string]string{"a.csv": "same", "b.csv": "same", "c.csv": "also", "d/e.csv": "else"})
	require.NoError(t, os.Link(filepath.Join(root, "c.csv"), filepath.Join(root, "link.csv")))
	require.NoError(t, os.Symlink(filepath.Join(root, "c.csv"), filepath.Join(root, "soft.csv")))
	paths, notes := found(t, root, "d/e.csv", "b.csv", ".", "./b.csv", "d/../c.csv")
	assert.Equal(t, []string{"d/e.csv", "b.csv", "c.csv"}, paths)
	assert.Contains(t, notes, "a.csv has the same content as b.csv and is not read again.")
	assert.Contains(t, notes, "link.csv is another name of the same file as c.csv")
	assert.Contains(t, notes, "soft.csv is another name of the same file as c.csv")
	assert.Contains(t, notes, "b.csv was given twice and is read once.")

	again, _ := found(t, root, "d/e.csv", "b.csv", ".", "./b.csv", "d/../c.csv")
	assert.Equal(t, paths, again)
}

func TestFindLockFile(t *testing.T) {
	root := tree(t, map[string]string{"~$2014.xlsx": "lock", "2014.csv": "1"})
	paths, notes := found(t, root, "~$2014.xlsx", "2014.csv")
	assert.Equal(t, []string{"2014.csv"}, paths)
	assert.Contains(t, notes, "mark of a workbook that is open")
	_, _, err := Find([]string{filepath.Join(root, "~$2014.xlsx")})
	assert.ErrorContains(t, err, "no notebook among what was given")
}

func TestFindWildcardsAndInput(t *testing.T) {
	root := tree(t, map[string]string{"2010.csv": "1", "2011.csv": "2", "2012.txt": "3", "odd[1].csv": "4"})
	paths, _ := found(t, root, "*.csv", Stdin)
	assert.Equal(t, []string{"2010.csv", "2011.csv", "odd[1].csv", Stdin}, paths)
	paths, _ = found(t, root, "odd[1].csv")
	assert.Equal(t, []string{"odd[1].csv"}, paths, "a file whose name looks like a pattern")
}

func TestFindTroubles(t *testing.T) {
	root := tree(t, map[string]string{"empty/readme.md": "x"})
	for name, c := range map[string]struct{ arg, want string }{
		"missing":        {"nothing.csv", "there is no such file. Check the spelling"},
		"missing folder": {"no/nothing.csv", "and no folder"},
		"pattern":        {"*.csv", "no file has a name of this pattern"},
		"no notebook":    {"empty", "the folder holds no notebook"},
	} {
		t.Run(name, func(t *testing.T) {
			arg := filepath.Join(root, c.arg)
			_, _, err := Find([]string{arg})
			var p *Problem
			require.ErrorAs(t, err, &p)
			assert.Equal(t, arg, p.File)
			assert.Contains(t, err.Error(), c.want)
		})
	}
}
