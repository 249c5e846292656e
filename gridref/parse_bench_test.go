package gridref

import (
	"math/rand/v2"
	"testing"
)

// tidyReferences are references in every tidy style, to squares of every size
// up to 2 km, anywhere in an area of the British grid that has land.
func tidyReferences(west, east, south, north float64) []string {
	random := rand.New(rand.NewPCG(53, 59))
	values := make([]string, 0, 1<<12)
	for len(values) < cap(values) {
		p := Plane{British, west + random.Float64()*(east-west), south + random.Float64()*(north-south)}
		s, err := p.Square(sizes[random.IntN(5)])
		if err != nil || !s.HasLand() || s.elsewhere() {
			continue
		}
		text := s.String()
		if half := len(text)/2 + 1; s.Size != 2000 && random.IntN(2) == 0 {
			text = text[:2] + " " + text[2:half] + " " + text[half:]
		}
		values = append(values, text)
	}
	return values
}

// BenchmarkReferences reads references and finds their latitude, longitude and
// uncertainty: first those of a county, as notebooks have them, then from all
// over Britain, where most of the shifts have to come from far memory.
func BenchmarkReferences(b *testing.B) {
	for _, area := range []struct {
		name                     string
		west, east, south, north float64
	}{
		{"county", 520_000, 580_000, 240_000, 320_000},
		{"Britain", 0, 700_000, 0, 1_250_000},
	} {
		values := tidyReferences(area.west, area.east, area.south, area.north)
		b.Run(area.name, func(b *testing.B) {
			shifts()
			b.ReportAllocs()
			var sum float64
			i := 0
			for b.Loop() {
				r, err := Parse(values[i%len(values)])
				if err != nil {
					b.Fatal(err)
				}
				sum += r.Square.Point().Lat
				i++
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "references/s")
			_ = sum
		})
	}
}

func BenchmarkParseOnly(b *testing.B) {
	values := tidyReferences(520_000, 580_000, 240_000, 320_000)
	i := 0
	for b.Loop() {
		Parse(values[i%len(values)])
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
