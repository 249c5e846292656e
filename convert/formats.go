package convert

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"

	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/dwc"

	"github.com/paulmach/orb"
	"github.com/paulmach/orb/encoding/wkt"
	"github.com/paulmach/orb/geojson"
)

// Formats in which the records can be had beside the archive.
const (
	FormatCSV     = "csv"     // Darwin Core terms, one occurrence a row
	FormatXLSX    = "xlsx"    // a workbook for people, headings in words
	FormatGeoJSON = "geojson" // squares and points
)

// formatFiles are the files of the formats.
var formatFiles = map[string]string{FormatCSV: "records.csv", FormatXLSX: "records.xlsx", FormatGeoJSON: "records.geojson"}

// Formats lists the formats that a Job may ask for.
func Formats() []string { return []string{FormatCSV, FormatXLSX, FormatGeoJSON} }

// copyWriter writes the records that leave in one further format: one row a
// record or visit, which can be read back without loss.
type copyWriter interface {
	add(o *dwc.Occurrence, r *spool.Record) error
	close() error
}

// columns are those of a copy: terms, and after them measurements.
type columns struct {
	terms    []string
	measured []measuredColumn
}

// columnsOf are the columns that have a value.
func columnsOf(v *setView) columns {
	c := columns{terms: v.used.Columns("occurrenceID"), measured: v.measured.columns()}
	for _, term := range v.usedByEvents.Columns("eventID") {
		if _, known := dwc.TermIndex(term); known && !slices.Contains(c.terms, term) {
			c.terms = append(c.terms, term)
		}
	}
	return c
}

// newCopy opens the file of a format.
func newCopy(format string, c columns, out *stage.Folder) (copyWriter, error) {
	name, known := formatFiles[format]
	if !known {
		return nil, fmt.Errorf("--format %s: write one of %v", format, Formats())
	}
	file, err := out.Create(name)
	if err != nil {
		return nil, err
	}
	switch format {
	case FormatCSV:
		return newCSVCopy(file, c)
	case FormatXLSX:
		book, err := report.NewRecords(c.terms, c.measuredHeadings(), out.Temp())
		return &xlsxCopy{file, book, c}, err
	}
	return newGeoJSONCopy(file, c)
}

// csvCopy is plain Darwin Core text.
type csvCopy struct {
	file io.Closer
	w    *csv.Writer
	columns
	row []string
}

func newCSVCopy(file io.WriteCloser, c columns) (*csvCopy, error) {
	w := &csvCopy{file, csv.NewWriter(file), c, make([]string, len(c.terms))}
	return w, w.w.Write(append(slices.Clone(c.terms), c.measuredHeadings()...))
}

func (c *csvCopy) add(o *dwc.Occurrence, r *spool.Record) error {
	for i, term := range c.terms {
		c.row[i] = o.Get(term)
	}
	return c.w.Write(append(c.row, c.cells(r)...))
}

func (c *csvCopy) close() error {
	c.w.Flush()
	if err := c.w.Error(); err != nil {
		return err
	}
	return c.file.Close()
}

// xlsxCopy is the workbook for people.
type xlsxCopy struct {
	file io.WriteCloser
	book *report.Records
	columns
}

func (c *xlsxCopy) add(o *dwc.Occurrence, r *spool.Record) error {
	return c.book.Add(o, c.cells(r))
}

func (c *xlsxCopy) close() error {
	if err := c.book.Finish(c.file); err != nil {
		return err
	}
	return c.file.Close()
}

// geojsonCopy is a FeatureCollection (RFC 7946): a record's square, or its
// point where it has none. A record without a place is a feature without a
// geometry, as section 3.2 allows.
type geojsonCopy struct {
	file io.Closer
	w    *bufio.Writer
	columns
	first bool
}

func newGeoJSONCopy(file io.WriteCloser, c columns) (*geojsonCopy, error) {
	g := &geojsonCopy{file, bufio.NewWriter(file), c, true}
	_, err := g.w.WriteString(`{"type":"FeatureCollection","features":[`)
	return g, err
}

func (g *geojsonCopy) add(o *dwc.Occurrence, r *spool.Record) error {
	f := geojson.NewFeature(shapeOf(o))
	for _, term := range g.terms {
		if value := o.Get(term); value != "" {
			f.Properties[term] = value
		}
	}
	for i, value := range g.cells(r) {
		if value != "" {
			f.Properties[g.measured[i].heading] = value
		}
	}
	text, err := f.MarshalJSON()
	if err != nil {
		return err
	}
	if !g.first {
		g.w.WriteByte(',')
	}
	g.first = false
	g.w.WriteByte('\n')
	_, err = g.w.Write(text)
	return err
}

// shapeOf is the record's square, else its point; nil where it has neither, or
// none that a map can show.
func shapeOf(o *dwc.Occurrence) orb.Geometry {
	if o.FootprintWKT != "" && (o.FootprintSRS == "" || o.FootprintSRS == "EPSG:4326") {
		if shape, err := wkt.Unmarshal(o.FootprintWKT); err == nil {
			return shape
		}
	}
	lat, errLat := strconv.ParseFloat(o.DecimalLatitude, 64)
	lon, errLon := strconv.ParseFloat(o.DecimalLongitude, 64)
	if errLat != nil || errLon != nil {
		return nil
	}
	return orb.Point{lon, lat}
}

func (g *geojsonCopy) close() error {
	g.w.WriteString("\n]}\n")
	if err := g.w.Flush(); err != nil {
		return err
	}
	return g.file.Close()
}
