package spool

import "fieldfare/dwc"

// Reader decodes rows one after the other into the same memory. Neighbours have
// most of their parts in common, so that only what differs is filled in anew.
// It is for one goroutine.
type Reader struct {
	row   Row
	d     decoder
	cells int // where the row's cells begin
}

// NewReader returns a reader of rows that refer to the parts that have been kept
// so far; nil for none.
func NewReader(parts *Parts) *Reader { return &Reader{d: decoder{parts: parts.kept()}} }

// Read decodes a row without its cells. What it returns must not be changed but
// as Changed says, and is valid until the next call, but for its texts, findings
// and measurements.
func (r *Reader) Read(encoded []byte) (*Row, error) {
	d := &r.d
	d.s, d.at, d.bad = string(encoded), 0, false
	row := &r.row
	row.Sheet, row.Number, row.Skip, row.Cells = d.num(), d.num(), d.text(), nil
	r.cells = d.at
	for range d.size() {
		d.text()
	}
	if err := d.rest(row); err != nil {
		r.row = Row{} // it may be half filled
		return nil, err
	}
	return row, nil
}

// Changed is called where terms of the i-th record of the row have been given
// other values.
func (r *Reader) Changed(i int, terms *Terms) {
	own := &r.row.Records[i].Own // as terms of its own, they are read anew
	own[0] |= terms[0]
	own[1] |= terms[1]
}

// Copy makes a row that stays valid of the one that was read last, with its
// cells. The slices of into are used again.
func (r *Reader) Copy(into *Row) {
	records, cells := append(into.Records[:0], r.row.Records...), into.Cells
	*into = r.row
	d := decoder{s: r.d.s, at: r.cells}
	into.Records, into.Cells = records, d.texts(cells)
}

// terms gives a record, which may have those of another one, its parts and its
// own terms.
func (d *decoder) terms(r *Record) {
	stale := r.Own // the terms that are to be filled anew
	var fresh [Kinds]bool
	for kind := range r.Parts {
		id := d.num()
		if id < 0 || id > len(d.parts) {
			d.bad = true
			return
		}
		var p *Part
		if id > 0 {
			p = d.parts[id-1]
		}
		old := r.Parts[kind]
		if p == old {
			continue
		}
		stale.join(old)
		stale.join(p)
		r.Parts[kind], fresh[kind] = p, true
	}
	for i := range stale.all {
		*r.Occurrence.Field(i) = ""
	}
	for kind, p := range r.Parts {
		switch {
		case p == nil:
		case fresh[kind]:
			p.Fill(&r.Occurrence)
		case p.set.Meets(&stale):
			p.fillSome(&r.Occurrence, &stale)
		}
	}
	r.Own = Terms{}
	for range d.size() {
		i := int(d.byte())
		if i >= numTerms {
			d.bad = true
			return
		}
		*r.Occurrence.Field(i) = d.text()
		r.Own.Add(i)
	}
}

// fillSome gives the occurrence those of the part's terms that are in the set.
func (p *Part) fillSome(o *dwc.Occurrence, set *Terms) {
	for i, term := range p.Terms {
		if set.Has(int(term)) {
			*o.Field(int(term)) = p.Values[i]
		}
	}
}
