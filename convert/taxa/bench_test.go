package taxa_test

import (
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/require"
)

// bigList writes a made-up list of n accepted names, with a vernacular name
// and every fourth time a synonym. The words are made of Latin and English
// syllables, so that they are as alike as real names are.
func bigList(n int) string {
	rng := rand.New(rand.NewSource(7))
	pick := func(parts ...string) string { return parts[rng.Intn(len(parts))] }
	latin := func(syllables int) string {
		var b strings.Builder
		for range syllables {
			b.WriteString(pick("a", "e", "ba", "ca", "cri", "da", "do", "el", "fu", "ga", "ho", "il", "la", "li", "lo", "ma", "me", "mo", "na", "ne", "no", "or", "pa", "pe", "phi", "pla", "ra", "ro", "ru", "sa", "se", "sti", "ta", "te", "tho", "tri", "va", "vi", "xy", "ze"))
		}
		return b.String()
	}
	title := func(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
	var b strings.Builder
	b.WriteString("taxonID,scientificName,scientificNameAuthorship,taxonRank,family,order,kingdom,vernacularName,synonyms,flight months\n")
	genus := ""
	seen := map[string]bool{}
	for i := 0; i < n; {
		if genus == "" || rng.Intn(5) == 0 {
			genus = title(latin(3+rng.Intn(2)) + pick("a", "us", "is", "on", "um"))
		}
		name := genus + " " + latin(2+rng.Intn(3)) + pick("ata", "ella", "aria", "us", "alis", "ana", "osa", "i", "ensis", "oides")
		if seen[name] {
			continue
		}
		seen[name] = true
		vernacular := title(pick("pale", "dark", "small", "large", "great", "common", "scarce", "northern", "southern", "dotted", "barred", "silver", "golden", "dusky")) + " " +
			title(latin(2)) + pick("wing", "spot", "bar", "line", "mark") + " " + title(pick("carpet", "wainscot", "pug", "rustic", "moth", "beetle", "bee", "fly", "weevil", "bug"))
		synonym := ""
		if i%4 == 0 {
			synonym = title(latin(3)+"us") + " " + latin(3) + "ata"
		}
		fmt.Fprintf(&b, "big:%d,%s,\"(%s, %d)\",species,%sidae,%soptera,Animalia,%s,%s,%d-%d\n", i, name, title(latin(2)), 1758+rng.Intn(200), genus[:4], genus[:2], vernacular, synonym, 1+rng.Intn(6), 7+rng.Intn(6))
		i++
	}
	return b.String()
}

func bigFile(tb testing.TB, n int) string {
	path := filepath.Join(tb.TempDir(), "big.csv")
	require.NoError(tb, os.WriteFile(path, []byte(bigList(n)), 0o644))
	return path
}

func BenchmarkLoad100000(b *testing.B) {
	path := bigFile(b, 100_000)
	for b.Loop() {
		l, _, err := taxa.Load(path)
		require.NoError(b, err)
		taxa.NewIndex(l)
	}
}

// BenchmarkMemory100000 reports the heap that a loaded list and its index keep.
func BenchmarkMemory100000(b *testing.B) {
	path := bigFile(b, 100_000)
	for b.Loop() {
		var before, after runtime.MemStats
		runtime.GC()
		runtime.ReadMemStats(&before)
		l, _, err := taxa.Load(path)
		require.NoError(b, err)
		ix := taxa.NewIndex(l)
		runtime.GC()
		runtime.ReadMemStats(&after)
		b.ReportMetric(float64(after.HeapAlloc-before.HeapAlloc)/1e6, "MB")
		runtime.KeepAlive(ix)
	}
}

func bigNames(b *testing.B) (*taxa.Index, []string) {
	l, _, err := taxa.Load(bigFile(b, 100_000))
	require.NoError(b, err)
	var names []string
	for i := range l.Len() {
		names = append(names, l.Taxon(i).ScientificName, l.Taxon(i).Vernacular)
	}
	rng := rand.New(rand.NewSource(3))
	rng.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	return taxa.NewIndex(l), names
}

// BenchmarkExact reads 200,000 different names, so that the cache, which holds
// fewer, hardly ever helps.
func BenchmarkExact(b *testing.B) {
	ix, names := bigNames(b)
	m := ix.NewMatcher()
	i := 0
	for b.Loop() {
		m.Match(taxa.Written{Name: names[i%len(names)]}, taxa.Context{})
		i++
	}
}

func BenchmarkCached(b *testing.B) {
	ix, names := bigNames(b)
	m := ix.NewMatcher()
	i := 0
	for b.Loop() {
		m.Match(taxa.Written{Name: names[i%1000]}, taxa.Context{})
		i++
	}
}

func BenchmarkMisspelt(b *testing.B) {
	ix, names := bigNames(b)
	rng := rand.New(rand.NewSource(5))
	for i, n := range names {
		at := 1 + rng.Intn(len(n)-2)
		switch rng.Intn(3) {
		case 0:
			names[i] = n[:at] + n[at+1:]
		case 1:
			names[i] = n[:at] + string(n[at]) + n[at:]
		default:
			names[i] = n[:at] + string(rune('a'+rng.Intn(26))) + n[at+1:]
		}
	}
	m := ix.NewMatcher()
	i := 0
	for b.Loop() {
		m.Match(taxa.Written{Name: names[i%len(names)]}, taxa.Context{})
		i++
	}
}
