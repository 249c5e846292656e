package convert

import (
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// rowText makes the rows of a table of the archive from records as they leave.
// Records share most of their text with others, so the text of a part is made
// once, from the first record that leaves with it. A blurred record has no
// part: all of its text is made from what Blur left.
type rowText struct {
	columns []string
	runs    []columnRun
}

// columnRun are neighbouring columns whose terms are those of one part, or of
// no part.
type columnRun struct {
	fields []int // by their places in dwc.Terms
	kind   int   // -1 for no part
	set    spool.Terms
	made   [][]byte // the text, by the part's ID
}

// newRowText prepares for a table with the columns, which must be terms of an
// occurrence.
func newRowText(columns []string) *rowText {
	t := &rowText{columns: columns}
	for _, column := range columns {
		i, ok := dwc.TermIndex(column)
		if !ok {
			panic("convert: " + column + " is no term of an occurrence")
		}
		kind := int(partOfTerm[i])
		if n := len(t.runs); n == 0 || t.runs[n-1].kind != kind {
			t.runs = append(t.runs, columnRun{kind: kind})
		}
		run := &t.runs[len(t.runs)-1]
		run.fields = append(run.fields, i)
		run.set.Add(i)
	}
	return t
}

// append appends the row of a record, o being what leaves of it.
func (t *rowText) append(b []byte, o *dwc.Occurrence, r *spool.Record) []byte {
	for i := range t.runs {
		run := &t.runs[i]
		if i > 0 {
			b = append(b, '\t')
		}
		if run.kind >= 0 && r.Facts.Blur == 0 {
			if p := r.Parts[run.kind]; p != nil && !r.Own.Meets(&run.set) {
				b = append(b, run.of(p, o)...)
				continue
			}
		}
		b = run.append(b, o)
	}
	return b
}

// of returns the text of a part, which o has.
func (run *columnRun) of(p *spool.Part, o *dwc.Occurrence) []byte {
	for p.ID() >= len(run.made) {
		run.made = append(run.made, make([][]byte, max(64, len(run.made)))...)
	}
	text := &run.made[p.ID()]
	if *text == nil {
		*text = run.append(make([]byte, 0, 128), o)
	}
	return *text
}

func (run *columnRun) append(b []byte, o *dwc.Occurrence) []byte {
	for i, field := range run.fields {
		if i > 0 {
			b = append(b, '\t')
		}
		b = dwc.AppendField(b, *o.Field(field))
	}
	return b
}

// partTerms are the terms that belong to each part and to no other. What a
// part says beyond these is written anew in each row.
var partTerms = [spool.Kinds][]string{
	spool.Method: {"samplingProtocol", "sampleSizeValue", "sampleSizeUnit", "samplingEffort"},
	spool.Date:   {"eventDate", "eventTime", "year", "month", "day", "verbatimEventDate"},
	spool.Taxon: {
		"verbatimIdentification", "taxonID", "scientificNameID", "scientificName", "kingdom", "phylum", "class", "order", "superfamily", "family", "subfamily", "tribe",
		"genus", "subgenus", "specificEpithet", "infraspecificEpithet", "taxonRank", "scientificNameAuthorship", "vernacularName", "nomenclaturalCode",
	},
	spool.Place: {
		"country", "countryCode", "county", "higherGeography", "locality", "verbatimLocality", "minimumElevationInMeters", "maximumElevationInMeters",
		"verbatimElevation", "decimalLatitude", "decimalLongitude", "geodeticDatum", "coordinateUncertaintyInMeters", "coordinatePrecision",
		"verbatimCoordinates", "verbatimLatitude", "verbatimLongitude", "verbatimCoordinateSystem", "verbatimSRS", "footprintWKT", "footprintSRS",
		"georeferenceProtocol", "georeferenceSources", "georeferenceRemarks",
	},
}

// partOfTerm has the part that a term belongs to, by its place in dwc.Terms;
// -1 for none.
var partOfTerm = func() []int8 {
	list := make([]int8, len(dwc.Terms()))
	for i := range list {
		list[i] = -1
	}
	for kind, terms := range partTerms {
		for _, term := range terms {
			i, ok := dwc.TermIndex(term)
			if !ok {
				panic("convert: no term " + term)
			}
			list[i] = int8(kind)
		}
	}
	return list
}()

// trespasses tells whether a part says a term that belongs to another.
func trespasses(p *spool.Part) bool {
	for _, term := range p.Terms {
		if owner := partOfTerm[term]; owner >= 0 && owner != int8(p.Kind) {
			return true
		}
	}
	return false
}
