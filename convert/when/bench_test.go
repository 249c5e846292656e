package when_test

import (
	"testing"

	"fieldfare/convert/when"
)

func BenchmarkRead(b *testing.B) {
	for _, text := range []string{
		"12/6/21", "12/06/2021", "2021-06-12", "12 June 2021", "12.vi.98", "12/13 June 2021",
		"12-13.vi.21", "Sat 12 June 2021", "12/06/2021 22:45", "12 Sepember 2021", "June 2003", "not a date at all",
	} {
		b.Run(text, func(b *testing.B) {
			o := when.Options{Today: lastDay}
			b.ReportAllocs()
			for b.Loop() {
				when.Read(text, o)
			}
		})
	}
}

func BenchmarkObserve(b *testing.B) {
	var e when.Evidence
	b.ReportAllocs()
	for b.Loop() {
		e.Observe("12/06/2021")
	}
}
