// Package project reads the one optional file that says what the notebooks do
// not: fieldfare.toml. A missing file is an empty project.
package project

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/plainfile"

	"github.com/pelletier/go-toml/v2"
)

// FileName is the project file's usual name, looked for beside the notebooks.
const FileName = "fieldfare.toml"

// Project is the project file. Every part is optional. The validate tags say
// what a setting may be, for validator/v10.
type Project struct {
	Dataset  Dataset        `toml:"dataset"`
	Lists    Lists          `toml:"lists"`
	Reading  Reading        `toml:"reading"`
	Notebook []layout.Entry `toml:"notebook"`
	Asks     Asks           `toml:"asks"`
	Privacy  Privacy        `toml:"privacy"`
	Limits   Limits         `toml:"limits"`

	// Path is where the project was read from; empty for an empty project.
	// Relative paths in the project are relative to its folder.
	Path string `toml:"-"`
}

// Dataset describes the submission as a whole.
type Dataset struct {
	ID           string    `toml:"id"`                                          // datasetID, a lasting identifier of the dataset
	Title        string    `toml:"title"`                                       // datasetName and the metadata's title
	Abstract     string    `toml:"abstract"`                                    // a few sentences
	Licence      string    `toml:"licence"`                                     // "CC0", "CC BY" or "CC BY-NC", or its URL
	RightsHolder string    `toml:"rights"`                                      // rightsHolder
	Institution  string    `toml:"institution"`                                 // institutionCode
	Collection   string    `toml:"collection"`                                  // collectionCode
	Country      string    `toml:"country" validate:"omitempty,country_alpha2"` // countryCode where the grid does not tell, ISO 3166-1 alpha-2
	Language     string    `toml:"language" validate:"omitempty,language_tag"`  // ISO 639-1, default en
	Keywords     []string  `toml:"keywords"`
	Methods      string    `toml:"methods"`                               // how the records were made
	Date         string    `toml:"date" validate:"omitempty,day_or_year"` // date of the submission, ISO 8601
	Citation     string    `toml:"citation"`
	Shape        string    `toml:"shape" validate:"omitempty,oneof='occurrence' 'event'"` // "occurrence", "event", or empty to choose by what is there
	Creators     []Contact `toml:"creator" validate:"dive"`
	Contacts     []Contact `toml:"contact" validate:"dive"`
}

// Contact is a person or body responsible for the dataset.
type Contact struct {
	Given        string `toml:"given"`
	Surname      string `toml:"surname"`
	Organisation string `toml:"organisation"`
	Position     string `toml:"position"`
	URL          string `toml:"url"`
	ORCID        string `toml:"orcid" validate:"omitempty,orcid"`
}

// Lists names the lists that values are looked up in, as file paths.
type Lists struct {
	Taxa   []string `toml:"taxa"`   // in order of preference
	Places string   `toml:"places"` // name, other spellings, grid reference, ...
	People string   `toml:"people"` // name, initials, ...
	Areas  []Area   `toml:"area"`
	Past   []string `toml:"past"` // archives of past records, to tell what is new to a place
	Self   string   `toml:"self"` // whose notebooks these are: "self", "me"
}

// Area is a polygon that the records should lie in.
type Area struct {
	Name       string `toml:"name"`
	File       string `toml:"file"`        // GeoJSON
	ViceCounty string `toml:"vice_county"` // the vice-county that the polygon is, where it is one
}

// Reading sets how values are read where the notebooks leave a choice.
type Reading struct {
	DateOrder     string `toml:"date_order" validate:"omitempty,oneof='day first' 'month first'"` // "day first" (the default) or "month first"
	Evenings      bool   `toml:"evenings"`                                                        // a single date of a trap is the evening of its night
	EarliestYear  int    `toml:"earliest_year" validate:"omitempty,four_digits"`                  // dates before it are asked about
	LongestDays   int    `toml:"longest_days" validate:"gte=0"`                                   // longer intervals are asked about
	ZeroIsAbsence bool   `toml:"zero_is_absence"`                                                 // 0 or a dash: looked for and not found
	TaxonGroup    string `toml:"taxon_group"`                                                     // what the notebooks are about, decides between homonyms
	Method        string `toml:"method"`                                                          // samplingProtocol where a notebook states none
	PlaceMetres   int    `toml:"place_metres" validate:"gte=0"`                                   // how far a reference may lie from its named place
}

