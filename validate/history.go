package validate

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"fieldfare/convert/reading"
	"fieldfare/dwc"
)

// history finds counts far above what the site has had of the taxon.
//
// The measure is the modified z-score of Iglewicz and Hoaglin (How to Detect
// and Handle Outliers, 1993; from memory), 0.6745 (x - median) / MAD above
// 3.5, where MAD is the median absolute deviation from the median. It is taken
// of the logarithms, since counts of moths multiply rather than add, and the
// deviation counts as half at the least (a factor of 1.65), so that a site
// whose counts are all alike is not asked about for a few more. Less than five
// counts, and counts below twenty or below five times the median, are never
// asked about (common practice, no source).
type history struct {
	counts hashes // 44 bits of taxon and site, 20 of the count
	bounds []bound
}

const (
	countBits    = 20
	largestCount = 1<<countBits - 1
	leastHistory = 5
	leastCount   = 20
	leastTimes   = 5
)

// bound is the largest count that fits a taxon at a site.
type bound struct {
	key    uint64
	most   int32
	median int32
	n      int32
}

// countsForHistory tells whether a record's count is one of the site's.
func countsForHistory(o *dwc.Occurrence, f *Facts) bool {
	return f.Counted && f.Count > 0 && o.ScientificName != ""
}

// historyValue is the count of a record beside its key; it is never 0.
func historyValue(key uint64, f *Facts) uint64 {
	return key<<countBits | uint64(min(f.Count, largestCount))
}

func (h *history) settle() error {
	var deviations []float64
	err := h.counts.each(countBits, func(run []uint64) {
		n := len(run)
		if n < leastHistory {
			return
		}
		count := func(i int) float64 { return float64(run[i] & largestCount) }
		median := (count((n-1)/2) + count(n/2)) / 2
		middle := math.Log(median)
		deviations = deviations[:0]
		for i := range run {
			deviations = append(deviations, math.Abs(math.Log(count(i))-middle))
		}
		slices.Sort(deviations)
		mad := max((deviations[(n-1)/2]+deviations[n/2])/2, 0.5)
		most := max(math.Exp(middle+3.5*mad/0.6745), leastCount-1, leastTimes*median)
		if count(n-1) > most {
			h.bounds = append(h.bounds, bound{run[0] >> countBits, int32(most), int32(math.Round(median)), int32(n)})
		}
	})
	h.counts.drop()
	return err
}

// above returns the bound that a record's count is above; nil for none.
func (h *history) above(k *keys, e *Entry) *bound {
	if len(h.bounds) == 0 || !e.Facts.Counted || e.ScientificName == "" || siteOf(e.Occurrence, e.Facts) == noPlace {
		return nil
	}
	key := k.history(e.Occurrence, e.Facts)
	at, found := slices.BinarySearchFunc(h.bounds, key, func(b bound, key uint64) int { return cmp.Compare(b.key, key) })
	if !found || e.Facts.Count <= h.bounds[at].most {
		return nil
	}
	return &h.bounds[at]
}

func (h *history) find(k *keys, e *Entry) (reading.Finding, bool) {
	b := h.above(k, e)
	if b == nil {
		return reading.Finding{}, false
	}
	site := siteOf(e.Occurrence, e.Facts)
	return queryOf(aboutRecord, written(nameOf(e.Occurrence), site, e.IndividualCount), "count-above-history", fmt.Sprintf(
		"%d of %s is far above what %s has had: the middle of its %d counts is %d. Check the count; if it was such a night, answer keep.",
		e.Facts.Count, nameOf(e.Occurrence), site, b.n, b.median)), true
}
