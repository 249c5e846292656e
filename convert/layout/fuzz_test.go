package layout

import (
	"strings"
	"testing"

	"fieldfare/convert/notebook"
)

// FuzzWalk: whatever a page holds, reading it ends, every row has one outcome
// and every cell with text is used or left for a reason.
func FuzzWalk(f *testing.F) {
	for _, s := range []string{
		"Date|Site|Species|No.\n12/06/2014|Tinker's Row|Flame|3\n|\"|\"|do",
		"Tinker's Row 2014\n|June||July\nSpecies|12|13|3|Total\nFlame|1|x||2\nTotal|1|1||2",
		"Night|Drinker||Flame\n|M|F|M\n12/6/14|1||2\n13/6/14|0|-|",
		"Species|No.||Species|No.\nFlame|1||Drinker|2\nTotal|1",
		"12 June: 3 Heart and Dart, 2 Flame\n13 June: nothing",
		"Date:|12/6/14||Site:|X\nSpecies|Count||Species|Count\nFlame|2",
		"a\nb\n\nc|1|#REF!",
		"Day|Month|Year|Genus|Species|E|N\n1|6|14|Noctua|pronuba|545300|281200",
		"Species|Site|Grid ref|Count\nFlame|â€™|453812|02-Apr\n|TL45||",
	} {
		f.Add(s, true)
	}
	f.Fuzz(func(t *testing.T, text string, absence bool) {
		if len(text) > 4000 {
			return
		}
		m := &memory{file: "page.csv", name: "2014"}
		for i, l := range strings.Split(text, "\n") {
			var cells []notebook.Cell
			for j, c := range strings.Split(l, "|") {
				cell := textCell(c)
				if cell.Text != "" && len(c)%7 == 3 {
					cell.Spread = true
				}
				if strings.HasPrefix(c, "~") {
					cell = notebook.Cell{Text: c, Raw: "2021-04-02", Kind: notebook.Date, Struck: j == 3}
				}
				cells = append(cells, cell)
			}
			m.rows = append(m.rows, notebook.Row{Number: i + 1, Cells: cells, Struck: strings.HasPrefix(l, "##")})
		}
		p, err := Survey(m, Options{ZeroIsAbsence: absence})
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		read := func(p *Plan) {
			n = 0
			err = p.Walk(m, func(o *Outcome) error {
				n++
				assertCellsAddUp(t, o)
				for i := range o.Drafts {
					for _, v := range o.Drafts[i].Values {
						if v.Text == "" || strings.TrimSpace(v.Text) != v.Text {
							t.Errorf("row %d: value %q of %s", o.Row.Number, v.Text, v.Meaning)
						}
					}
				}
				return nil
			})
			if err != nil || n != len(m.rows) {
				t.Fatal(n, len(m.rows), err)
			}
		}
		read(p)
		q, err := Survey(m, Options{Overrides: p.Entries()})
		if err != nil {
			t.Fatal(err)
		}
		read(q)
	})
}
