package project

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
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
		"[dataset]\n\ntitle = Moths\n":           {3, "Text stands in quotation marks"},
		"[dataset\ntitle = \"x\"\n":              {1, "this line cannot be read"},
		"[reading]\nlongest_days = \"ten\"\n":    {2, "\"reading.longest_days\" has a value of the wrong kind"},
		"[dataset]\ntitle = \"Moths\n":           {2, "the quotation mark at the end is missing"},
		"[dataset]\ntitle = Moths\n":             {2, "what stands behind the equals sign is no value"},
		"[dataset]\nkeywords = \"moths\"\n":      {2, "\"dataset.keywords\" is a list, and stands in square brackets"},
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

// A value that cannot be meant is told of before anything is read by it.
func TestSettingsThatCannotBeMeant(t *testing.T) {
	for text, says := range map[string]string{
		"[dataset]\ncountry = \"UK\"":                             `dataset.country = "UK": write the two capital letters that ISO 3166-1 has`,
		"[dataset]\ncountry = \"gb\"":                             `dataset.country = "gb"`,
		"[dataset]\nlanguage = \"English\"":                       `dataset.language = "English": write the code of the language`,
		"[dataset]\ndate = \"June\"":                              `dataset.date = "June": write the day as year-month-day`,
		"[dataset]\ndate = \"2024-02-30\"":                        `dataset.date = "2024-02-30"`,
		"[dataset]\nshape = \"occurrence' 'event\"":               `write one of "occurrence" "event"`,
		"[[dataset.creator]]\norcid = \"0000-0002-1825-0098\"":    `[[dataset.creator]] number 1: orcid = "0000-0002-1825-0098": write the sixteen figures`,
		"[[dataset.contact]]\n[[dataset.contact]]\norcid = \"1\"": `[[dataset.contact]] number 2: orcid = "1"`,
		"[reading]\nearliest_year = 20211":                        "reading.earliest_year = 20211: write a year of four digits",
		"[reading]\nearliest_year = -1":                           "reading.earliest_year = -1: write a year of four digits",
		"[reading]\nlongest_days = -4":                            "reading.longest_days = -4: write a number above 0",
		"[reading]\nplace_metres = -1":                            "reading.place_metres = -1",
		"[asks]\nsquare_metres = -4":                              "asks.square_metres = -4",
		"[asks]\ndate_days = -4":                                  "asks.date_days = -4",
		"[privacy]\nsquare_metres = -1000":                        "privacy.square_metres = -1000: write a number above 0",
		"[[privacy.taxon]]\nname = \"Flame\"\n[[privacy.taxon]]\nname = \"Lappet\"\nsquare_metres = -1": "[[privacy.taxon]] number 2: square_metres = -1",
		"[[privacy.taxon]]\nsquare_metres = 10000":                                                      `[[privacy.taxon]] number 1: name = ""`,
		"[[privacy.place]]\nname = \"Tinker's Row\"\nsquare_metres = -1":                                "[[privacy.place]] number 1: square_metres = -1",
		"[[privacy.place]]\nsquare_metres = 2000":                                                       `[[privacy.place]] number 1: name = ""`,
	} {
		_, err := load(t, text+"\n")
		var fault *Error
		require.ErrorAs(t, err, &fault, text)
		assert.Contains(t, fault.Problem, says, text)
		assert.Contains(t, err.Error(), FileName+": ", text)
	}
	_, err := load(t, `[dataset]
country = "IE"
language = "en-GB"
date = "2024"
shape = "event"
[[dataset.creator]]
orcid = "https://orcid.org/0000-0002-1694-233X"
[reading]
date_order = "month first"
earliest_year = 1000
longest_days = 0
[[privacy.taxon]]
name = "Flame"
`)
	assert.NoError(t, err)
}

// Every rule that a setting's tag names has its words.
func TestRulesHaveRemedies(t *testing.T) {
	var look func(typ reflect.Type)
	look = func(typ reflect.Type) {
		for i := range typ.NumField() {
			f := typ.Field(i)
			if typ := f.Type; typ.Kind() == reflect.Struct {
				look(typ)
			} else if typ.Kind() == reflect.Slice && typ.Elem().Kind() == reflect.Struct && f.Tag.Get("validate") == "dive" {
				look(typ.Elem())
			}
			for rule := range strings.SplitSeq(f.Tag.Get("validate"), ",") {
				rule, _, _ = strings.Cut(rule, "=")
				if rule != "" && rule != "omitempty" && rule != "dive" && rule != "oneof" {
					assert.NotEmpty(t, remedies[rule], "%s of %s", rule, f.Name)
				}
			}
		}
	}
	look(reflect.TypeFor[Project]())
}

// The first two are ORCID's own examples ("Structure of the ORCID
// Identifier", from memory); the others are made from them.
func TestORCID(t *testing.T) {
	for text, want := range map[string]bool{
		"0000-0002-1825-0097": true, "0000-0002-1694-233X": true, "https://orcid.org/0000-0002-1825-0097": true, "http://orcid.org/0000-0002-1825-0097": true,
		"0000-0002-1825-0079": false, "0000-0002-1694-2330": false, "0000-0002-1694-233x": false, "0000000218250097": false, "orcid.org/0000-0002-1825-0097": false,
		"0000-0002-1825-009": false, "X000-0002-1825-0097": false, "https://example.org/0000-0002-1825-0097": false, "0000-0002-1825-0097 ": false,
	} {
		assert.Equal(t, want, isORCID(text), text)
	}
}

// The addresses are those of Creative Commons' legal codes.
func TestLicences(t *testing.T) {
	const cc = "http://creativecommons.org/"
	for written, want := range map[string]string{
		"": "", "CC0": cc + "publicdomain/zero/1.0/legalcode", "cc-0 1.0": cc + "publicdomain/zero/1.0/legalcode",
		"CC BY": cc + "licenses/by/4.0/legalcode", "https://creativecommons.org/licenses/by/4.0/": cc + "licenses/by/4.0/legalcode",
		"CC BY-NC": cc + "licenses/by-nc/4.0/legalcode", "ccbync": cc + "licenses/by-nc/4.0/legalcode",
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
