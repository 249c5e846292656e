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

// A name that fits several places, one of them private, does not leave.
func TestWhatMayBePrivateIsTreatedAsPrivate(t *testing.T) {
	const list = "Name,Also written,Grid reference,Private\n" +
		"Ferry Cottage,The Hut,TF 4912 0123,yes\nReed Hide,The Hut,TL 45 88,\n" +
		"Ferry Cottages North,,TF 49 01,yes\nOrchard End,,TF 4712 0323,yes\nOrchard Ends,,TL 46 89,\n" +
		"Dyke Corner,,TF 4812 0223,\nDyke Corner,,TL 47 87,\nHome,,TF 4612 0423,yes\n"
	for _, site := range []string{"The Hut", "hut", "The Hut, back door", "Moths at the Hut, roof", "Orchard Endz", "Dyke Corner", "Dyke Corner (lane)", "Home pond", "The pond at home"} {
		_, all := leavingOf(t, "[lists]\nplaces = \"places.csv\"\n[[privacy.place]]\nname = \"dyke corner\"\n",
			"Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,\""+site+"\",TL601702,Ines Calloway\n", list)
		assert.NotContains(t, strings.ToLower(all), strings.ToLower(site), site)
		assert.NotContains(t, all, "TL601702", site)
		assert.Contains(t, all, "TL67A", site)
	}
	for _, site := range []string{"Reed Hide", "Sallowmere Reserve", "Holme Fen"} {
		_, all := leavingOf(t, "[lists]\nplaces = \"places.csv\"\n",
			"Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,\""+site+"\",TL601702,Ines Calloway\n", list)
		assert.Contains(t, all, site)
		assert.Contains(t, all, "TL601702", site)
	}
}

// A remark that names a private place may say where the record was made.
func TestWhatNamesAPrivatePlaceIsBlurred(t *testing.T) {
	const toml = "[[privacy.place]]\nname = \"Tinker's Row\"\n"
	for _, remark := range []string{"behind the shed at Tinkers Row", "tinker's row!", "TINKER’S ROW trap"} {
		result, all := leavingOf(t, toml, "Date,Species,Count,Grid ref,Recorder,Comments\n12/6/2021,Heart and Dart,3,TF49120123,Ines Calloway,"+remark+"\n")
		assert.NotContains(t, strings.ToLower(all), "tinker", remark)
		assert.NotContains(t, all, "TF49120123", remark)
		assert.Equal(t, 1, result.Summary.Query)
	}
	_, all := leavingOf(t, toml, "Date,Species,Count,Grid ref,Recorder,Comments\n12/6/2021,Heart and Dart,3,TF49120123,Ines Calloway,\"a row of tinkers, behind the shed\"\n")
	assert.Contains(t, all, "TF49120123")
}

