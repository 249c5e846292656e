package validate

import "encoding/binary"

// repeats counts records that are alike in content. Only contents of which
// another has the same 64 bits are counted one by one, by all of their bits.
type repeats struct {
	candidates sorted
	counts     map[[16]byte]int32
}

func contentKey(content *[16]byte) uint64 { return binary.BigEndian.Uint64(content[:8]) }

func (r *repeats) settle(contents *hashes) (err error) {
	r.candidates, err = contents.repeated()
	r.counts = map[[16]byte]int32{}
	return err
}

func (r *repeats) next(content *[16]byte) int {
	if !r.candidates.has(contentKey(content)) {
		return 1
	}
	r.counts[*content]++
	return int(r.counts[*content])
}
