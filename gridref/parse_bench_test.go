package gridref

import "testing"

// written are values as notebooks have them, all of them with land.
var benchmarkValues = []string{
	"TL4881", "TL 483 812", "tl48308120", "SU 12345 67890", "TL48J", "NY 123 456", "SO1234", "TF 50 12",
}

// BenchmarkReferences reads references and finds their latitude, longitude and
// uncertainty.
func BenchmarkReferences(b *testing.B) {
	shifts()
	b.ReportAllocs()
	var sum float64
	i := 0
	for b.Loop() {
		r, err := Parse(benchmarkValues[i%len(benchmarkValues)])
		if err != nil {
			b.Fatal(err)
		}
		sum += r.Square.Point().Lat
		i++
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "references/s")
	_ = sum
}

func BenchmarkParseOnly(b *testing.B) {
	i := 0
	for b.Loop() {
		Parse(benchmarkValues[i%len(benchmarkValues)])
		i++
	}
}

func BenchmarkBack(b *testing.B) {
	shifts()
	p := Point{Lat: 52.4091617, Lon: 0.1795509, Uncertainty: 71.9}
	b.ReportAllocs()
	for b.Loop() {
		p.Smallest(British)
	}
}

func BenchmarkUntidy(b *testing.B) {
	untidy := []string{"grid ref. TL 48/81 (approx)", "52° 24′ 33″ N, 0° 10′ 46″ E", "TLO512", "5453,2812"}
	i := 0
	for b.Loop() {
		Parse(untidy[i%len(untidy)])
		i++
	}
}
