package gridline

import (
	"bytes"
	"fmt"
	"io"
	"math/rand/v2"
	"testing"

	"fieldfare/convert/lines"

	"github.com/stretchr/testify/require"
)

// manyReferences are six-figure references in lettered squares of England.
func manyReferences(n int) []byte {
	random := rand.New(rand.NewPCG(1, 2))
	letters := []string{"SU", "SP", "TL", "TF", "SK", "SE", "NY", "TQ"}
	var b []byte
	for range n {
		b = fmt.Appendf(b, "%s%03d%03d\n", letters[random.IntN(len(letters))], random.IntN(1000), random.IntN(1000))
	}
	return b
}

func BenchmarkStreamCSV(b *testing.B) {
	input := manyReferences(100_000)
	table := Table(Options{})
	b.SetBytes(int64(len(input)))
	for b.Loop() {
		require.NoError(b, table.Stream(bytes.NewReader(input), io.Discard, lines.CSV))
	}
	b.ReportMetric(float64(b.N)*100_000/b.Elapsed().Seconds(), "lines/s")
}
