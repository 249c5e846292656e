package validate

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

// value takes in a finished hash.
func (h hash) value(v uint64) hash { return (h ^ hash(v)) * 0x100000001b3 }

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
