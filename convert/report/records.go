package report

import (
	"io"
	"slices"

	"fieldfare/convert/report/book"
	"fieldfare/dwc"
)

// wordsFor are the headings in words of the terms that people look for first,
// in the order of the workbook's columns. Every other term follows under its
// own name, so that the workbook can be read back without loss.
var wordsFor = []struct{ term, heading string }{
	{"eventDate", "Date"},
	{"scientificName", "Scientific name"},
	{"vernacularName", "Vernacular name"},
	{"individualCount", "Count"},
	{"sex", "Sex"},
	{"lifeStage", "Life stage"},
	{"locality", "Site"},
	{"verbatimCoordinates", "Grid reference"},
	{"county", "County"},
	{"recordedBy", "Recorder"},
	{"identifiedBy", "Determiner"},
	{"samplingProtocol", "Sampling method"},
	{"habitat", "Habitat"},
	{"occurrenceRemarks", "Remarks"},
	{"decimalLatitude", "Latitude"},
	{"decimalLongitude", "Longitude"},
	{"coordinateUncertaintyInMeters", "Coordinate uncertainty (m)"},
	{"occurrenceID", "Record id"},
}

// TermOf returns the term of a heading in words; empty where it is none.
func TermOf(heading string) string {
	for _, c := range wordsFor {
		if c.heading == heading {
			return c.term
		}
	}
	return ""
}

// Records is the workbook of the records for people, in the making.
type Records struct {
	w     *Workbook
	page  *page
	terms []string
	row   []string
}

const pageRecords = "Records"

// NewRecords begins the workbook for the terms that have a value; others are
// the headings of further columns. Temp is the folder for work files.
func NewRecords(columns, others []string, temp string) (*Records, error) {
	w, err := newBook(pageRecords, temp)
	if err != nil {
		return nil, err
	}
	r := &Records{w: w}
	p := &page{w: w, name: pageRecords, made: true}
	add := func(term, heading string, width float64) {
		r.terms = append(r.terms, term)
		p.headings = append(p.headings, heading)
		p.widths = append(p.widths, width)
	}
	for _, c := range wordsFor {
		if slices.Contains(columns, c.term) {
			add(c.term, c.heading, 20)
		}
	}
	for _, term := range columns {
		if !slices.Contains(r.terms, term) {
			add(term, term, 16)
		}
	}
	for _, h := range others {
		p.headings = append(p.headings, h)
		p.widths = append(p.widths, 16)
	}
	r.page, r.row = p, make([]string, len(p.headings))
	return r, nil
}

// Add adds a record, with its values of the further columns.
func (r *Records) Add(o *dwc.Occurrence, others []string) error {
	for i, term := range r.terms {
		r.row[i] = o.Get(term)
	}
	copy(r.row[len(r.terms):], others)
	return r.page.add(r.row)
}

// Finish writes the workbook.
func (r *Records) Finish(out io.Writer) error {
	defer r.w.file.Close()
	if err := r.page.finish(); err != nil {
		return err
	}
	return book.Write(r.w.file, out, r.w.temp)
}
