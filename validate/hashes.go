package validate

import "slices"

// hashes is a list of 64-bit values in which the repeated ones, or those that
// share their upper bits, are to be found. The values lie in buckets by their
// upper bits, each a slice that grows by itself, so that the list takes about
// ten bytes a value.
type hashes struct {
	buckets [256][]uint64
}

func (h *hashes) add(v uint64) { h.buckets[v>>56] = append(h.buckets[v>>56], v) }

// each yields the values in rising order in runs that share all but the lowest
// bits. It sorts the buckets.
func (h *hashes) each(lowBits uint, yield func(run []uint64)) {
	for _, b := range h.buckets {
		slices.Sort(b)
		for i := 0; i < len(b); {
			j := i + 1
			for j < len(b) && b[j]>>lowBits == b[i]>>lowBits {
				j++
			}
			yield(b[i:j])
			i = j
		}
	}
}

// repeated returns the values that occur twice or more, in rising order, and
// drops the list.
func (h *hashes) repeated() sorted {
	var list sorted
	h.each(0, func(run []uint64) {
		if len(run) > 1 {
			list = append(list, run[0])
		}
	})
	*h = hashes{}
	return slices.Clip(list)
}

// distinct returns each value once, in rising order, and drops the list.
func (h *hashes) distinct() sorted {
	var list sorted
	h.each(0, func(run []uint64) { list = append(list, run[0]) })
	*h = hashes{}
	return slices.Clip(list)
}

// sorted is a set of values in rising order.
type sorted []uint64

func (s sorted) has(v uint64) bool {
	_, found := slices.BinarySearch(s, v)
	return found
}

// hash is the 64-bit FNV-1a hash (Fowler, Noll and Vo; RFC 9923), mixed at
// the end so that all bits count.
type hash uint64

const newHash hash = 0xcbf29ce484222325

func (h hash) byte(c byte) hash { return (h ^ hash(c)) * 0x100000001b3 }

// text takes in a text and its end.
func (h hash) text(s string) hash {
	for i := range len(s) {
		h = h.byte(s[i])
	}
	return h.byte(0xff)
}

// folded takes in the letters and figures of a text whatever their case, so
// that "Tinker's Row" and "Tinkers row" are alike.
func (h hash) folded(s string) hash {
	for i := range len(s) {
		c := s[i]
		if c >= 'A' && c <= 'Z' {
			c |= 0x20
		}
		if c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c >= 0x80 && c != 0xe2 && c != 0x80 && c != 0x99 {
			h = h.byte(c)
		}
	}
	return h.byte(0xff)
}

func (h hash) number(n int32) hash {
	for range 4 {
		h = h.byte(byte(n))
		n >>= 8
	}
	return h
}

// sum is the finished hash (the finalizer of MurmurHash3, Austin Appleby,
// public domain; from memory).
func (h hash) sum() uint64 {
	v := uint64(h)
	v ^= v >> 33
	v *= 0xff51afd7ed558ccd
	v ^= v >> 33
	v *= 0xc4ceb9fe1a85ec53
	return v ^ v>>33
}
