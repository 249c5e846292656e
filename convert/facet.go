package convert

import (
	"hash/maphash"
	"strings"
	"sync"
	"sync/atomic"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
)

// Notebooks repeat themselves: the place, the night and the name of one row
// are those of many others. What a step of the reading makes of its values is
// remembered whole, where there was nothing to ask, and given to the next row
// that has the same values.

// facet is what one step made of a draft's values.
type facet struct {
	of    facetKey
	hash  uint64
	next  *facet // another with the same hash
	clean bool   // there was nothing to ask; else each draft is read for itself
	part  *spool.Part
	// beside, lit and read as in draft; the value read is in the place of the
	// at-th value of the draft that the step is about, -1 for none.
	beside, lit string
	read        *layout.Value
	at          int
	written     []byte                     // the values as they enter the record's fingerprint
	harmless    []harmless                 // terms of the part that hold nothing to scrub
	used        atomic.Bool                // by a second row
	kept        atomic.Pointer[spool.Part] // the part as the spool has it; nil before
}

// facetKey is all that a step's reading depends on: the page, the values but
// for their addresses, and what else was known.
type facetKey struct {
	sheet  *sheetRun
	walk   int
	values []layout.Value
	placed []bool // whether the value has an address at all
	beside beside
}

// beside is what else the reading of a step depends on.
type beside struct {
	light, night, empty bool
	month, genus        string
}

// fits tells whether those of the draft's values, read beside the same, are
// what the key stands for.
func (k *facetKey) fits(d *draft, values []int, b *beside) bool {
	if k.sheet != d.sheet || k.walk != d.sheet.walk || len(values) != len(k.values) || k.beside != *b {
		return false
	}
	for n, i := range values {
		v, w := &d.Values[i], &k.values[n]
		if v.Text != w.Text || v.Verbatim != w.Verbatim || v.Raw != w.Raw || v.Kind != w.Kind || v.Ref.Row > 0 != k.placed[n] ||
			v.Meaning != w.Meaning || v.Heading != w.Heading || v.From != w.From || v.Sex != w.Sex || v.Stage != w.Stage {
			return false
		}
	}
	return true
}

func keyOf(d *draft, values []int, b *beside) facetKey {
	k := facetKey{sheet: d.sheet, walk: d.sheet.walk, beside: *b}
	k.beside.genus = strings.Clone(b.genus)
	for _, i := range values {
		v := d.Values[i]
		k.placed = append(k.placed, v.Ref.Row > 0)
		v.Text, v.Verbatim, v.Raw = strings.Clone(v.Text), strings.Clone(v.Verbatim), strings.Clone(v.Raw) // not the whole line
		v.Ref, v.Doubt = notebook.Ref{}, reading.Verdict{}
		k.values = append(k.values, v)
	}
	return k
}

// facetSeed is of the hashes by which facets are found; nothing else depends
// on them.
var facetSeed = maphash.MakeSeed()

// hashOf tells most keys of a kind apart.
func hashOf(d *draft, values []int, b *beside) uint64 {
	const odd = 0x9E3779B97F4A7C15 // 2^64 over the golden ratio
	h := uint64(len(values))
	for _, i := range values {
		h = (h ^ maphash.String(facetSeed, d.Values[i].Text)) * odd
	}
	for _, text := range [...]string{b.month, b.genus} {
		if text != "" {
			h = (h ^ maphash.String(facetSeed, text)) * odd
		}
	}
	return h ^ h>>32
}

// facets are what the workers have read so far, by the hash of the values it
// was made of.
type facets struct {
	parts *spool.Parts
	kinds [spool.Kinds]struct {
		sync.RWMutex
		known map[uint64]*facet
		n     int
	}
}

// facetsKept is how many different facets of a kind are remembered.
const facetsKept = 8192

func newFacets(parts *spool.Parts) *facets {
	f := &facets{parts: parts}
	for kind := range f.kinds {
		f.kinds[kind].known = map[uint64]*facet{}
	}
	return f
}

// find returns what is known of a draft's values; nil for nothing.
func (m *facets) find(kind spool.Kind, hash uint64, d *draft, values []int, b *beside) *facet {
	k := &m.kinds[kind]
	k.RLock()
	defer k.RUnlock()
	f := k.known[hash]
	for f != nil && !f.of.fits(d, values, b) {
		f = f.next
	}
	return f
}