// What would give a private place, a sensitive taxon or a person away beside
// what is blurred: the names of files, a remark on another record, a surname.
func TestNothingBesideGivesItAway(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{
		"fieldfare.toml":            "[lists]\nplaces = \"places of Tinkers Row.csv\"\npeople = \"people.csv\"\n[privacy]\npeople = [\"Quentin Zqxworthy\"]\n[[privacy.taxon]]\nname = \"Phalera bucephala\"\n[[privacy.place]]\nname = \"Tinker's Row\"\n",
		"places of Tinkers Row.csv": "Name,Grid reference,Private\nSecret Barn,TL 99 9,yes\nSallowmere Reserve,TL4588,\n",
		"people.csv":                "Name,Initials\nInes Calloway,IC\n",
		"Tinkers Row 2021.csv":      "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TF49120123,Ines Calloway\n",
		"title.csv":                 "Moths at Tinker's Row 2021,,,,\n,,,,\nDate,Species,Count,Grid ref,Recorder\n12/6/2021,Flame,3,TF49120124,Ines Calloway\n",
		"held, of Tinkers Row.csv":  "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Wonder of the Fen,3,TF49120123,Ines Calloway\n",
		"remarks.csv": "Date,Species,Count,Site,Grid ref,Recorder,Weather,Comments\n" +
			"13/6/2021,Flame,3,Sallowmere Reserve,TL452882,Ines Calloway,,with 2 Buff-tips on the same sheet\n" +
			"14/6/2021,Flame,3,Sallowmere Reserve,TL4588,Ines Calloway,,Zqxworthy's trap\n" +
			"15/6/2021,Flame,3,Zqxworthy’s garden,TL4589,Ines Calloway,,with Zqxworthy\n" +
			"16/6/2021,Flame,3,Sallowmere Reserve,TL453882,Ines Calloway,P. bucephala about,\n" +
			"17/6/2021,Flame,3,Sallowmere Reserve,TL4588,Ines Calloway,,openly said\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	out := filepath.Join(folder, "out")
	run(t, convert.Job{Files: []string{filepath.Join(folder, "Tinkers Row 2021.csv"), filepath.Join(folder, "title.csv"), filepath.Join(folder, "held, of Tinkers Row.csv"), filepath.Join(folder, "remarks.csv")}, Out: out, Formats: convert.Formats()})
	all := streams(t, out)
	for name, data := range all {
		text := strings.ToLower(string(data))
		for _, secret := range []string{"tinker", "secret barn", "tf4912", "zqx", "bucephala", "buff-tip", "tl452882", "tl453882"} {
			assert.False(t, strings.Contains(text, secret), "%s in %s", secret, name)
		}
	}
	assert.Contains(t, string(all["records.csv"]), "openly said")
}

// An id made from a name that is not to be told could be found by trying names.
func TestIDsAreNotMadeOfWithheldNames(t *testing.T) {
	id := func(row string) string {
		d := newDesk(t)
		d.put("fieldfare.toml", "[privacy]\npeople = [\"Quentin Zqxworthy\"]\n")
		return d.ids(d.handIn(d.put("moths.csv", "Date,Species,Count,Site,Grid ref,Recorder,Comments\n"+row)))[0]
	}
	plain := id("12/6/2021,Flame,3,Sallowmere Reserve,TL4588,Quentin Zqxworthy,worn; with Q. Zqxworthy\n")
	assert.Equal(t, plain, id("12/6/2021,Flame,3,Sallowmere Reserve,TL4588,Q. Zqxworthy,worn; with Quentin Zqxworthy\n"))
	assert.NotEqual(t, plain, id("12/6/2021,Flame,4,Sallowmere Reserve,TL4588,Q. Zqxworthy,worn; with Quentin Zqxworthy\n"))
}

// The list of what is withdrawn, and what stands in a scheme's way, tell no
// place that is private by now.
func TestWithdrawnAndAskedTellNoPrivatePlace(t *testing.T) {
	folder := t.TempDir()
	notebook := "Date,Species,Count,Site,Grid ref,Recorder\n" +
		"12/6/2021,Flame,3,Tinker's Row,TF49120123,Ines Calloway\n13/6/2021,Buff-tip,3,Sallowmere Reserve,TL452882,Ines Calloway\n14/6/2021,Flame,3,Sallowmere Reserve,TL4588,Ines Calloway\n" +
		"15/6/2021,Heart and Dart,3,Tinker's Row,TF49,Ines Calloway\n"
	path := filepath.Join(folder, "book.csv")
	require.NoError(t, os.WriteFile(path, []byte(notebook), 0o644))
	before, after := filepath.Join(folder, "before"), filepath.Join(folder, "after")
	run(t, convert.Job{Files: []string{path}, Out: before})
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte("[asks]\nsquare_metres = 5000\n[[privacy.taxon]]\nname = \"Phalera bucephala\"\n[[privacy.place]]\nname = \"Tinker's Row\"\n"), 0o644))
	result := run(t, convert.Job{Files: []string{path}, Out: after, Against: filepath.Join(before, convert.SubmissionFile)})
	require.NotEmpty(t, result.Summary.Asks.InTheWay[0].Says, "the recorder is told")
	for name, data := range streams(t, after) {
		for _, secret := range []string{"Tinker", "TF49120123", "TL452882", "“TF49”"} {
			assert.NotContains(t, string(data), secret, name)
		}
	}
	withdrawn, err := os.ReadFile(filepath.Join(after, convert.WithdrawnFile))
	require.NoError(t, err)
	assert.Equal(t, 4, strings.Count(string(withdrawn), "\n"), "three are withdrawn, since they leave blurred under other ids")
}

// However a sensitive taxon is written, in the project file or on the row, and
// with all that belongs to it.
func TestSensitiveTaxaHoweverWritten(t *testing.T) {
	for _, rule := range []string{"Phalera bucephala", "buff tip", "Buff-tip", "phalera Bucephala", "Phalera", "Notodontidae", "Phalera bucephala (Linnaeus, 1758)"} {
		for _, row := range []string{"Buff-tip", "Phalera bucephala", "Buff tip", "Phalera cf. bucephala", "buff-tip larva", "P. bucephala"} {
			if row == "P. bucephala" && rule != "Phalera bucephala" {
				continue
			}
			_, all := leavingOf(t, "[[privacy.taxon]]\nname = \""+rule+"\"\n", "Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,"+row+",3,Sallowmere Reserve,TL452882,Ines Calloway\n")
			assert.NotContains(t, all, "TL452882", "%s under %s", row, rule)
			assert.NotContains(t, all, "Sallowmere", "%s under %s", row, rule)
		}
	}
	_, all := leavingOf(t, "[[privacy.taxon]]\nname = \"Phalera bucephala\"\n", "Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Buff Ermine,3,Sallowmere Reserve,TL452882,Ines Calloway\n")
	assert.Contains(t, all, "TL452882")
	result, _ := leavingOf(t, "[[privacy.taxon]]\nname = \"Rarus secretus\"\n", "Date,Species,Count,Site,Grid ref,Recorder\n12/6/2021,Buff Ermine,3,Sallowmere Reserve,TL452882,Ines Calloway\n")
	assert.Contains(t, strings.Join(result.Notes, "\n"), "“Rarus secretus”, which the project file has as sensitive, is on none of the taxon lists")
}

// leavingOf converts a notebook beside a project file and a list of places, if any, and returns all that
// leaves, in one text.
func leavingOf(t *testing.T, toml, notebook string, places ...string) (*convert.Result, string) {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte(toml), 0o644))
	for _, list := range places {
		require.NoError(t, os.WriteFile(filepath.Join(folder, "places.csv"), []byte(list), 0o644))
	}
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
