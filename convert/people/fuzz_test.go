package people_test

import (
	"strings"
	"testing"

	"fieldfare/convert/people"
	"fieldfare/convert/reading"
)

// FuzzRead: no panic, a query says why, names are never empty and hold no
// separator of their own list, and nobody is named who is not to be.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"IC & TA", "Calloway, I. & Achterberg, T.", "J & M Surtees", "leg. IC det. TA conf. P. Gault", "J. Fenn (leg.), P. Gault (det.)", "self (IC)",
		"Ines Calloway <ines@example.org>", "IC (with RQ)", "Mr & Mrs Surtees", "((", "det.", "&,;/|", "Rose Cottage, Mill Lane", "\xff\xfe", "Zoë—Fenn?"} {
		f.Add(s)
	}
	l := list(f)
	f.Fuzz(func(t *testing.T, s string) {
		r := l.Read(s, people.Options{Self: "IC"})
		if r.State > reading.Query || (r.State == reading.Query) != (r.Code != "") || (r.Code != "") != (r.Message != "") {
			t.Fatalf("%q: %+v", s, r.Verdict)
		}
		for _, list := range [][]string{r.RecordedBy, r.IdentifiedBy, r.VerifiedBy} {
			for _, name := range list {
				if strings.TrimSpace(name) == "" || strings.Contains(name, "|") {
					t.Fatalf("%q gives the name %q", s, name)
				}
				if name == "Rose Quill" {
					t.Fatalf("%q names %s", s, name)
				}
			}
		}
	})
}

// FuzzScrub: no panic, nothing found means nothing changed, and what is clean
// stays as it is.
func FuzzScrub(f *testing.F) {
	for _, s := range []string{"ring 01632 960123", "ines@example.org", "+44 (0)1632 960123", "12 Mill Lane, Elm PE14 0ZZ", "TF 49123 01234", "00 00 00 00", "+", "(0", "7700 900123", "a at b dot c"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		clean, found := people.Scrub(s)
		if len(found) == 0 && clean != s {
			t.Fatalf("%q became %q, but nothing was found", s, clean)
		}
		for _, w := range found {
			if w == "" {
				t.Fatalf("%q: found nothing and said so", s)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	l := list(b)
	for b.Loop() {
		l.Read("Ines Calloway & T. Achterberg", people.Options{})
	}
}

func BenchmarkScrubPlain(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		people.Scrub("on ivy beside the trap, rather worn")
	}
}

func BenchmarkScrubFigures(b *testing.B) {
	for b.Loop() {
		people.Scrub("12 on ivy at TF491012, 2 more on 13 June")
	}
}
