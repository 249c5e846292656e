package report

// recent remembers what was worked out of a key, for up to so many keys: the
// dates and places of records repeat themselves. The zero value is ready.
type recent[K comparable, V any] struct {
	known   map[K]V
	last    K
	lastOf  V
	started bool
}

const recentKept = 4096

// of returns what work makes of the key.
func (r *recent[K, V]) of(key K, work func(K) V) V {
	if r.started && key == r.last {
		return r.lastOf
	}
	v, found := r.known[key]
	if !found {
		v = work(key)
		if r.known == nil {
			r.known = map[K]V{}
		} else if len(r.known) >= recentKept {
			clear(r.known)
		}
		r.known[key] = v
	}
	r.last, r.lastOf, r.started = key, v, true
	return v
}
