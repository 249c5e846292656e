package tally

import (
	"strings"
	"testing"
	"unicode"

	"fieldfare/convert/reading"
)

// FuzzRead holds every reading to what the package promises: no panic, a
// state and parts that fit together, valid terms, and nothing fair without a
// figure or a known word.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"12", "2m 1f", "3 (1f)", "c.20 larvae", "10 of which 4f", "♂2 ♀1", "1 L3", "12 (counted 15?)", "|||| ||", "nil (1 outside)",
		"vacated mines", "5 (3m 3f)", "2 dozen", "m/f", "1,200", "44359", "2021-06-12", "1E+05", "((2", "3 3rd instar", "1🦋", "between 5 and 10", "\xff\xfe2m"} {
		f.Add(s, "", "", false)
	}
	f.Add("1f", "m", "larvae", true)
	f.Add(strings.Repeat("(", 500)+"1", "", "", false)
	f.Add(strings.Repeat("1+", 499), "", "", false)
	f.Fuzz(func(t *testing.T, text, sexHeading, stageHeading string, zero bool) {
		o := Options{Sex: sexHeading, Stage: stageHeading, ZeroIsAbsence: zero}
		r := Read(text, o)
		check(t, text, r)
		if r.State == reading.Fair && sexHeading == "" && stageHeading == "" && !knows(text) {
			t.Fatalf("%q is fair without a figure or a known word", text)
		}
		for _, label := range []Reading{ReadSex(text), ReadStage(text)} {
			if label.State == reading.Skipped || label.State == reading.Held && len(label.Parts) > 0 {
				t.Fatalf("%q: %+v", text, label)
			}
		}
		check(t, text, Join([]Column{{text, sexHeading, ""}, {sexHeading, "", "larva"}, {stageHeading, "", ""}}, o))
	})
}

func check(t *testing.T, text string, r Reading) {
	if (len(r.Parts) > 0) != (r.State <= reading.Query) {
		t.Fatalf("%q is %s with %d parts", text, r.State, len(r.Parts))
	}
	if r.State != reading.Fair && (r.Code == "" || r.Message == "") {
		t.Fatalf("%q is %s without saying why", text, r.State)
	}
	for _, p := range r.Parts {
		n, ok := digits(p.IndividualCount)
		switch {
		case p.IndividualCount != "" && (!ok || p.IndividualCount[0] == '0' && p.IndividualCount != "0"):
			t.Fatalf("%q: individualCount %q", text, p.IndividualCount)
		case p.IndividualCount != "" && (n == 0) != p.Absent:
			t.Fatalf("%q: count %d, absent %v", text, n, p.Absent)
		case (p.OrganismQuantity == "") != (p.OrganismQuantityType == ""):
			t.Fatalf("%q: quantity %q of type %q", text, p.OrganismQuantity, p.OrganismQuantityType)
		case p.IndividualCount != "" && p.OrganismQuantity != "":
			t.Fatalf("%q: two quantities", text)
		}
	}
}

// knows tells whether a text has a figure, or a word or sign of the dictionary.
func knows(text string) bool {
	s := tidy(text)
	if _, _, whole := wholeCell(s, Options{}); whole {
		return true
	}
	if _, _, marks := strokes(s); marks {
		return true
	}
	for _, r := range s {
		if unicode.IsDigit(r) {
			return true
		}
	}
	list, _ := lex(s)
	for _, t := range list {
		switch t.kind {
		case unknown, sep, dash, open, shut, question, glue, place, times, to, other, approx:
		default:
			return true
		}
	}
	return false
}

func BenchmarkPlainCount(b *testing.B) {
	parts := make([]Part, 0, 4)
	b.ReportAllocs()
	for b.Loop() {
		parts, _ = Append(parts[:0], "12", Options{})
	}
}

func BenchmarkPlainCountUnderHeading(b *testing.B) {
	parts := make([]Part, 0, 4)
	b.ReportAllocs()
	for b.Loop() {
		parts, _ = Append(parts[:0], "12", Options{Sex: "male"})
	}
}

func BenchmarkMixed(b *testing.B) {
	parts := make([]Part, 0, 4)
	b.ReportAllocs()
	for b.Loop() {
		parts, _ = Append(parts[:0], "5 (3m 1f)", Options{})
	}
}