func (m *facets) add(kind spool.Kind, f *facet) {
	k := &m.kinds[kind]
	k.Lock()
	defer k.Unlock()
	if k.n++; k.n > facetsKept {
		clear(k.known)
		k.n = 1
	}
	f.next = k.known[f.hash]
	k.known[f.hash] = f
}

// again is called where a facet is met again: its part is then kept for the
// spool.
func (m *facets) again(f *facet) {
	if f.part == nil || f.kept.Load() != nil || !f.used.CompareAndSwap(false, true) {
		return
	}
	kept := *f.part
	if !trespasses(&kept) {
		m.parts.Keep(&kept)
	}
	f.kept.Store(&kept)
}

// recentFacets are the facets that one worker met last: that of the draft
// before, and others by their hashes.
type recentFacets struct {
	last   *facet
	others [1 << recentBits]*facet
}

const recentBits = 11

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

// step reads some of a draft's values, or recalls what was made of the same
// values before.
func (in *interpreter) step(d *draft, kind spool.Kind, read func(*draft), b beside) {
	if in.answers.Len() > 0 {
		read(d) // an answer may be about several values together
		return
	}
	values, recent := d.shape.of[kind], &in.recent[kind]
	f := recent.last
	if f == nil || !f.of.fits(d, values, &b) {
		hash := hashOf(d, values, &b)
		other := &recent.others[hash>>(64-recentBits)]
		if f = *other; f == nil || f.hash != hash || !f.of.fits(d, values, &b) {
			if f = in.facets.find(kind, hash, d, values, &b); f == nil {
				f = in.facet(d, kind, read)
				f.of, f.hash = keyOf(d, values, &b), hash
				in.facets.add(kind, f)
				recent.last, *other = f, f
				in.take(d, kind, f, read)
				return
			}
			*other = f
		}
		recent.last = f
	}
	in.facets.again(f)
	in.take(d, kind, f, read)
}

// take gives a draft what the facet holds, or reads its values where there is
// something to ask about them.
func (in *interpreter) take(d *draft, kind spool.Kind, f *facet, read func(*draft)) {
	if !f.clean {
		read(d)
		return
	}
	d.facets[kind] = f
	f.fill(d, kind, d.shape.of[kind])
}

// facet reads a draft's values on a draft that has nothing else yet.
func (in *interpreter) facet(d *draft, kind spool.Kind, read func(*draft)) *facet {
	alone := draft{Draft: d.Draft, sheet: d.sheet, genus: d.genus, shape: d.shape}
	alone.facts.Light, alone.o.Month = d.facts.Light, d.o.Month
	before := alone.o
	read(&alone)
	if len(alone.findings) > 0 || alone.leaveOut || alone.refHeld {
		return &facet{}
	}
	f := &facet{clean: true, part: spool.NewPart(kind, &before, &alone.o, &alone.facts), beside: alone.beside, lit: alone.lit, at: -1}
	switch kind {
	case spool.Date:
		f.read = alone.read.date.value
	case spool.Taxon:
		f.read = alone.read.name.value
	case spool.Place:
		f.read = alone.read.place.value
	}
	if f.read != nil {
		for n, i := range d.shape.of[kind] {
			if d.Values[i].Ref == f.read.Ref {
				f.at = n
				break
			}
		}
		kept := *f.read
		f.read = &kept
	}
	f.written = in.written(nil, d, kind)
	f.harmless = in.harmless(f.part)
	return f
}

// fill gives a draft what the facet holds, as its step would have done.
func (f *facet) fill(d *draft, kind spool.Kind, values []int) {
	f.part.Fill(&d.o)
	d.parts[kind] = f.kept.Load()
	for i := range f.harmless {
		d.harmless[f.harmless[i].at] = f.harmless[i].text
	}
	f.part.FillFacts(&d.facts)
	read := readValue{value: f.read}
	if f.at >= 0 {
		read.at = &d.Values[values[f.at]]
	}
	switch kind {
	case spool.Date:
		d.lit, d.read.date = f.lit, read
	case spool.Taxon:
		d.beside, d.read.name = f.beside, read
	case spool.Place:
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
