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
	blocks   map[trapBlock]uint64
	last     trapBlock // the last block and what is set in it
	lastBits uint64
	excess   map[trapNight]int32 // the night that is too many: first night of the seven
	told     map[trapNight]bool
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

// trapped tells whether the record is of one night at a trap.
func trapped(e *Entry) bool {
	f := e.Facts
	return f.Dated && (f.Light || f.Night) && f.End-f.Start <= 1
}

func (t *trapNights) add(trap uint64, night int32) {
	block := trapBlock{trap, night >> 6}
	if t.blocks == nil {
		t.blocks = map[trapBlock]uint64{}
	}
	bit := uint64(1) << (night & 63)
	if block != t.last || t.lastBits&bit == 0 {
		t.blocks[block] |= bit
		t.last, t.lastBits = block, t.blocks[block]
	}
}

// join takes in what another has.
func (t *trapNights) join(other *trapNights) {
	if t.blocks == nil {
		t.blocks = map[trapBlock]uint64{}
	}
	for block, bits := range other.blocks {
		t.blocks[block] |= bits
	}
}

func (t *trapNights) settle() {
	t.excess, t.told = map[trapNight]int32{}, map[trapNight]bool{}
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

// concerns tells whether the record is of a night that is too many.
func (t *trapNights) concerns(k *keys, e *Entry) bool {
	if len(t.excess) == 0 || !trapped(e) {
		return false
	}
	_, found := t.excess[trapNight{k.trap(e.Occurrence, e.Facts), e.Facts.Start}]
	return found
}

// find gives the advice once, at the first record of the night.
func (t *trapNights) find(k *keys, e *Entry) (reading.Finding, bool) {
	if len(t.excess) == 0 || !trapped(e) {
		return reading.Finding{}, false
	}
	key := trapNight{k.trap(e.Occurrence, e.Facts), e.Facts.Start}
	first, found := t.excess[key]
	if !found || t.told[key] {
		return reading.Finding{}, false
	}
	t.told[key] = true
	site := siteOf(e.Occurrence, e.Facts)
	return reading.Finding{
		Verdict: reading.Verdict{State: reading.Fair, Code: "trap-nights", Message: fmt.Sprintf(
			"The trap at %s was run on more than three of the seven nights from %s. Two or three nights a week let the moths feed and breed.", site, words(first))},
		About: aboutRecord, Written: written(site, "week of "+iso(first)),
	}, true
}
