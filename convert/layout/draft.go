// Package layout reads a page as a person would: it decides what kind of page
// a sheet is and what each column means, and turns its rows into drafts, each
// value with its meaning and its address. What it cannot place it reports.
package layout

import (
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// Meaning says what a value is about. Its text is used in the project file,
// in the printed reading of a page and in the queries workbook.
type Meaning string

const (
	Date        Meaning = "date"     // a day, a night, an interval; day/month/year columns arrive joined
	EndDate     Meaning = "end date" // where a page keeps it in a column of its own
	Time        Meaning = "time"
	EndTime     Meaning = "end time"
	Taxon       Meaning = "name"            // a name as written, of any kind; genus and species columns arrive joined
	Scientific  Meaning = "scientific name" // where a page has both
	Vernacular  Meaning = "vernacular name"
	Authorship  Meaning = "authorship"
	TaxonNumber Meaning = "checklist number"
	Group       Meaning = "taxon group" // a family, an order, "moths"
	Count       Meaning = "count"       // may occur several times (Value.Sex, Value.Stage)
	Sex         Meaning = "sex"
	Stage       Meaning = "life stage"
	Status      Meaning = "occurrence status" // present, absent
	Recorder    Meaning = "recorder"
	Determiner  Meaning = "determiner"
	Verifier    Meaning = "verifier"
	Site        Meaning = "site"
	GridRef     Meaning = "grid reference" // easting/northing and letters/figures columns arrive joined
	Latitude    Meaning = "latitude"
	Longitude   Meaning = "longitude"
	Uncertainty Meaning = "coordinate uncertainty" // metres
	ViceCounty  Meaning = "vice-county"
	County      Meaning = "county"
	Country     Meaning = "country"
	Elevation   Meaning = "elevation"
	Habitat     Meaning = "habitat"
	Method      Meaning = "sampling method" // light trap, sugar, sweep net, with lamp and trap
	Effort      Meaning = "sampling effort" // hours, number of traps
	Weather     Meaning = "weather"         // also moon, wind, temperature in words
	Temperature Meaning = "temperature"
	Measurement Meaning = "measurement" // Value.Heading says of what and in which unit
	// AboutMeasurement says more of the measurement before it; Value.Heading is
	// the term.
	AboutMeasurement Meaning = "about a measurement"
	Specimen         Meaning = "specimen" // voucher, dissection number
	Remarks          Meaning = "remarks"
	Certainty        Meaning = "identification certainty"
	Basis            Meaning = "basis of record"
	RecordID         Meaning = "record id" // a lasting id of the notebook's own
	Term             Meaning = "term"      // a Darwin Core term that no meaning above covers; Value.Heading is its name
	Ignored          Meaning = "ignored"   // recognised and left out: row numbers, totals
)

// Origin says how a value came to its draft.
type Origin string

const (
	FromCell    Origin = "cell"
	FromAbove   Origin = "carried down"
	FromSection Origin = "section line"
	FromHeading Origin = "table heading"
	FromPage    Origin = "page fact"
	FromSheet   Origin = "sheet name"
	FromFile    Origin = "file name"
	FromProject Origin = "project file"
	FromCover   Origin = "another sheet"
)

// Value is one value of a draft, as written.
type Value struct {
	Meaning Meaning
	// Text is the value with outer white space removed, never empty.
	Text string
	// Verbatim is set where Text was put together or repaired: what the cells
	// really say.
	Verbatim string
	// Raw and Kind are the cell's own (see notebook.Cell).
	Raw  string
	Kind notebook.Kind
	// Heading is the heading of the value's column as written.
	Heading string
	// Sex and Stage come from the heading of a count column ("m", "larvae").
	Sex, Stage string
	Ref        notebook.Ref
	From       Origin
	// Doubt is what layout itself noticed about the cell: spreadsheet damage,
	// a hidden column. The zero value is none.
	Doubt reading.Verdict
}

// Draft is one observation as written, before anything is read. A night on
// which nothing was caught is a draft without a name and with Empty set.
type Draft struct {
	Row    int
	Values []Value
	// Empty: the visit took place and nothing was found.
	Empty bool
	// Night: the page is a table of trap nights, so its single dates are
	// evenings by its own layout.
	Night bool
}

// Get returns the first value with the meaning.
func (d *Draft) Get(m Meaning) (*Value, bool) {
	for i := range d.Values {
		if d.Values[i].Meaning == m {
			return &d.Values[i], true
		}
	}
	return nil, false
}

// Outcome is what became of one source row. Every row has exactly one.
type Outcome struct {
	// Row is the source row, whole; valid only during the call.
	Row *notebook.Row
	// Drafts are the observations on the row: one in a list, several in a
	// table. They are valid only during the call, but whoever gets them may
	// keep the values of one, and give it other memory for the next.
	Drafts []Draft
	// Skip is why the row is no record, in a few plain words ("blank",
	// "title", "headings", "total", "struck through"); empty where there are
	// Drafts.
	Skip string
	// Notes are what was noticed about the row beyond its values.
	Notes []Note
	// Used and Left count the row's cells with text: used for a draft or to
	// understand the page, or left out for the reason.
	Used int
	Left map[string]int
}

// Note is something noticed about a cell, a column or the whole page.
type Note struct {
	reading.Verdict
	Ref notebook.Ref
	// Text is what the cell says.
	Text string
}
