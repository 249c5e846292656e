package validate

import "slices"

// Sieve parts the records of a settled set of which its checks have nothing to
// say from the others. It changes nothing in the set, so that several
// goroutines can look through the records, each with a sieve of its own and in
// their order.
type Sieve struct {
	set  *Set
	keys keys
	next int // of the runs that were filled down
}

// Sieve returns a sieve for a goroutine.
func (s *Set) Sieve() *Sieve { return &Sieve{set: s} }

// Concerns tells whether Findings may have something to say about a record, or
// Ordinal something other than 1. What it says of others, Findings need not be
// asked.
func (v *Sieve) Concerns(e *Entry) bool {
	s := v.set
	if s.contents.Repeated(&e.Content) {
		return true
	}
	if e.Visit {
		return false
	}
	return s.duplicates.concerns(&v.keys, e) || s.journeys.concerns(&v.keys, e) || s.history.above(&v.keys, e) != nil || s.past.concerns(e) ||
		len(s.oddNames(e)) > 0 || v.filled(e.N) || s.pages.concerns(e) || s.nights.concerns(&v.keys, e)
}

// filled tells whether a record is in a run that was filled down.
func (v *Sieve) filled(n int) bool {
	ranges := v.set.autofill.ranges
	for v.next < len(ranges) && ranges[v.next].last < n {
		v.next++
	}
	return slices.ContainsFunc(ranges[v.next:], func(r fillRange) bool { return r.first <= n && n <= r.last })
}