// Asks is what the receiving scheme requires.
type Asks struct {
	Scheme      string   `toml:"scheme"`
	SquareSize  int      `toml:"square_metres" validate:"gte=0"` // coarsest square, metres
	DateDays    int      `toml:"date_days" validate:"gte=0"`     // longest interval, days
	Ranks       []string `toml:"ranks"`                          // acceptable taxonRank values
	Terms       []string `toml:"terms"`                          // Darwin Core terms that must be filled
	From        string   `toml:"from"`                           // earliest date wanted
	To          string   `toml:"to"`                             // latest date wanted
	Area        string   `toml:"area"`                           // name of a [[lists.area]] that records must lie in
	ViceCounty  string   `toml:"vice_county"`
	CountNeeded bool     `toml:"count_needed"`
}

// Privacy is what must be blurred on the way out.
type Privacy struct {
	Taxa   []PrivateTaxon `toml:"taxon" validate:"dive"`
	Places []PrivatePlace `toml:"place" validate:"dive"`
	People []string       `toml:"people"` // not to be named
	Square int            `toml:"square_metres" validate:"gte=0"`
}

// PrivateTaxon is a sensitive taxon and the square it is shown in.
type PrivateTaxon struct {
	Name   string `toml:"name" validate:"required"`
	Square int    `toml:"square_metres" validate:"gte=0"`
}

// PrivatePlace is a place not to be shown more finely than its square.
type PrivatePlace struct {
	Name   string `toml:"name" validate:"required"`
	Square int    `toml:"square_metres" validate:"gte=0"`
}

// Error is a project file that cannot be used: what is wrong and where.
type Error struct {
	File    string
	Line    int // 0 where it is not about one line
	Problem string
}

func (e *Error) Error() string {
	if e.Line > 0 {
		return fmt.Sprintf("%s, line %d: %s", e.File, e.Line, e.Problem)
	}
	return e.File + ": " + e.Problem
}

// mostBytes is how large a project file may be.
const mostBytes = 16 << 20

// Load reads the project file at path. With an empty path it looks for
// FileName in folder, and returns an empty project where there is none. The
// error is an *Error.
func Load(path, folder string) (*Project, error) {
	asked := path != ""
	if !asked {
		path = filepath.Join(folder, FileName)
	}
	data, err := plainfile.Read(path, mostBytes)
	switch {
	case errors.Is(err, fs.ErrNotExist) && !asked:
		return &Project{}, nil
	case errors.Is(err, fs.ErrNotExist):
		return nil, &Error{File: path, Problem: "there is no such file. Check the name after --project"}
	case plainfile.IsOurs(err):
		return nil, &Error{File: path, Problem: err.Error()}
	case err != nil:
		return nil, &Error{File: path, Problem: "the file cannot be read. Check that it is not a folder and that you may open it"}
	}
	data = bytes.TrimPrefix(data, []byte("\uFEFF")) // some editors begin a file with this mark
	p := &Project{Path: path}
	if err := p.decode(data); err != nil {
		return nil, err
	}
	return p, p.check()
}

func (p *Project) decode(data []byte) error {
	d := toml.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	err := d.Decode(p)
	var strict *toml.StrictMissingError
	var broken *toml.DecodeError
	switch {
	case errors.As(err, &strict) && len(strict.Errors) > 0:
		line, _ := strict.Errors[0].Position()
		key := strict.Errors[0].Key()
		return &Error{p.Path, line, fmt.Sprintf("%q is not a setting that Fieldfare knows. %s", strings.Join(key, "."), spelling(key))}
	case errors.As(err, &broken):
		line, _ := broken.Position()
		return &Error{p.Path, line, unreadable(broken) + ". Text stands in quotation marks, numbers and true or false without, lists in square brackets"}
	case err != nil:
		return &Error{p.Path, 0, "the file cannot be read: " + strings.TrimPrefix(err.Error(), "toml: ")}
	}
	return nil
}

// unreadable says what is wrong with a line, without what the decoder calls it.
func unreadable(err *toml.DecodeError) string {
	text := err.Error()
	switch key := strings.Join(err.Key(), "."); {
	case strings.Contains(text, "cannot decode") && key != "":
		if strings.Contains(text, "TOML string") && strings.Contains(text, "of type []string") {
			return fmt.Sprintf("%q is a list, and stands in square brackets even if it has one name only", key)
		}
		return fmt.Sprintf("%q has a value of the wrong kind", key)
	case strings.Contains(text, "cannot decode"):
		return "this line has a value of the wrong kind"
	case strings.Contains(text, "new line"):
		return "the quotation mark at the end is missing"
	case strings.Contains(text, "at start of value"):
		return "what stands behind the equals sign is no value"
	}
	return "this line cannot be read: " + strings.TrimPrefix(text, "toml: ")
}

// Resolve returns a path of the project file relative to the file's folder.
func (p *Project) Resolve(path string) string {
	if path == "" || filepath.IsAbs(path) || p.Path == "" {
		return path
	}
	return filepath.Join(filepath.Dir(p.Path), path)
}
