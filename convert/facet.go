package convert

import (
	"bytes"
	"encoding/binary"
	"sync"
	"sync/atomic"

	"fieldfare/convert/layout"
	"fieldfare/convert/spool"
	"fieldfare/validate"
)

// Notebooks repeat themselves: the place, the night and the name of one row
// are those of many others. What a step of the reading makes of its values is
// remembered whole, where there was nothing to ask, and given to the next row
// that has the same values.

// facet is what one step made of a draft's values.
type facet struct {
	clean bool // there was nothing to ask; else each draft is read for itself
	part  *spool.Part
	facts validate.Facts
	// beside, lit and read as in draft; the value read is in the place of the
	// at-th value of the draft that the step is about, -1 for none.
	beside, lit string
	read        *layout.Value
	at          int
	used        atomic.Bool                // by a second row
	kept        atomic.Pointer[spool.Part] // the part as the spool has it; nil before
}

// facets are what the workers have read so far, by the values it was made of.
type facets struct {
	parts *spool.Parts
	kinds [spool.Kinds]struct {
		sync.RWMutex
		known map[string]*facet
	}
}

// facetsKept is how many different facets of a kind are remembered.
const facetsKept = 8192

func newFacets(parts *spool.Parts) *facets {
	f := &facets{parts: parts}
	for kind := range f.kinds {
		f.kinds[kind].known = map[string]*facet{}
	}
	return f
}

// find returns what is known of a key; nil for nothing. A part that is met
// again is kept for the spool.
func (m *facets) find(kind spool.Kind, key []byte) *facet {
	k := &m.kinds[kind]
	k.RLock()
	f := k.known[string(key)]
	k.RUnlock()
	if f != nil && f.part != nil && f.used.CompareAndSwap(false, true) {
		kept := *f.part
		if !trespasses(&kept) {
			m.parts.Keep(&kept)
		}
		f.kept.Store(&kept)
	}
	return f
}

func (m *facets) add(kind spool.Kind, key []byte, f *facet) {
	k := &m.kinds[kind]
	k.Lock()
	defer k.Unlock()
	if len(k.known) >= facetsKept {
		clear(k.known)
	}
	k.known[string(key)] = f
}

// lastFacet is the facet of the draft before.
type lastFacet struct {
	key   []byte
	facet *facet
}

// facetKeys are the values of a draft, by the step that reads them.
type facetKeys struct {
	keys   [spool.Kinds][]byte
	values [spool.Kinds][]int // by their places in the draft
}

// kindOf returns the step that reads the values of a meaning.
func kindOf(m layout.Meaning) (kind spool.Kind, ok bool) {
	switch m {
	case layout.Method, layout.Effort:
		return spool.Method, true
	case layout.Date, layout.EndDate, layout.Time, layout.EndTime:
		return spool.Date, true
	case layout.Taxon, layout.Scientific, layout.Vernacular, layout.Authorship, layout.TaxonNumber, layout.Group:
		return spool.Taxon, true
	case layout.Site, layout.GridRef, layout.Latitude, layout.Longitude, layout.Uncertainty, layout.ViceCounty, layout.County, layout.Country, layout.Elevation:
		return spool.Place, true
	case layout.Recorder, layout.Determiner, layout.Verifier:
		return spool.People, true
	}
	return 0, false
}

// set gathers the values of a draft. A key holds all of a value but its
// address, and the page, on which some of the reading depends.
func (k *facetKeys) set(d *draft) {
	for kind := range k.keys {
		k.keys[kind] = binary.AppendUvarint(k.keys[kind][:0], uint64(d.sheet.index<<1|d.sheet.walk&1))
		k.values[kind] = k.values[kind][:0]
	}
	for i := range d.Values {
		v := &d.Values[i]
		kind, ok := kindOf(v.Meaning)
		if !ok {
			continue
		}
		key := k.keys[kind]
		for _, text := range [...]string{string(v.Meaning), v.Text, v.Verbatim, v.Raw, v.Heading, string(v.From)} {
			key = binary.AppendUvarint(key, uint64(len(text)))
			key = append(key, text...)
		}
		k.keys[kind] = append(key, byte(v.Kind), flag(v.Ref.Row > 0))
		k.values[kind] = append(k.values[kind], i)
	}
}

