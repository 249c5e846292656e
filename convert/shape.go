package convert

import (
	"slices"

	"fieldfare/convert/layout"
	"fieldfare/convert/spool"
)

// shape is what follows from the meanings of a draft's values alone, which are
// the same down a list.
type shape struct {
	meanings []layout.Meaning
	origins  []layout.Origin
	of       [spool.Kinds][]int // the values that each step reads, by their places in the draft
	others   []int              // those that none of them reads
	counts   []int              // those of them that are counts
	stands   []int              // those by which a record is found on the page, the best first
	content  []contentAt        // the values of the fingerprint, in its order
}

// contentAt is a value of the fingerprint and the step that reads it, noKind
// for none.
type contentAt struct{ value, kind int }

const noKind = -1

func newShape(d *draft) *shape {
	s := &shape{}
	var order []int64
	for i := range d.Values {
		v := &d.Values[i]
		s.meanings, s.origins = append(s.meanings, v.Meaning), append(s.origins, v.From)
		if kind, ok := kindOf(v.Meaning); ok {
			s.of[kind] = append(s.of[kind], i)
		} else {
			s.others = append(s.others, i)
		}
		if v.Meaning == layout.Count {
			s.counts = append(s.counts, i)
		}
		if rank, counts := contentRanks[meaningOf(v)]; counts {
			order = append(order, int64(rank)<<32|int64(i))
		}
	}
	for _, m := range [...]layout.Meaning{layout.Count, layout.Taxon, layout.Scientific, layout.Vernacular, layout.Date} {
		for i := range d.Values {
			if v := &d.Values[i]; v.Meaning == m && v.From == layout.FromCell {
				s.stands = append(s.stands, i)
			}
		}
	}
	slices.Sort(order)
	for _, at := range order {
		c := contentAt{int(at & (1<<32 - 1)), noKind}
		if kind, ok := kindOf(s.meanings[c.value]); ok {
			c.kind = int(kind)
		}
		s.content = append(s.content, c)
	}
	return s
}

// fits tells whether it is the shape of the draft.
func (s *shape) fits(d *draft) bool {
	if len(d.Values) != len(s.meanings) {
		return false
	}
	for i := range d.Values {
		if v := &d.Values[i]; v.Meaning != s.meanings[i] || v.From != s.origins[i] {
			return false
		}
	}
	return true
}

// facetOf returns what was recalled of a step; nil for nothing.
func (d *draft) facetOf(kind int) *facet {
	if kind == noKind {
		return nil
	}
	return d.facets[kind]
}

// shapes are those of the drafts read last, the newest first: rows with a
// remark and rows without one take turns.
type shapes [4]*shape

func (list *shapes) of(d *draft) *shape {
	for i, s := range list {
		if s == nil {
			break
		}
		if s.fits(d) {
			copy(list[1:i+1], list[:i])
			list[0] = s
			return s
		}
	}
	s := newShape(d)
	copy(list[1:], list[:])
	list[0] = s
	return s
}
