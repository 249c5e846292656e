package validate

import (
	"fmt"
	"slices"

	"fieldfare/convert/reading"
)

// trapNights advises on traps run on more than three nights in seven. Two or
// three nights a week at most is what careful trappers advise, so that the
// moths can feed and breed (common practice, no source). It is advice and
// never a fault.
//
// It remembers a bit for each night of a trap, in blocks of 64 days.
type trapNights struct {
	blocks map[trapBlock]uint64
	excess map[trapNight]int32 // the night that is too many: first night of the seven
}

type trapBlock struct {
	trap  uint64
	block int32
}

type trapNight struct {
	trap  uint64
	night int32
}

const nightsAdvised = 3

// trapOf is the trap: a method at a place.
func trapOf(e *Entry) uint64 {
	return newHash.place(e.Occurrence, e.Facts).folded(e.SamplingProtocol).sum()
}

// trapped tells whether the record is of one night at a trap.
func trapped(e *Entry) bool {
	f := e.Facts
	return f.Dated && (f.Light || f.Night) && f.End-f.Start <= 1
}

func (t *trapNights) add(e *Entry) {
	if !trapped(e) {
		return
	}
	if t.blocks == nil {
		t.blocks = map[trapBlock]uint64{}
	}
	t.blocks[trapBlock{trapOf(e), e.Facts.Start >> 6}] |= 1 << (e.Facts.Start & 63)
}

func (t *trapNights) settle() {
	t.excess = map[trapNight]int32{}
	nights := map[uint64][]int32{}
	for b, bits := range t.blocks {
		for i := range int32(64) {
			if bits>>i&1 == 1 {
				nights[b.trap] = append(nights[b.trap], b.block<<6+i)
			}
		}
	}
	t.blocks = nil
	for trap, list := range nights {
		slices.Sort(list)
		for i := 0; i+nightsAdvised < len(list); {
			if list[i+nightsAdvised]-list[i] > 6 {
				i++
				continue
			}
			t.excess[trapNight{trap, list[i+nightsAdvised]}] = list[i]
			first := list[i]
			for i < len(list) && list[i]-first <= 6 { // one piece of advice for the seven nights
				i++
			}
		}
	}
}

// find gives the advice once, at the first record of the night.
func (t *trapNights) find(e *Entry) (reading.Finding, bool) {
	if len(t.excess) == 0 || !trapped(e) {
		return reading.Finding{}, false
	}
	key := trapNight{trapOf(e), e.Facts.Start}
	first, found := t.excess[key]
	if !found {
		return reading.Finding{}, false
	}
	delete(t.excess, key)
	site := siteOf(e.Occurrence, e.Facts)
	return reading.Finding{
		Verdict: reading.Verdict{State: reading.Fair, Code: "trap-nights", Message: fmt.Sprintf(
			"The trap at %s was run on more than three of the seven nights from %s. Two or three nights a week let the moths feed and breed.", site, words(first))},
		About: aboutRecord, Written: written(site, "week of "+iso(first)),
	}, true
}
