package spool

import (
	"encoding/binary"
	"errors"
	"math"

	"fieldfare/convert/reading"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// The encoding is private to one run: lengths and numbers as varints, texts
// as length and bytes, the non-empty terms of an occurrence as index and
// text.

var (
	numTerms            = len(dwc.Terms())
	numMeasurementTerms = len(dwc.TermsOf(dwc.RowMeasurement))
)

type encoder struct{ b []byte }

// num writes a number as encoding/binary's AppendVarint does.
func (e *encoder) num(n int) {
	if u := uint64(n)<<1 ^ uint64(n>>63); u < 0x80 {
		e.b = append(e.b, byte(u))
	} else {
		e.b = binary.AppendUvarint(e.b, u)
	}
}

func (e *encoder) text(s string)   { e.num(len(s)); e.b = append(e.b, s...) }
func (e *encoder) float(f float64) { e.b = binary.LittleEndian.AppendUint64(e.b, math.Float64bits(f)) }

func (e *encoder) texts(list []string) {
	e.num(len(list))
	for _, s := range list {
		e.text(s)
	}
}

func (e *encoder) flags(flags ...bool) {
	n := 0
	for i, f := range flags {
		if f {
			n |= 1 << i
		}
	}
	e.num(n)
}

func (e *encoder) findings(list []reading.Finding) {
	e.num(len(list))
	for i := range list {
		f := &list[i]
		e.num(int(f.State))
		e.text(f.Code)
		e.text(f.Message)
		e.texts(f.Candidates)
		e.text(f.About)
		e.text(f.Written)
		e.texts(f.Cells)
	}
}

func (e *encoder) row(r *Row) {
	e.num(r.Sheet)
	e.num(r.Number)
	e.text(r.Skip)
	e.texts(r.Cells)
	e.findings(r.Findings)
	e.num(len(r.Records))
	for i := range r.Records {
		e.record(&r.Records[i])
	}
}

// terms writes the parts that the record refers to, then the terms that they
// do not say.
func (e *encoder) terms(r *Record) {
	var stack [256]uint8
	own, texts := stack[:0], r.Occurrence.Texts()
	var said Terms
	for _, p := range r.Parts {
		if p == nil || p.id == 0 {
			e.b = append(e.b, 0)
			continue
		}
		e.num(p.id)
		said[0] |= p.set[0]
		said[1] |= p.set[1]
		for i, term := range p.Terms {
			if texts[term] != p.Values[i] {
				own = append(own, term)
			}
		}
	}
	for i, text := range texts {
		if text != "" && !said.Has(i) {
			own = append(own, uint8(i))
		}
	}
	e.num(len(own))
	for _, i := range own {
		e.b = append(e.b, i)
		e.text(texts[i])
	}
}

func (e *encoder) record(r *Record) {
	e.terms(r)
	f := &r.Facts
	asParts := *f == r.factsOfParts()
	e.flags(r.EmptyVisit, asParts, f.Counted, f.Specimen)
	e.num(int(f.Count))
	if !asParts {
		e.facts(f)
	}
	e.b = append(e.b, r.Content[:]...)
	e.num(r.Cell.Col)
	e.num(r.Cell.Row)
	e.findings(r.Findings)
	e.num(len(r.Measurements))
	for i := range r.Measurements {
		m := &r.Measurements[i]
		e.flags(m.Event)
		for j := range numMeasurementTerms {
			e.text(*m.Field(j))
		}
	}
}

// factsOfParts are the record's facts as the parts that are kept have them,
// and those that no part has as they are.
func (r *Record) factsOfParts() validate.Facts {
	f := validate.Facts{Count: r.Facts.Count, Counted: r.Facts.Counted, Specimen: r.Facts.Specimen}
	for _, p := range r.Parts {
		if p != nil && p.id != 0 {
			p.FillFacts(&f)
		}
	}
	return f
}

// facts writes all facts but those of the count and of a specimen.
func (e *encoder) facts(f *validate.Facts) {
	e.flags(f.Dated, f.Night, f.Placed, f.Light, f.Taxon.Listed, f.Taxon.NeedsNote, f.Taxon.NeedsSpecimen, f.AtSea)
	e.num(int(f.Start))
	e.num(int(f.End))
	e.float(f.Latitude)
	e.float(f.Longitude)
	e.float(float64(f.Radius))
	e.num(int(f.SquareSize))
	for _, n := range [...]int{int(f.Taxon.Flight), int(f.Taxon.Eggs), int(f.Taxon.Larvae), int(f.Taxon.Pupae), int(f.Taxon.Most)} {
		e.num(n)
	}
	e.num(int(f.Taxon.Number))
	e.text(f.Reference)
	e.num(int(f.Blur))
}

// decoder reads from one string, of which all texts are parts, so that a row
// costs one allocation however many terms it has.
type decoder struct {
	s     string
	at    int
	bad   bool
	parts []*Part // that the rows may refer to
}

var errSpool = errors.New("the temporary file was changed while Fieldfare was working")

func (d *decoder) num() int {
	var n uint64
	for shift := 0; ; shift += 7 {
		if d.at >= len(d.s) || shift > 63 {
			d.bad = true
			return 0
		}
		c := d.s[d.at]
		d.at++
		n |= uint64(c&0x7f) << shift
		if c < 0x80 {
			break
		}
	}
	return int(n>>1) ^ -int(n&1) // zigzag, as encoding/binary writes it
}

func (d *decoder) bytes(n int) string {
	if n < 0 || n > len(d.s)-d.at {
		d.bad = true
		return ""
	}
	d.at += n
	return d.s[d.at-n : d.at]
}

func (d *decoder) byte() byte {
	if d.at >= len(d.s) {
		d.bad = true
		return 0
	}
	d.at++
	return d.s[d.at-1]
}

func (d *decoder) text() string { return d.bytes(d.num()) }

func (d *decoder) float() float64 {
	b := d.bytes(8)
	if len(b) < 8 {
		return 0
	}
	var n uint64
	for i := 7; i >= 0; i-- {
		n = n<<8 | uint64(b[i])
	}
	return math.Float64frombits(n)
}

// size reads a list's length; every entry takes at least a byte.
func (d *decoder) size() int {
	n := d.num()
	if n < 0 || n > len(d.s)-d.at {
		d.bad = true
		return 0
	}
	return n
}

func (d *decoder) texts(into []string) []string {
	into = into[:0]
	for range d.size() {
		into = append(into, d.text())
	}
	return into
}

func (d *decoder) findings() []reading.Finding {
	n := d.size()
	if n == 0 {
		return nil
	}
	list := make([]reading.Finding, 0, n)
	for range n {
		var f reading.Finding
		f.State = reading.State(d.num())
		f.Code, f.Message = d.text(), d.text()
		f.Candidates = d.texts(nil)
		f.About, f.Written = d.text(), d.text()
		f.Cells = d.texts(nil)
		list = append(list, f)
	}
	return list
}

func (d *decoder) row(r *Row) error {
	r.Sheet, r.Number, r.Skip = d.num(), d.num(), d.text()
	r.Cells = d.texts(r.Cells)
	return d.rest(r)
}

// rest reads what follows a row's cells.
func (d *decoder) rest(r *Row) error {
	r.Findings = d.findings()
	n := d.size()
	if cap(r.Records) < n {
		r.Records = make([]Record, n)
	}
	r.Records = r.Records[:n]
	for i := range r.Records {
		d.record(&r.Records[i])
	}
	if d.bad || d.at != len(d.s) {
		return errSpool
	}
	return nil
}

// facts reads what the encoder's facts writes.
func (d *decoder) facts(f *validate.Facts) {
	flags := d.num()
	for i, p := range []*bool{&f.Dated, &f.Night, &f.Placed, &f.Light, &f.Taxon.Listed, &f.Taxon.NeedsNote, &f.Taxon.NeedsSpecimen, &f.AtSea} {
		*p = flags&(1<<i) != 0
	}
	f.Start, f.End = int32(d.num()), int32(d.num())
	f.Latitude, f.Longitude, f.Radius = d.float(), d.float(), float32(d.float())
	f.SquareSize = int32(d.num())
	f.Taxon.Flight, f.Taxon.Eggs, f.Taxon.Larvae, f.Taxon.Pupae = uint16(d.num()), uint16(d.num()), uint16(d.num()), uint16(d.num())
	f.Taxon.Most, f.Taxon.Number = int32(d.num()), int32(d.num())
	f.Reference, f.Blur = d.text(), int32(d.num())
}

func (d *decoder) record(r *Record) {
	d.terms(r)
	flags := d.num()
	r.EmptyVisit = flags&1 != 0
	r.Facts.Counted, r.Facts.Specimen, r.Facts.Count = flags&4 != 0, flags&8 != 0, int32(d.num())
	if r.Facts = r.factsOfParts(); flags&2 == 0 {
		d.facts(&r.Facts)
	}
	copy(r.Content[:], d.bytes(len(r.Content)))
	r.Cell.Col, r.Cell.Row = d.num(), d.num()
	r.Findings, r.Measurements = d.findings(), nil
	if n := d.size(); n > 0 {
		r.Measurements = make([]Measurement, n)
		for i := range r.Measurements {
			m := &r.Measurements[i]
			m.Event = d.num() == 1
			for j := range numMeasurementTerms {
				*m.Field(j) = d.text()
			}
		}
	}
}
