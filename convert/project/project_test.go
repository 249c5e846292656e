package project

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLoad(t *testing.T) {
	folder := t.TempDir()
	p, err := Load("", folder)
	require.NoError(t, err)
	assert.Equal(t, &Project{}, p, "no project file is an empty project")

	_, err = Load(filepath.Join(folder, "mine.toml"), folder)
	assert.ErrorContains(t, err, "there is no such file. Check the name after --project")

	path := filepath.Join(folder, FileName)
	require.NoError(t, os.WriteFile(path, []byte("\uFEFF[dataset]\r\ntitle = \"Moths of Sallowmere\"\r\n[lists]\r\nplaces = \"places.csv\"\r\n"), 0o644))
	p, err = Load("", folder)
	require.NoError(t, err, "as an editor of Windows saves it")
	assert.Equal(t, "Moths of Sallowmere", p.Dataset.Title)
	assert.Equal(t, path, p.Path)
	assert.Equal(t, filepath.Join(folder, "places.csv"), p.Resolve(p.Lists.Places))
	assert.Equal(t, filepath.Join(folder, "x.csv"), p.Resolve(filepath.Join(folder, "x.csv")))
	assert.Empty(t, p.Resolve(""))
	assert.Equal(t, "places.csv", (&Project{}).Resolve("places.csv"))

	require.NoError(t, os.Remove(path))
	require.NoError(t, os.Mkdir(path, 0o755))
	_, err = Load("", folder)
	assert.ErrorContains(t, err, "Check that it is not a folder and that you may open it")
}

func TestFaultsNameTheirLine(t *testing.T) {
	for text, want := range map[string]struct {
		line int
		says string
	}{
		"[dataset]\ntitel = \"x\"\n":             {2, `"dataset.titel" is not a setting that Fieldfare knows`},
		"[dataset]\n\ntitle = Moths\n":           {3, "Text values stand in quotation marks"},
		"[dataset\ntitle = \"x\"\n":              {1, "this line cannot be read"},
		"[reading]\nlongest_days = \"ten\"\n":    {2, "this line cannot be read"},
		"[reading]\ndate_order = \"month\"\n":    {0, `reading.date_order = "month": write one of`},
		"[dataset]\nshape = \"square\"\n":        {0, `dataset.shape = "square": write one of`},
		"[dataset]\nlicence = \"as you like\"\n": {0, `write "CC0", "CC BY" or "CC BY-NC"`},
		"[colours]\nheld = \"red\"\n":            {1, "is not a setting"},
	} {
		_, err := load(t, text)
		var fault *Error
		require.ErrorAs(t, err, &fault, text)
		assert.Equal(t, want.line, fault.Line, "%s: %v", text, err)
		assert.Contains(t, err.Error(), want.says, text)
	}
}

// The addresses are those of Creative Commons' legal codes.
func TestLicences(t *testing.T) {
	for written, want := range map[string]string{
		"": "", "CC0": CC0, "cc-0 1.0": CC0, "CC BY": CCBY, "cc-by-4.0": CCBY, "CC BY-NC": CCBYNC, "ccbync": CCBYNC,
		"https://example.org/licence": "https://example.org/licence",
	} {
		got, err := Dataset{Licence: written}.LicenceURL()
		require.NoError(t, err, written)
		assert.Equal(t, want, got, written)
	}
	for _, written := range []string{"CC BY-ND", "mine", "example.org"} {
		_, err := Dataset{Licence: written}.LicenceURL()
		assert.Error(t, err, written)
	}
}

// FuzzLoad: whatever a project file says, it is a project or one sentence.
func FuzzLoad(f *testing.F) {
	f.Add("[dataset]\ntitle = \"x\"\n")
	f.Add("[[notebook]]\nfile = \"a\"\ncolumns = { A = \"date\" }\n")
	f.Add("\xff")
	f.Fuzz(func(t *testing.T, text string) {
		p := &Project{Path: FileName}
		err := p.decode([]byte(text))
		if err == nil {
			err = p.check()
		}
		if err != nil {
			var fault *Error
			require.ErrorAs(t, err, &fault)
			require.NotContains(t, fault.Problem, "toml:")
		}
	})
}
