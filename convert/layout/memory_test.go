package layout

import (
	"strings"

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
