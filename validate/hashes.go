package validate

import (
	"encoding/binary"
	"fmt"
	"os"
	"slices"
)

// hashes is a list of 64-bit values in which the repeated ones, or those that
// share their upper bits, are to be found. The values lie in buckets by their
// upper bits. What a bucket holds beyond the first few thousand values of the
// list goes to a temporary file, block by block, so that the list takes no more
// memory for millions of records than for some hundred thousand. Where no file
// can be written, it stays in memory.
type hashes struct {
	buckets [256][]uint64
	n       int
	file    *os.File
	named   bool         // the file still has its name
	blocks  [256][]int32 // of the file, by bucket
	written int32
	stays   bool // no more can be written
	block   []byte
}

const (
	// inMemory is how many values are held before the file is begun.
	inMemory = 1 << 18
	// blockValues is how many values of a bucket are written at once.
	blockValues = 512
)

func (h *hashes) add(v uint64) {
	b := &h.buckets[v>>56]
	*b = append(*b, v)
	if h.n++; h.n > inMemory && len(*b) >= blockValues && !h.stays {
		h.spill(int(v >> 56))
	}
}

// temporary makes a temporary file. Where the system allows it, the file loses
// its name at once, so that it is gone whatever becomes of the program.
func temporary() (f *os.File, named bool, err error) {
	if f, err = os.CreateTemp("", "fieldfare-*.part"); err != nil {
		return nil, false, err
	}
	return f, os.Remove(f.Name()) != nil, nil
}

// spill writes the whole blocks of a bucket to the file.
func (h *hashes) spill(bucket int) {
	if h.file == nil {
		f, named, err := temporary()
		if err != nil {
			h.stays = true
			return
		}
		h.file, h.named = f, named
	}
	b := h.buckets[bucket]
	for len(b) >= blockValues {
		h.block = h.block[:0]
		for _, v := range b[:blockValues] {
			h.block = binary.LittleEndian.AppendUint64(h.block, v)
		}
		if _, err := h.file.WriteAt(h.block, int64(h.written)*8*blockValues); err != nil {
			h.stays = true // as on a full disk
			break
		}
		h.blocks[bucket] = append(h.blocks[bucket], h.written)
		h.written++
		b = b[blockValues:]
	}
	h.buckets[bucket] = append(h.buckets[bucket][:0], b...)
}

// values appends all values of a bucket to list, in rising order.
func (h *hashes) values(bucket int, list []uint64) ([]uint64, error) {
	for _, block := range h.blocks[bucket] {
		h.block = slices.Grow(h.block[:0], 8*blockValues)[:8*blockValues]
		if _, err := h.file.ReadAt(h.block, int64(block)*8*blockValues); err != nil {
			return nil, fmt.Errorf("a temporary file could not be read back: %w", err)
		}
		for i := range blockValues {
			list = append(list, binary.LittleEndian.Uint64(h.block[8*i:]))
		}
	}
	list = append(list, h.buckets[bucket]...)
	slices.Sort(list)
	return list, nil
}

// each yields the values in rising order in runs that share all but the lowest
// bits, which are valid only during the call.
func (h *hashes) each(lowBits uint, yield func(run []uint64)) error {
	var b []uint64
	for bucket := range h.buckets {
		var err error
		if b, err = h.values(bucket, b[:0]); err != nil {
			return err
		}
		for i := 0; i < len(b); {
			j := i + 1
			for j < len(b) && b[j]>>lowBits == b[i]>>lowBits {
				j++
			}
			yield(b[i:j])
			i = j
		}
	}
	return nil
}

// repeated returns the values that occur twice or more, in rising order, and
// drops the list.
func (h *hashes) repeated() (list sorted, err error) {
	err = h.each(0, func(run []uint64) {
		if len(run) > 1 {
			list = append(list, run[0])
		}
	})
	h.drop()
	return slices.Clip(list), err
}

// distinct returns each value once, in rising order, and drops the list.
func (h *hashes) distinct() (list sorted, err error) {
	err = h.each(0, func(run []uint64) { list = append(list, run[0]) })
	h.drop()
	return slices.Clip(list), err
}

// distinctAndRepeated returns what distinct and repeated do, and drops the list.
func (h *hashes) distinctAndRepeated() (all, repeated sorted, err error) {
	all = make(sorted, 0, h.n)
	err = h.each(0, func(run []uint64) {
		all = append(all, run[0])
		if len(run) > 1 {
			repeated = append(repeated, run[0])
		}
	})
	h.drop()
	return all, slices.Clip(repeated), err
}

// drop empties the list and gives its file up.
func (h *hashes) drop() {
	if h.file != nil {
		h.file.Close()
		if h.named {
			os.Remove(h.file.Name())
		}
	}
	*h = hashes{}
}

// sorted is a set of values in rising order.
type sorted []uint64

func (s sorted) has(v uint64) bool {
	_, found := s.find(v)
	return found
}

// find returns the place of a value.
func (s sorted) find(v uint64) (at int, found bool) { return slices.BinarySearch(s, v) }
