package taxa

// words keeps one copy of words that come again and again in a list. It has
// room for so many; a word that finds its place taken puts the other out, so
// that what never repeats costs little.
type words [4096]string

// one is the copy of s that is kept.
func (w *words) one(s string) string {
	if s == "" {
		return ""
	}
	h := uint32(len(s)) // FNV-1a (RFC 9923) over the first letters and the last
	for i := 0; i < len(s) && i < 12; i++ {
		h = (h ^ uint32(s[i])) * 16777619
	}
	for i := max(12, len(s)-8); i < len(s); i++ {
		h = (h ^ uint32(s[i])) * 16777619
	}
	place := &w[(h^h>>15)%uint32(len(w))]
	if *place != s {
		*place = s
	}
	return *place
}

// idTable is what the ids of a list stand for.
type idTable struct {
	refTable
	ids  []string
	refs []ref
}

func (t *idTable) of(id string) (ref, bool) {
	if at, there := t.find(hashString(id), func(at int32) bool { return t.ids[at] == id }); there {
		return t.refs[at], true
	}
	return ref{}, false
}

// add takes an id; it reports false where the id is there already.
func (t *idTable) add(id string, r ref) bool {
	h := hashString(id)
	if _, there := t.find(h, func(at int32) bool { return t.ids[at] == id }); there {
		return false
	}
	t.refTable.add(h, int32(len(t.ids)))
	t.ids, t.refs = append(t.ids, id), append(t.refs, r)
	return true
}

func hashString(s string) uint32 {
	var buf [96]byte
	return hashKey(append(buf[:0], s...))
}
