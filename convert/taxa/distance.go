package taxa

import "strings"

// maxKey is the longest key that is compared letter by letter.
const maxKey = 80

// distance is the number of letters put in, left out, changed or swapped with
// the next one between two keys (the optimal string alignment distance:
// Damerau 1964, Levenshtein 1965), or limit+1 where it is more than limit.
func distance(a, b string, limit int) int {
	for len(a) > 0 && len(b) > 0 && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for len(a) > 0 && len(b) > 0 && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	if len(a) > len(b) {
		a, b = b, a
	}
	if len(b)-len(a) > limit || len(b) > maxKey {
		return limit + 1
	}
	if len(a) == 0 {
		return len(b)
	}
	var rows [3][maxKey + 2]uint8
	over := uint8(limit + 1)
	prev2, prev, row := &rows[0], &rows[1], &rows[2]
	for j := 0; j <= len(b); j++ {
		prev[j] = uint8(min(j, limit+1))
	}
	for i := 1; i <= len(a); i++ {
		from, to := max(1, i-limit), min(len(b), i+limit)
		best := over
		row[from-1] = over
		if from == 1 {
			row[0] = uint8(min(i, limit+1))
			best = row[0]
		}
		for j := from; j <= to; j++ {
			d := prev[j-1]
			if a[i-1] != b[j-1] {
				d++
			}
			if j < i+limit || to < i+limit || j == len(b) && i+limit > len(b) {
				if j <= i-1+limit {
					d = min(d, prev[j]+1)
				}
			}
			d = min(d, row[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, prev2[j-2]+1)
			}
			d = min(d, over)
			row[j] = d
			best = min(best, d)
		}
		if to < len(b) {
			row[to+1] = over
		}
		if best > uint8(limit) {
			return limit + 1
		}
		prev2, prev, row = prev, row, prev2
	}
	return int(prev[len(b)])
}

// pattern is a key made ready to be compared with many others: for each letter
// the places where it stands, as bits.
type pattern struct {
	places [256]uint64
	key    string
}

func (p *pattern) set(k string) {
	p.key = k
	for i := 0; i < len(k) && i < 64; i++ {
		p.places[k[i]] |= 1 << i
	}
}

// distance is the same as the function of that name, a column at a time in the
// bits of a word (Hyyrö 2003, after Myers 1999).
func (p *pattern) distance(b string, limit int) int {
	m := len(p.key)
	if m > 64 || m == 0 {
		return distance(p.key, b, limit)
	}
	d, last := m, uint64(1)<<(m-1)
	vp, vn, d0, before := ^uint64(0), uint64(0), uint64(0), uint64(0)
	for i := 0; i < len(b); i++ {
		pm := p.places[b[i]]
		swap := ((^d0 & pm) << 1) & before
		d0 = (((pm & vp) + vp) ^ vp) | pm | vn | swap
		hp, hn := vn|^(d0|vp), d0&vp
		if hp&last != 0 {
			d++
		} else if hn&last != 0 {
			d--
		}
		if d-(len(b)-1-i) > limit {
			return limit + 1
		}
		hp, hn = hp<<1|1, hn<<1
		vp, vn = hn|^(d0|hp), hp&d0
		before = pm
	}
	return min(d, limit+1)
}

