package taxa

// longChain is what is known of a chain of names with one key that has become
// long, as where a list gives one name to thousands of taxa, so that it need not
// be walked for each of them.
type longChain struct {
	last int32
	taxa map[int32]bool
}

// longSteps is how long a chain is walked without noting it (chosen by us).
const longSteps = 64

// lastOf returns the end of the chain that begins with head, to which a name of
// the taxon is to be added, or tells that the taxon has one there.
func (ix *Index) lastOf(head, taxon int32) (last int32, has bool) {
	long := ix.long[head]
	if long == nil {
		steps := 0
		for last = head; ; last = ix.names[last].next {
			n := &ix.names[last]
			if n.taxon == taxon && taxon != none {
				return last, true
			}
			if n.next == none {
				break
			}
			steps++
		}
		if steps < longSteps {
			return last, false
		}
		long = &longChain{last: last, taxa: map[int32]bool{}}
		for at := head; at != none; at = ix.names[at].next {
			long.taxa[ix.names[at].taxon] = true
		}
		if ix.long == nil {
			ix.long = map[int32]*longChain{}
		}
		ix.long[head] = long
	}
	if taxon != none && long.taxa[taxon] {
		return long.last, true
	}
	last, long.last = long.last, int32(len(ix.names)) // the name that is about to be added
	long.taxa[taxon] = true
	return last, false
}
