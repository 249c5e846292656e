package layout

import (
	"fmt"
	"testing"

	"fieldfare/convert/notebook"
)

// longList is a plain list of nine columns and any number of rows, made as it
// is walked.
type longList struct {
	memory
	n int
}

func (l *longList) Walk(fn func(*notebook.Row) error) error {
	species := []string{"Heart and Dart", "Large Yellow Underwing", "Flame Shoulder", "Setaceous Hebrew Character", "Drinker", "Noctua pronuba"}
	dates := make([]string, 28)
	for i := range dates {
		dates[i] = fmt.Sprintf("%02d/06/2014", i+1)
	}
	counts := make([]string, 40)
	for i := range counts {
		counts[i] = fmt.Sprint(i + 1)
	}
	head := []string{"Date", "Site", "Grid ref", "Species", "Count", "Recorder", "Determiner", "Method", "Remarks"}
	row := notebook.Row{Number: 1, Cells: make([]notebook.Cell, 9)}
	for i, h := range head {
		row.Cells[i] = textCell(h)
	}
	if err := fn(&row); err != nil {
		return err
	}
	for i := range l.n {
		row.Number = i + 2
		for c, t := range [...]string{dates[i/7%28], "Tinker's Row", "TL453812", species[i%6], counts[i%17%40], "Ines Calloway", "Tom Achterberg", "MV light", ""} {
			row.Cells[c].Text = t
			row.Cells[c].Kind = notebook.Text
			if t == "" {
				row.Cells[c].Kind = notebook.Empty
			}
		}
		if err := fn(&row); err != nil {
			return err
		}
	}
	return nil
}

// BenchmarkWalkList reads plain rows of nine columns; ns/op is one row.
func BenchmarkWalkList(b *testing.B) {
	l := &longList{memory: memory{file: "long.csv"}, n: 5000}
	p, err := Survey(l, Options{})
	if err != nil {
		b.Fatal(err)
	}
	l.n = b.N
	drafts := 0
	b.ReportAllocs()
	b.ResetTimer()
	if err := p.Walk(l, func(o *Outcome) error { drafts += len(o.Drafts); return nil }); err != nil {
		b.Fatal(err)
	}
	if drafts != b.N {
		b.Fatal(drafts)
	}
}

// BenchmarkSurvey decides on a sheet; ns/op is one row of a long one.
func BenchmarkSurvey(b *testing.B) {
	l := &longList{memory: memory{file: "long.csv"}, n: b.N}
	b.ReportAllocs()
	if _, err := Survey(l, Options{}); err != nil {
		b.Fatal(err)
	}
}