func flag(b bool) byte {
	if b {
		return 1
	}
	return 0
}

// step reads some of a draft's values, or recalls what was made of the same
// values before. Beside is what else the reading depends on.
func (in *interpreter) step(d *draft, kind spool.Kind, read func(*draft), beside string) {
	if in.answers.Len() > 0 {
		read(d) // an answer may be about several values together
		return
	}
	k := &in.keys
	k.keys[kind] = append(append(k.keys[kind], 0), beside...)
	key, last := k.keys[kind], &in.last[kind]
	f := last.facet
	if f == nil || f.part != nil && f.kept.Load() == nil || !bytes.Equal(key, last.key) {
		f = in.facets.find(kind, key)
		if f == nil {
			f = in.facet(d, kind, read)
			in.facets.add(kind, key, f)
		}
		last.facet, last.key = f, append(last.key[:0], key...)
	}
	if !f.clean {
		read(d)
		return
	}
	f.fill(d, kind, k.values[kind])
}

// facet reads a draft's values on a draft that has nothing else yet.
func (in *interpreter) facet(d *draft, kind spool.Kind, read func(*draft)) *facet {
	alone := draft{Draft: d.Draft, sheet: d.sheet, genus: d.genus}
	alone.facts.Light, alone.o.Month = d.facts.Light, d.o.Month
	before, facts := alone.o, alone.facts
	read(&alone)
	if len(alone.findings) > 0 || alone.leaveOut || alone.refHeld {
		return &facet{}
	}
	f := &facet{clean: true, part: spool.NewPart(kind, &before, &alone.o), facts: alone.facts, beside: alone.beside, lit: alone.lit, at: -1}
	if kind != spool.Method {
		f.facts.Light = facts.Light
	}
	switch kind {
	case spool.Date:
		f.read = alone.read.date.value
	case spool.Taxon:
		f.read = alone.read.name.value
	case spool.Place:
		f.read = alone.read.place.value
	}
	if f.read != nil {
		for n, i := range in.keys.values[kind] {
			if d.Values[i].Ref == f.read.Ref {
				f.at = n
				break
			}
		}
		kept := *f.read
		f.read = &kept
	}
	return f
}

// fill gives a draft what the facet holds, as its step would have done.
func (f *facet) fill(d *draft, kind spool.Kind, values []int) {
	f.part.Fill(&d.o)
	d.parts[kind] = f.kept.Load()
	from, to := &f.facts, &d.facts
	read := readValue{value: f.read}
	if f.at >= 0 {
		read.at = &d.Values[values[f.at]]
	}
	switch kind {
	case spool.Method:
		to.Light = from.Light
	case spool.Date:
		to.Start, to.End, to.Dated, to.Night = from.Start, from.End, from.Dated, from.Night
		d.lit, d.read.date = f.lit, read
	case spool.Taxon:
		to.Taxon, to.Blur = from.Taxon, max(to.Blur, from.Blur)
		d.beside, d.read.name = f.beside, read
	case spool.Place:
		to.Placed, to.Latitude, to.Longitude, to.Radius = from.Placed, from.Latitude, from.Longitude, from.Radius
		to.SquareSize, to.Reference, to.AtSea = from.SquareSize, from.Reference, from.AtSea
		to.Blur = max(to.Blur, from.Blur)
		d.read.place = read
	}
}

// readValue is a value as it was read. At, if not nil, is the value of the
// draft in whose place it stands, where it was read for another draft.
type readValue struct{ value, at *layout.Value }

// here returns the value with its address in this draft; nil where there is
// none.
func (r readValue) here() *layout.Value {
	if r.at == nil {
		return r.value
	}
	v := *r.value
	v.Ref = r.at.Ref
	return &v
}

// flags tells cases apart in a key.
func flags(set ...bool) string {
	n := 0
	for i, f := range set {
		if f {
			n |= 1 << i
		}
	}
	return "0123456789"[n : n+1]
}
