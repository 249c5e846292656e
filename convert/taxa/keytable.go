package taxa

import (
	"encoding/binary"
	"math/bits"
)

// keyTable is a hash table from the key of a name to the first name that has
// it. A map of strings would do the same with a small string of its own for
// every key, and four looks at distant memory where this has two: it decides
// how fast lists load and names are found.
type keyTable struct {
	slots []keySlot // a power of two of them, at most three quarters in use
	keys  []byte    // every key, after two bytes for its length
	used  int
}

type keySlot struct {
	hash uint32
	key  uint32 // where the key begins in keys, counted from 1; 0 for no key
	name int32  // in Index.names
	// plain is the taxon where the key is read as it with nothing to say, as
	// onlyUngrouped makes it where that holds only with no group to regard;
	// or none.
	plain int32
}

// onlyUngrouped turns a taxon into one for keySlot.plain, and back.
func onlyUngrouped(taxon int32) int32 { return -2 - taxon }

func newKeyTable(expected int) keyTable {
	n := 16
	for n*3/4 < expected {
		n *= 2
	}
	return keyTable{slots: make([]keySlot, n), keys: make([]byte, 0, expected*20)}
}

// hashKey mixes eight letters at a time by multiplying (after wyhash, Wang Yi,
// public domain; from memory).
func hashKey(k []byte) uint32 {
	const m1, m2 = 0xa0761d6478bd642f, 0xe7037ed1a0b428db
	h := uint64(len(k)) ^ m1
	mix := func(x uint64) {
		hi, lo := bits.Mul64(h^x, m2)
		h = hi ^ lo
	}
	for len(k) >= 8 {
		mix(binary.LittleEndian.Uint64(k))
		k = k[8:]
	}
	var last uint64
	for i := len(k) - 1; i >= 0; i-- {
		last = last<<8 | uint64(k[i])
	}
	mix(last)
	mix(m1)
	return uint32(h ^ h>>32)
}

// find returns the slot of a key, or nil.
func (t *keyTable) find(k []byte) *keySlot {
	if s := t.slot(hashKey(k), k); s.key != 0 {
		return s
	}
	return nil
}

// slot is the slot of a key, or the empty one where it would stand.
func (t *keyTable) slot(h uint32, k []byte) *keySlot {
	mask := uint32(len(t.slots) - 1)
	for i := h & mask; ; i = (i + 1) & mask {
		s := &t.slots[i]
		if s.key == 0 || s.hash == h && t.is(s, k) {
			return s
		}
	}
}

func (t *keyTable) is(s *keySlot, k []byte) bool {
	at := int(s.key) + 1
	n := int(t.keys[at-2]) | int(t.keys[at-1])<<8
	return n == len(k) && string(t.keys[at:at+n]) == string(k)
}

// add returns the slot of a key, made for the name if there was none.
func (t *keyTable) add(k []byte, name int32) (s *keySlot, made bool) {
	if t.used >= len(t.slots)*3/4 {
		t.grow()
	}
	h := hashKey(k)
	if s = t.slot(h, k); s.key != 0 {
		return s, false
	}
	t.used++
	*s = keySlot{hash: h, key: uint32(len(t.keys) + 1), name: name, plain: none}
	t.keys = append(t.keys, byte(len(k)), byte(len(k)>>8))
	t.keys = append(t.keys, k...)
	return s, true
}

func (t *keyTable) grow() {
	old := t.slots
	t.slots = make([]keySlot, 2*len(old))
	mask := uint32(len(t.slots) - 1)
	for _, s := range old {
		if s.key == 0 {
			continue
		}
		i := s.hash & mask
		for t.slots[i].key != 0 {
			i = (i + 1) & mask
		}
		t.slots[i] = s
	}
}

// named is the first of the names with a key.
func (ix *Index) named(k string) (int32, bool) {
	var buf [96]byte
	if s := ix.keys.find(append(buf[:0], k...)); s != nil {
		return s.name, true
	}
	return none, false
}

// settlePlain notes for every key whether it is read with nothing to say.
func (ix *Index) settlePlain() {
	for i := range ix.keys.slots {
		s := &ix.keys.slots[i]
		if s.key == 0 {
			continue
		}
		n := &ix.names[s.name]
		switch {
		case n.next != none, n.kind == brokenName, n.kind == synonymName:
		case n.kind != vernacularName:
			s.plain = n.taxon
		case len(ix.spelling.rivals) == 0 || len(ix.spelling.rivals[vernacularKey(n.text)]) == 0:
			s.plain = onlyUngrouped(n.taxon)
		}
	}
}

// refTable finds entries by a key that the entries themselves have: it holds
// only where they are.
type refTable struct {
	slots []refSlot
	used  int
}

type refSlot struct {
	hash uint32
	at   int32 // counted from 1; 0 for none
}

func newRefTable(expected int) refTable {
	n := 16
	for n*3/4 < expected {
		n *= 2
	}
	return refTable{slots: make([]refSlot, n)}
}

// find returns the entry with a key; same compares the key with an entry's.
func (t *refTable) find(h uint32, same func(at int32) bool) (int32, bool) {
	mask := uint32(len(t.slots) - 1)
	for i := h & mask; t.slots[i].at != 0; i = (i + 1) & mask {
		if s := t.slots[i]; s.hash == h && same(s.at-1) {
			return s.at - 1, true
		}
	}
	return none, false
}

// add puts in an entry whose key is not there yet.
func (t *refTable) add(h uint32, at int32) {
	if t.used >= len(t.slots)*3/4 {
		old := t.slots
		t.slots, t.used = make([]refSlot, 2*len(old)), 0
		for _, s := range old {
			if s.at != 0 {
				t.add(s.hash, s.at-1)
			}
		}
	}
	mask := uint32(len(t.slots) - 1)
	i := h & mask
	for t.slots[i].at != 0 {
		i = (i + 1) & mask
	}
	t.slots[i] = refSlot{h, at + 1}
	t.used++
}
