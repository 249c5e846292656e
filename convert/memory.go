package convert

import (
	"fieldfare/convert/layout"
	"fieldfare/convert/people"
	"fieldfare/convert/places"
	"fieldfare/convert/privacy"
	"fieldfare/convert/reading"
	"fieldfare/convert/tally"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
	"fieldfare/gridref"
)

// memory is what one worker has read before: notebooks repeat themselves, and
// a value is read the same way each time. Each kind of value has its own
// bounded store, emptied when full.
type memory struct {
	dates     map[dateKey]when.Reading
	refs      map[refKey]refReading
	people    map[personKey]people.Reading
	places    map[string]places.Reading
	areas     map[areaKey]reading.Verdict
	ground    map[gridref.Square]ground
	texts     map[string]scrubbed
	counts    map[countKey]tally.Reading
	nameIDs   map[*taxa.Taxon]string
	mentions  map[string][]*places.Place
	sensitive map[string]sensitiveName
	blurs     map[*taxa.Taxon]int32
	labels    map[labelKey]tally.Reading
	parts     []tally.Part // of the last count
	// recent are counts and labels met last, in the places of their texts.
	recent     [64]recentCount
	sex, stage recentLabel
}

// remembered is how many values of a kind are kept.
const remembered = 4096

type dateKey struct {
	text string
	o    when.Options
}

type refKey struct {
	text   string
	number bool
}

type refReading struct {
	gridref.Reading
	verdict reading.Verdict
}

type personKey struct {
	text string
	o    people.Options
}

// scrubbed is a text without what must not leave, and what that was.
type scrubbed struct {
	clean string
	found []string
}

type countKey struct {
	text string
	o    tally.Options
}

// labelKey is the text of a column for sex or for stage.
type labelKey struct {
	m    layout.Meaning
	text string
}

// ground is where a square lies, and how its terms are written.
type ground struct {
	point                gridref.Point
	lat, lon             string
	reference, footprint string
}

func newMemory() memory {
	return memory{
		dates: map[dateKey]when.Reading{}, refs: map[refKey]refReading{}, people: map[personKey]people.Reading{}, places: map[string]places.Reading{},
		areas: map[areaKey]reading.Verdict{}, ground: map[gridref.Square]ground{}, texts: map[string]scrubbed{}, counts: map[countKey]tally.Reading{},
		nameIDs: map[*taxa.Taxon]string{}, mentions: map[string][]*places.Place{}, sensitive: map[string]sensitiveName{}, blurs: map[*taxa.Taxon]int32{},
		labels: map[labelKey]tally.Reading{},
	}
}

// recall returns what read says of the key, reading it only the first time.
func recall[K comparable, V any](store map[K]V, key K, read func() V) V {
	if v, found := store[key]; found {
		return v
	}
	v := read()
	if len(store) >= remembered {
		clear(store)
	}
	store[key] = v
	return v
}

func (m *memory) date(text string, o when.Options) when.Reading {
	return recall(m.dates, dateKey{text, o}, func() when.Reading { return when.Read(text, o) })
}

func (m *memory) reference(text string, number bool) (gridref.Reading, reading.Verdict) {
	r := recall(m.refs, refKey{text, number}, func() refReading {
		parse := gridref.Parse
		if number {
			parse = gridref.ParseNumber
		}
		r, err := parse(text)
		return refReading{r, verdictOf(r, err)}
	})
	return r.Reading, r.verdict
}

func (m *memory) square(s gridref.Square) ground {
	return recall(m.ground, s, func() ground {
		p := s.Point()
		return ground{p, privacy.Degrees(p.Lat), privacy.Degrees(p.Lon), s.String(), s.WKT()}
	})
}

func (m *memory) person(l *people.List, text string, o people.Options) people.Reading {
	return recall(m.people, personKey{text, o}, func() people.Reading { return l.Read(text, o) })
}

func (m *memory) scrub(l *people.List, text string) (clean string, found []string) {
	r := recall(m.texts, text, func() scrubbed {
		clean, found := l.Scrub(text)
		return scrubbed{clean, found}
	})
	return r.clean, r.found
}

type recentCount struct {
	key countKey
	r   tally.Reading
}

type recentLabel struct {
	text string
	r    tally.Reading
}

// label reads a column for sex or stage. The parts are not to be changed.
func (m *memory) label(of layout.Meaning, text string, read func(string) tally.Reading) tally.Reading {
	recent := &m.sex
	if of == layout.Stage {
		recent = &m.stage
	}
	if recent.text == "" || recent.text != text {
		*recent = recentLabel{text, recall(m.labels, labelKey{of, text}, func() tally.Reading { return read(text) })}
	}
	return recent.r
}

// count reads a count. The parts are the caller's own until the next count.
func (m *memory) count(text string, o tally.Options) tally.Reading {
	key := countKey{text, o}
	at := len(text) * 7
	if text != "" {
		at += int(text[0])*5 + int(text[len(text)-1])
	}
	recent := &m.recent[at%len(m.recent)]
	if text == "" || recent.key != key {
		*recent = recentCount{key, recall(m.counts, key, func() tally.Reading { return tally.Read(text, o) })}
	}
	r := recent.r
	m.parts = append(m.parts[:0], r.Parts...)
	r.Parts = m.parts
	return r
}
