package spool

import (
	"math/bits"
	"sync"

	"fieldfare/dwc"
	"fieldfare/validate"
)

// Kind is what a part of a record is about.
type Kind uint8

// The parts that many records share: how, when, what, where and who.
const (
	Method Kind = iota
	Date
	Taxon
	Place
	People
	Kinds = int(iota)
)

// Part is some of a record's terms that go together, and that many records
// have alike: all that a name or a place as written turned into. Records refer
// to it, so that the spool is narrow and a record is read back quickly. It must
// not be changed.
type Part struct {
	Kind   Kind
	Terms  []uint8 // by their places in dwc.Terms
	Values []string
	// Facts are those of its kind that go with the terms.
	Facts validate.Facts
	id    int // from 1; 0 for one that is not kept
	set   Terms
}

// NewPart returns the part with the terms that an occurrence has got since
// before, and with those of the facts that are of its kind.
func NewPart(kind Kind, before, after *dwc.Occurrence, facts *validate.Facts) *Part {
	p := &Part{Kind: kind}
	(&Part{Kind: kind, Facts: *facts}).FillFacts(&p.Facts)
	for i := range numTerms {
		if value := *after.Field(i); value != *before.Field(i) {
			p.Terms = append(p.Terms, uint8(i))
			p.Values = append(p.Values, value)
			p.set.Add(i)
		}
	}
	return p
}

// Fill gives the occurrence the part's terms.
func (p *Part) Fill(o *dwc.Occurrence) {
	texts := o.Texts()
	for i, term := range p.Terms {
		texts[term] = p.Values[i]
	}
}

// FillFacts gives a record's facts those of the part. A record is blurred as
// much as the taxon or the place needs.
func (p *Part) FillFacts(to *validate.Facts) {
	from := &p.Facts
	switch p.Kind {
	case Method:
		to.Light = from.Light
	case Date:
		to.Start, to.End, to.Dated, to.Night = from.Start, from.End, from.Dated, from.Night
	case Taxon:
		to.Taxon, to.Blur = from.Taxon, max(to.Blur, from.Blur)
	case Place:
		to.Placed, to.Latitude, to.Longitude, to.Radius = from.Placed, from.Latitude, from.Longitude, from.Radius
		to.SquareSize, to.Reference, to.AtSea = from.SquareSize, from.Reference, from.AtSea
		to.Blur = max(to.Blur, from.Blur)
	}
}

// ID numbers the parts that are kept, from 1.
func (p *Part) ID() int { return p.id }

// size is about how many bytes a part takes.
func (p *Part) size() int {
	n := 300 + 20*len(p.Values) + len(p.Facts.Reference)
	for _, v := range p.Values {
		n += len(v)
	}
	return n
}

// partMemory is how many bytes the parts of one kind may take together. Those
// that come later are written out with each record.
const partMemory = 8 << 20

// Parts are the parts that the rows of a spool refer to, in memory. Several
// goroutines may use them.
type Parts struct {
	mu   sync.RWMutex
	list []*Part // by id - 1
	used [Kinds]int
}

// Keep takes a part in, so that records can refer to it. It may be called
// before the part is used by others only.
func (l *Parts) Keep(p *Part) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.used[p.Kind] > partMemory {
		return
	}
	l.used[p.Kind] += p.size()
	l.list = append(l.list, p)
	p.id = len(l.list)
}

// Len returns how many parts are kept.
func (l *Parts) Len() int {
	l.mu.RLock()
	defer l.mu.RUnlock()
	return len(l.list)
}

// kept returns the parts kept so far, to be read only.
func (l *Parts) kept() []*Part {
	if l == nil {
		return nil
	}
	l.mu.RLock()
	defer l.mu.RUnlock()
	return l.list
}

// Terms is a set of terms, by their places in dwc.Terms.
type Terms [2]uint64

func init() {
	if numTerms > len(Terms{})*64 {
		panic("spool: more terms than a set of them holds")
	}
}

// Add puts a term into the set.
func (t *Terms) Add(i int) { t[i>>6] |= 1 << (i & 63) }

// Has tells whether the set has a term.
func (t *Terms) Has(i int) bool { return t[i>>6]>>(i&63)&1 != 0 }

// Meets tells whether two sets have a term in common.
func (t *Terms) Meets(u *Terms) bool { return t[0]&u[0] != 0 || t[1]&u[1] != 0 }

// join puts a part's terms into the set; those of nil are none.
func (t *Terms) join(p *Part) {
	if p != nil {
		t[0] |= p.set[0]
		t[1] |= p.set[1]
	}
}

// all yields the terms of the set.
func (t *Terms) all(yield func(int) bool) {
	for word, rest := range t {
		for ; rest != 0; rest &= rest - 1 {
			if !yield(word<<6 + bits.TrailingZeros64(rest)) {
				return
			}
		}
	}
}
