package taxa

import (
	"math/rand"
	"testing"

	"github.com/agnivade/levenshtein"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// misspell makes n slips in a key, as a typist would.
func misspell(rng *rand.Rand, k string, n int) string {
	b := []byte(k)
	for range n {
		if len(b) < 3 {
			break
		}
		i := rng.Intn(len(b) - 1)
		switch rng.Intn(4) {
		case 0:
			b = append(b[:i], b[i+1:]...)
		case 1:
			b = append(b[:i], append([]byte{b[i]}, b[i:]...)...)
		case 2:
			b[i], b[i+1] = b[i+1], b[i]
		default:
			b[i] = byte('a' + rng.Intn(26))
		}
	}
	return string(b)
}

// Every word that a full scan with an independent library
// (github.com/agnivade/levenshtein) finds within the limit, the index finds.
// The library counts a swap as two changes, so it finds no more than that.
func TestIndexFindsWhatAFullScanFinds(t *testing.T) {
	ix := NewIndex(Starter())
	rng := rand.New(rand.NewSource(1))
	for name, x := range map[string]*wordIndex{"genera": &ix.spelling.genera, "vernacular names": &ix.spelling.english, "higher taxa": &ix.spelling.single} {
		require.NotEmpty(t, x.words, name)
		scanned := 0
		for range 1500 {
			w := misspell(rng, x.words[rng.Intn(len(x.words))], rng.Intn(4))
			for limit := 1; limit <= 3; limit++ {
				found := map[string]bool{}
				x.near(w, limit, func(at int32) { found[x.words[at]] = true })
				for _, candidate := range x.words {
					if levenshtein.ComputeDistance(w, candidate) <= limit {
						scanned++
						assert.True(t, found[candidate], "%s: %q is within %d of %q", name, candidate, limit, w)
					}
				}
			}
		}
		assert.Greater(t, scanned, 1000, name)
	}
}

// The same for names of genus and epithet, part by part, through the matcher's
// own search.
func TestScientificSearchFindsWhatAFullScanFinds(t *testing.T) {
	ix := NewIndex(Starter())
	r := resolver{ix: ix}
	rng := rand.New(rand.NewSource(2))
	scanned := 0
	for range 1500 {
		e := ix.sci[rng.Intn(len(ix.sci))]
		g, ep := misspell(rng, ix.genusKey[e.genus], rng.Intn(2)), misspell(rng, e.epithet, rng.Intn(3))
		if len(g) < 5 || len(ep) < 5 || noteWords[ep] || doubtWords[ep] != "" || openWords[ep] != "" || ix.genera[g].end > 0 {
			continue // a genus that is on the list is searched first, and alone if that is enough
		}
		found := map[int32]bool{}
		for _, s := range r.nearScientific(tokenize(capitalised(g) + " " + ep)) {
			found[ix.names[s.name].taxon] = true
		}
		for i := range ix.sci {
			c := &ix.sci[i]
			if c.infra == "" && levenshtein.ComputeDistance(g, ix.genusKey[c.genus]) <= 2 && levenshtein.ComputeDistance(ep, c.epithet) <= 2 {
				scanned++
				assert.True(t, found[ix.names[c.name].taxon], "%s %s is within 2 and 2 of %s %s", ix.genusKey[c.genus], c.epithet, g, ep)
			}
		}
	}
	assert.Greater(t, scanned, 300)
}

// plainOSA is the optimal string alignment distance by its definition.
func plainOSA(a, b string) int {
	d := make([][]int, len(a)+1)
	for i := range d {
		d[i] = make([]int, len(b)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			c := 1
			if a[i-1] == b[j-1] {
				c = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+c)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(a)][len(b)]
}

func checkDistances(t *testing.T, a, b string) {
	t.Helper()
	want := plainOSA(a, b)
	assert.LessOrEqual(t, want, levenshtein.ComputeDistance(a, b), "%q %q", a, b)
	var p pattern
	p.set(a)
	for limit := range 5 {
		assert.Equal(t, min(want, limit+1), distance(a, b, limit), "%q %q limit %d", a, b, limit)
		if a != "" {
			assert.Equal(t, min(want, limit+1), p.distance(b, limit), "%q %q limit %d, by bits", a, b, limit)
		}
	}
}

func TestDistance(t *testing.T) {
	rng := rand.New(rand.NewSource(4))
	letters := "abcde"
	word := func(n int) string {
		b := make([]byte, n)
		for i := range b {
			b[i] = letters[rng.Intn(len(letters))]
		}
		return string(b)
	}
	for range 20000 {
		a := word(rng.Intn(12))
		checkDistances(t, a, word(rng.Intn(12)))
		checkDistances(t, a, misspell(rng, a, rng.Intn(4)))
	}
}

func FuzzDistance(f *testing.F) {
	f.Add("pronuba", "prunoba")
	f.Add("", "a")
	f.Add("setaceoushebrewcharacter", "setaceushebrewcaracter")
	f.Fuzz(func(t *testing.T, a, b string) {
		if len(a) > 40 || len(b) > 40 {
			return
		}
		for i := range len(a) {
			if a[i] >= 0x80 {
				return
			}
		}
		for i := range len(b) {
			if b[i] >= 0x80 {
				return
			}
		}
		checkDistances(t, a, b)
	})
}

// ICZN Article 58: species-group names of one genus that differ in nothing but
// these are deemed to be spelt alike. The examples are the Code's own.
func TestSoundKeyFollowsArticle58(t *testing.T) {
	for _, pair := range [][2]string{
		{"caeruleus", "coeruleus"}, {"caeruleus", "ceruleus"}, // 58.1
		{"cheiropus", "chiropus"}, {"chiropus", "chyropus"}, // 58.2
		{"iavanus", "javanus"},          // 58.3
		{"microdon", "mikrodon"},        // 58.5
		{"oxyrhynchus", "oxyrynchus"},   // 58.6
		{"litoralis", "littoralis"},     // 58.7
		{"sulfureus", "sulphureus"},     // 58.9
		{"chloropterus", "cloropterus"}, // 58.10
		{"thiara", "tiara"},             // 58.11
	} {
		assert.Equal(t, soundKey(pair[0], false), soundKey(pair[1], false), "%v", pair)
	}
	for _, pair := range [][2]string{{"pallens", "impura"}, {"immorata", "immutata"}, {"rapae", "napi"}} {
		assert.NotEqual(t, soundKey(pair[0], false), soundKey(pair[1], false), "%v", pair)
	}
}

// ICZN Articles 31.2 and 34.2 (agreement in gender) and 58.14 (-i and -ii).
func TestSameButForEnding(t *testing.T) {
	for _, pair := range [][2]string{
		{"fimbriata", "fimbriatus"}, {"pulchellum", "pulchella"}, {"niger", "nigra"}, {"nigrum", "niger"}, {"sylvestris", "sylvestre"},
		{"acer", "acris"}, {"acre", "acer"}, {"boltoni", "boltonii"}, {"smithae", "smithiae"}, {"pallidus", "pallidum"}, {"paluster", "palustris"},
	} {
		assert.True(t, sameButForEnding(pair[0], pair[1]), "%v", pair)
		assert.True(t, sameButForEnding(pair[1], pair[0]), "%v", pair)
	}
	for _, pair := range [][2]string{
		{"alba", "albella"}, {"immutata", "imitaria"}, {"rufa", "rufina"}, {"major", "minor"}, {"psi", "pisi"}, {"io", "ia"}, {"comes", "coma"},
	} {
		assert.False(t, sameButForEnding(pair[0], pair[1]), "%v", pair)
	}
}
