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
	// "diary", "terms" (every column is headed by a Darwin Core term, and
	// Columns name others: A = "term eventDate") or "skip".
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
	// sex or stage, "count trap" holds the counts of the trap that its heading
	// names, "term lifeStage" names a Darwin Core term.
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

// Fits reports whether the entry is about the sheet.
func (e *Entry) Fits(file, sheet string) bool {
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

// Skips reports whether the entry leaves the row out.
func (e *Entry) Skips(row int) bool {
	for _, s := range e.Skip {
		if sp := parseSpan(s); sp.from > 0 && row >= sp.from && (sp.to == 0 || row <= sp.to) {
			return true
		}
	}
	return false
}

// Terms is the kind of a page whose columns are all headed by Darwin Core
// terms, in Entry.Page.
const Terms = "terms"

// LeftOut is why a row or column is left out that an entry leaves out.
const LeftOut = leaveProject

// FitsFile reports whether the entry is about the notebook, or some sheet of it.
func (e *Entry) FitsFile(file string) bool { return fitsPattern(e.File, filepath.Base(file)) }
