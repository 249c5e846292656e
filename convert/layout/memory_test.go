package layout

import (
	"fmt"
	"strings"
	"testing"

	"fieldfare/convert/notebook"
)

// memory is a sheet held in memory.
type memory struct {
	file, name string
	rows       []notebook.Row
	hidden     bool
	hiddenCols []int
}

func (m *memory) File() string         { return m.file }
func (m *memory) Name() string         { return m.name }
func (m *memory) Hidden() bool         { return m.hidden }
func (m *memory) HiddenColumns() []int { return m.hiddenCols }
func (m *memory) Walk(fn func(*notebook.Row) error) error {
	for i := range m.rows {
		if err := fn(&m.rows[i]); err != nil {
			return err
		}
	}
	return nil
}

// sheetOf makes a sheet of lines whose cells stand between bars.
func sheetOf(lines ...string) *memory {
	m := &memory{file: "page.csv"}
	for i, l := range lines {
		var cells []notebook.Cell
		for _, t := range strings.Split(l, "|") {
			cells = append(cells, textCell(strings.TrimSpace(t)))
		}
		m.rows = append(m.rows, notebook.Row{Number: i + 1, Cells: cells})
	}
	return m
}

func textCell(t string) notebook.Cell {
	if t == "" {
		return notebook.Cell{}
	}
	return notebook.Cell{Text: t, Kind: notebook.Text}
}

// show writes every outcome of a sheet in short.
func show(t testing.TB, s notebook.Sheet, o Options) string {
	p, err := Survey(s, o)
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	p.Print(&b)
	err = p.Walk(s, func(o *Outcome) error {
		if o.Skip != "" {
			fmt.Fprintf(&b, "%d skip %s used %d left %v\n", o.Row.Number, o.Skip, o.Used, o.Left)
		}
		for i := range o.Drafts {
			d := &o.Drafts[i]
			fmt.Fprintf(&b, "%d", d.Row)
			if d.Empty {
				b.WriteString(" EMPTY")
			}
			for _, v := range d.Values {
				fmt.Fprintf(&b, " | %s%s%s=%s", v.Meaning, v.Sex, v.Stage, v.Text)
				if v.From != FromCell {
					fmt.Fprintf(&b, " {%s}", v.From)
				}
				if v.Doubt.Code != "" {
					fmt.Fprintf(&b, " [%s]", v.Doubt.Code)
				}
			}
			b.WriteByte('\n')
		}
		for _, n := range o.Notes {
			fmt.Fprintf(&b, "  note %s: %s\n", n.Code, n.Message)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}