// soundKey brings together what is confused in spelling and speech. Its rules
// for scientific names are those differences that do not make two names of
// one genus different (ICZN Article 58): ae, oe or e; ei, i or y; i or j; c or
// k; aspirated or not (th, rh, ch); single or double; f or ph; -us- or -z-
// like sounds are left alone. spoken adds rules for English words.
func soundKey(k string, spoken bool) string {
	var buf [maxKey]byte
	out := buf[:0]
	for i := 0; i < len(k); i++ {
		c := k[i]
		var next byte
		if i+1 < len(k) {
			next = k[i+1]
		}
		switch {
		case (c == 'a' || c == 'o') && next == 'e':
			c = 'e'
			i++
		case c == 'e' && next == 'i':
			c = 'i'
			i++
		case c == 'p' && next == 'h':
			c = 'f'
			i++
		case (c == 't' || c == 'r' || c == 'c') && next == 'h':
			i++
		case spoken && c == 'q' && next == 'u':
			if out = append(out, 'c'); len(out) == maxKey {
				return string(out)
			}
			c = 'w' // harlequin, harlikwin
			i++
		case c == 'y' || c == 'j':
			c = 'i'
		case c == 'k':
			c = 'c'
		case spoken && (c == 'e' && next == 'a' || c == 'i' && next == 'e' || c == 'a' && next == 'y' || c == 'a' && next == 'i'):
			if c == 'i' {
				c = 'e'
			}
			i++
		case spoken && c == 'o' && (next == 'u' || next == 'w'):
			i++
		case spoken && c == 'z':
			c = 's'
		case spoken && c == 's' && next == 'c':
			i++
		}
		if spoken && c == 'i' && i == len(k)-1 && len(out) > 0 && out[len(out)-1] == 'e' {
			continue // -ey and -y
		}
		if n := len(out); n > 0 && out[n-1] == c {
			continue
		}
		if len(out) == maxKey {
			break
		}
		out = append(out, c)
	}
	return string(out)
}

// cost weighs the difference of two keys in tenths of a letter: what sounds
// alike counts little, a vowel for a vowel and a lost ending a little less
// than other letters, another first letter more. It is only meant for keys
// within limit letters of each other.
func cost(a, b, soundA, soundB string, limit int) int {
	if a == b {
		return 0
	}
	plain := distance(a, b, limit+2)
	sound := min(plain, distance(soundA, soundB, limit+2))
	c := 10*sound + 3*(plain-sound)
	if sound == 0 {
		return max(c, 2)
	}
	if strings.HasPrefix(a, b) || strings.HasPrefix(b, a) {
		c -= 2
	} else if len(a) == len(b) && sound == 1 {
		for i := range len(a) {
			if a[i] != b[i] {
				if isVowel(a[i]) && isVowel(b[i]) {
					c -= 2
				}
				break
			}
		}
	}
	if a[0] != b[0] && soundA[:1] != soundB[:1] {
		c += 4
	}
	return c
}

// suffixes and numerals make other words of one stem: emutaria and emutata,
// bipunctata and tripunctata are not misspellings of each other.
var (
	suffixes = []string{"aria", "ata", "ella", "ana", "ina", "ola", "osa", "alis", "aris", "ula", "icola", "oides", "ensis", "ica", "ita", "illa",
		"arius", "atus", "anus", "inus", "osus", "icus", "arium", "atum", "anum", "inum", "osum", "icum", "orum", "arum", "ens", "ans", "idis", "acea", "aceus"}
	numerals = []string{"uni", "bi", "di", "tri", "quadri", "quattuor", "quinque", "sex", "septem", "octo", "novem", "decem", "undecim", "duodecim", "tredecim",
		"quattuordecim", "quindecim", "sedecim", "octodecim", "novemdecim", "viginti", "vigintiduo", "vigintiquattuor"}
)

// otherWord reports whether two epithets are two words of one stem rather
// than two spellings of one word.
func otherWord(a, b string) bool {
	for _, s := range suffixes {
		stemA, ok := strings.CutSuffix(a, s)
		if !ok || len(stemA) < 3 || !strings.HasPrefix(b, stemA) {
			continue
		}
		rest := b[len(stemA):]
		for _, t := range suffixes {
			if rest == t && t != s {
				return true
			}
		}
	}
	for _, n := range numerals {
		rest, ok := strings.CutPrefix(a, n)
		if !ok || len(rest) < 4 || !strings.HasSuffix(b, rest) {
			continue
		}
		front := b[:len(b)-len(rest)]
		for _, m := range numerals {
			if front == m && m != n {
				return true
			}
		}
	}
	return false
}
