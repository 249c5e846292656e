package layout

import (
	"path"
	"path/filepath"
	"strings"
)

// Entry is one [[notebook]] part of the project file: how to read one list or
// table of one sheet. Every line is optional and overrides what the automatic
// reading decided; what is not said stays automatic. Plan.Entries writes the
// automatic reading in this form.
type Entry struct {
	// File is the notebook's file name, or a pattern with * and ?; empty fits
	// every notebook. Sheet is the sheet's name or a pattern, likewise.
	File  string `toml:"file,omitempty"`
	Sheet string `toml:"sheet,omitempty"`
	// Encoding and Delimiter say how a delimited text file is written, where
	// that was guessed wrongly.
	Encoding  string `toml:"encoding,omitempty"`
	Delimiter string `toml:"delimiter,omitempty"`
	// Page is what the page is: "list", "nights across", "nights down",
	// "diary" or "skip".
	Page string `toml:"page,omitempty"`
	// Headings is the row of the headings, or the first and last ("4-5");
	// "none" where the page has none.
	Headings string `toml:"headings,omitempty"`
	// Rows are the first and last row of the list ("6-120", "6-").
	Rows string `toml:"rows,omitempty"`
	// Columns gives columns their meaning by letter: A = "date". The meanings
	// are those of Meaning, and the parts that are joined: "day", "month",
	// "year", "easting", "northing", "grid letters", "grid figures", "genus",
	// "species", "subspecies". "count male", "count larva" give a count its
	// sex or stage, "term lifeStage" names a Darwin Core term.
	Columns map[string]string `toml:"columns,omitempty"`
	// Facts hold for every row that lacks its own: site = "Tinker's Row". The
	// keys are meanings, and "year" and "month".
	Facts map[string]string `toml:"facts,omitempty"`
	// CarryDown names the meanings whose blank cells repeat the value above;
	// given at all, no others are carried.
	CarryDown []string `toml:"carry_down,omitempty"`
	// Skip lists rows that are no records: "12", "30-33".
	Skip []string `toml:"skip,omitempty"`
}

// fits reports whether the entry is about the sheet.
func (e *Entry) fits(file, sheet string) bool {
	return fitsPattern(e.File, filepath.Base(file)) && fitsPattern(e.Sheet, sheet)
}

func fitsPattern(pattern, name string) bool {
	if pattern == "" || strings.EqualFold(pattern, name) {
		return true
	}
	ok, err := path.Match(strings.ToLower(filepath.ToSlash(pattern)), strings.ToLower(name))
	if err != nil || ok {
		return ok
	}
	// A pattern with folders fits by its last part.
	ok, err = path.Match(strings.ToLower(path.Base(filepath.ToSlash(pattern))), strings.ToLower(name))
	return err == nil && ok
}

// FitsFile reports whether the entry is about the notebook, or some sheet of it.
func (e *Entry) FitsFile(file string) bool { return fitsPattern(e.File, filepath.Base(file)) }
