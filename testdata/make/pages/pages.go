// Package pages makes notebook pages of known contents in many layouts, each
// from a seed, so that a reader can be held to what stands on them.
package pages

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"time"

	"github.com/xuri/excelize/v2"
)

// Record is one record on a page, as a person reads it.
type Record struct {
	Row   int    // of the cell that holds the count, from 1
	Taxon string // scientific name
	Date  string // ISO 8601
	Count int
	Place string
}

// Page is a page and what stands on it.
type Page struct {
	Seed   uint64
	Layout string
	// Workbook tells whether the page is written as a workbook rather than as
	// delimited text.
	Workbook bool
	Cells    [][]any // text, whole numbers and, for workbooks, time.Time
	Records  []Record
}

// New makes the page of a seed. Every seed has one page for ever.
func New(seed uint64) *Page {
	m := &maker{Rand: rand.New(rand.NewPCG(seed, 17)), page: &Page{Seed: seed}}
	l := layouts[seed%uint64(len(layouts))]
	m.page.Layout = l.name
	m.page.Workbook = seed/uint64(len(layouts))%2 == 1
	m.contents()
	l.make(m)
	return m.page
}

// Bytes returns the page as a file, and the ending of its name.
func (p *Page) Bytes() ([]byte, string, error) {
	if p.Workbook {
		b, err := p.xlsx()
		return b, ".xlsx", err
	}
	b, err := p.CSV()
	return b, ".csv", err
}

// CSV returns the page as delimited text.
func (p *Page) CSV() ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	for _, row := range p.Cells {
		line := make([]string, len(row))
		for i, v := range row {
			switch v := v.(type) {
			case nil:
			case time.Time:
				line[i] = v.Format("02/01/2006")
			default:
				line[i] = fmt.Sprint(v)
			}
		}
		if len(line) == 0 {
			line = []string{"", ""} // a blank line of one field could not be told from none
		}
		if err := w.Write(line); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

func (p *Page) xlsx() ([]byte, error) {
	f := excelize.NewFile()
	defer f.Close()
	style, err := f.NewStyle(&excelize.Style{NumFmt: 14}) // the built-in number format of a date
	if err != nil {
		return nil, err
	}
	for r, row := range p.Cells {
		for c, v := range row {
			if v == nil || v == "" {
				continue
			}
			cell, err := excelize.CoordinatesToCellName(c+1, r+1)
			if err != nil {
				return nil, err
			}
			if err := f.SetCellValue("Sheet1", cell, v); err != nil {
				return nil, err
			}
			if _, date := v.(time.Time); date {
				if err := f.SetCellStyle("Sheet1", cell, cell, style); err != nil {
					return nil, err
				}
			}
		}
	}
	b, err := f.WriteToBuffer()
	if err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
