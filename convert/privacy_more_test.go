package convert_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// leavingOf converts a notebook beside a project file and returns all that
// leaves, in one text.
func leavingOf(t *testing.T, toml, notebook string) (*convert.Result, string) {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte(toml), 0o644))
	path := filepath.Join(folder, "book.csv")
	require.NoError(t, os.WriteFile(path, []byte(notebook), 0o644))
	result := run(t, convert.Job{Files: []string{path}, Out: filepath.Join(folder, "out"), Formats: convert.Formats()})
	var all strings.Builder
	for _, data := range streams(t, filepath.Join(folder, "out")) {
		all.Write(data)
	}
	return result, all.String()
}

// A private place that the places list lacks is known by its name, however it
// is written.
func TestPrivatePlaceOnNoListIsBlurred(t *testing.T) {
	for _, site := range []string{"Tinker's Row", "tinkers row", "TINKER’S ROW", "Tinker's  Row", "Tinkers Rwo", "Tinker's Row, back garden", "Tinker's Row (pond)"} {
		_, all := leavingOf(t, "[[privacy.place]]\nname = \"Tinker's Row\"\n",
			"Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,\""+site+"\",TF49120123,Ines Calloway\n")
		assert.NotContains(t, strings.ToLower(all), "tinker", site)
		assert.NotContains(t, strings.ToLower(all), "rwo", site)
		assert.NotContains(t, all, "TF49120123", site)
		assert.Contains(t, all, "TF40V", site)
	}
}

// What stands beside a private record does not leave with the rows that it is
// carried down to; a plain method does.
func TestNothingPrivateIsCarriedDown(t *testing.T) {
	const toml = "[[privacy.taxon]]\nname = \"Phalera bucephala\"\n[[privacy.place]]\nname = \"Tinker's Row\"\n"
	for name, c := range map[string]struct {
		method string
		leaves bool
	}{
		"a plain method":      {"MV trap", true},
		"a lamp with watts":   {"15W actinic light trap", true},
		"a place in a method": {"MV trap by the badger sett", false},
	} {
		t.Run(name, func(t *testing.T) {
			_, all := leavingOf(t, toml, "Date,Species,Count,Site,Grid ref,Method,Recorder\n"+
				"12/6/2021,Buff-tip,3,Sallowmere Reserve,TL4588,"+c.method+",Ines Calloway\n"+
				"12/6/2021,Heart and Dart,3,Sallowmere Reserve,TL4588,,Ines Calloway\n"+
				"12/6/2021,Flame,3,Sallowmere Reserve,TL4588,,Ines Calloway\n"+
				"13/6/2021,Flame,3,Sallowmere Reserve,TL4588,walk,Ines Calloway\n")
			assert.Equal(t, c.leaves, strings.Contains(all, c.method))
			assert.NotContains(t, all, "badger")
			_, all = leavingOf(t, toml, "Date,Species,Count,Site,Grid ref,Method,Recorder\n"+
				"12/6/2021,Heart and Dart,3,Tinker's Row,TF4912,"+c.method+",Ines Calloway\n"+
				"12/6/2021,Heart and Dart,3,Sallowmere Reserve,TL4588,,Ines Calloway\n"+
				"13/6/2021,Flame,3,Sallowmere Reserve,TL4588,walk,Ines Calloway\n")
			assert.NotContains(t, all, c.method, "a method is not carried to another site")
			_, all = leavingOf(t, toml, "Date,Species,Count,Site,Grid ref,Method,Recorder\n"+
				"12/6/2021,Heart and Dart,3,Sallowmere Reserve,TL4588,"+c.method+",Ines Calloway\n"+
				"12/6/2021,Flame,3,Sallowmere Reserve,TL4588,,Ines Calloway\n")
			assert.Contains(t, all, c.method, "what is not private is told")
		})
	}
}

func TestADescriptionThatNamesAPrivatePlaceIsToldOf(t *testing.T) {
	const notebook = "Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,Tinker's Row,TF49120123,Ines Calloway\n"
	const private = "[[privacy.place]]\nname = \"Tinker's Row\"\n"
	result, _ := leavingOf(t, "[dataset]\ntitle = \"Moths of Tinkers’ row, and the fen\"\nabstract = \"The garden at Tinker's Row.\"\n"+private, notebook)
	assert.Len(t, result.Cautions, 1, "a title with the apostrophe elsewhere has other words")
	assert.Contains(t, result.Closing(), "The dataset's abstract names “Tinker's Row”, which is marked private.")
	result, _ = leavingOf(t, "[dataset]\ntitle = \"Moths of the fen\"\n"+private, notebook)
	assert.Empty(t, result.Cautions)
	assert.NotContains(t, result.Closing(), "Before you pass it on")
}
