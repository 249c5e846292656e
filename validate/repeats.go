package validate

import "encoding/binary"

// Repeats tells, of very many marks such as fingerprints and ids, which occur
// more than once, and counts these as they come again. A mark is 128 bits that
// are as good as random. The zero value is empty.
//
// All marks are added, then Settle is called, then Next for each of them, in
// the same order or another. Until it is settled it takes some megabytes, the
// rest being in a temporary file; afterwards 20 bytes for each mark that occurs
// more than once, and 8 for each that Has is to know.
type Repeats struct {
	list hashes
	all  sorted
	// candidates are the first 64 bits of marks of which there may be several:
	// first has the other half of the first mark met with these, counts how
	// often that was met. Marks that share but one half are counted in others.
	candidates sorted
	first      []uint64
	counts     []int32
	others     map[[16]byte]int32
}

func contentKey(content *[16]byte) uint64 { return binary.BigEndian.Uint64(content[:8]) }

// Add adds a mark.
func (r *Repeats) Add(mark *[16]byte) { r.list.add(contentKey(mark)) }

// Settle ends the adding. Has needs to be told beforehand that it will be
// asked. An error is one of reading the temporary file back.
func (r *Repeats) Settle(hasIsAsked bool) error {
	var err error
	if hasIsAsked {
		r.all, r.candidates, err = r.list.distinctAndRepeated()
	} else {
		r.candidates, err = r.list.repeated()
	}
	r.first, r.counts = make([]uint64, len(r.candidates)), make([]int32, len(r.candidates))
	return err
}

// Drop gives up the temporary file of marks that are not to be settled.
func (r *Repeats) Drop() { r.list.drop() }

// Has tells whether a mark was added; two in 10^19 are taken for one another.
func (r *Repeats) Has(mark *[16]byte) bool { return r.all.has(contentKey(mark)) }

// Empty tells whether no mark was added that Has could know.
func (r *Repeats) Empty() bool { return len(r.all) == 0 }

// Repeated tells whether a mark may have been added more than once; if not, Next
// need not be called for it. Several goroutines may ask at once.
func (r *Repeats) Repeated(mark *[16]byte) bool { return r.candidates.has(contentKey(mark)) }

// Next says the how manyth of its kind a mark is, from 1.
func (r *Repeats) Next(mark *[16]byte) int {
	i, found := r.candidates.find(contentKey(mark))
	if !found {
		return 1
	}
	rest := binary.BigEndian.Uint64(mark[8:])
	if r.counts[i] == 0 {
		r.first[i] = rest
	}
	if r.first[i] == rest {
		r.counts[i]++
		return int(r.counts[i])
	}
	if r.others == nil {
		r.others = map[[16]byte]int32{}
	}
	r.others[*mark]++
	return int(r.others[*mark])
}
