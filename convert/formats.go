package convert

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"

	"fieldfare/convert/report"
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

// copyWriter writes the records that leave in one further format.
type copyWriter interface {
	add(o *dwc.Occurrence) error
	close() error
}

// newCopy opens the file of a format. The columns are terms.
func newCopy(format string, columns []string, out *stage.Folder) (copyWriter, error) {
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
		return newCSVCopy(file, columns)
	case FormatXLSX:
		book, err := report.NewRecords(columns)
		return &xlsxCopy{file, book}, err
	}
	return newGeoJSONCopy(file)
}

// csvCopy is plain Darwin Core text.
type csvCopy struct {
	file    io.Closer
	w       *csv.Writer
	columns []string
	row     []string
}

func newCSVCopy(file io.WriteCloser, columns []string) (*csvCopy, error) {
	c := &csvCopy{file, csv.NewWriter(file), columns, make([]string, len(columns))}
	return c, c.w.Write(columns)
}

func (c *csvCopy) add(o *dwc.Occurrence) error {
	for i, term := range c.columns {
		c.row[i] = o.Get(term)
	}
	return c.w.Write(c.row)
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
}

func (c *xlsxCopy) add(o *dwc.Occurrence) error { return c.book.Add(o) }

func (c *xlsxCopy) close() error {
	if err := c.book.Finish(c.file); err != nil {
		return err
	}
	return c.file.Close()
}

// geojsonCopy is a FeatureCollection (RFC 7946): a record's square, or its
// point where it has none. Records without a place are left out, since a map
// has no room for them.
type geojsonCopy struct {
	file  io.Closer
	w     *bufio.Writer
	first bool
}

func newGeoJSONCopy(file io.WriteCloser) (*geojsonCopy, error) {
	g := &geojsonCopy{file, bufio.NewWriter(file), true}
	_, err := g.w.WriteString(`{"type":"FeatureCollection","features":[`)
	return g, err
}

// geojsonTerms are the properties of a feature.
var geojsonTerms = []string{"occurrenceID", "scientificName", "vernacularName", "eventDate", "individualCount", "organismQuantity", "sex", "lifeStage",
	"recordedBy", "locality", "verbatimCoordinates", "coordinateUncertaintyInMeters", "dataGeneralizations", "license", "rightsHolder"}

func (g *geojsonCopy) add(o *dwc.Occurrence) error {
	var shape orb.Geometry
	var err error
	switch {
	case o.FootprintWKT != "":
		shape, err = wkt.Unmarshal(o.FootprintWKT)
	case o.DecimalLatitude != "":
		shape, err = wkt.Unmarshal("POINT(" + o.DecimalLongitude + " " + o.DecimalLatitude + ")")
	default:
		return nil
	}
	if err != nil {
		return fmt.Errorf("the place of the record %s is no shape that a map can show", o.OccurrenceID)
	}
	f := geojson.NewFeature(shape)
	for _, term := range geojsonTerms {
		if value := o.Get(term); value != "" {
			f.Properties[term] = value
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

func (g *geojsonCopy) close() error {
	g.w.WriteString("\n]}\n")
	if err := g.w.Flush(); err != nil {
		return err
	}
	return g.file.Close()
}
