package layout

import (
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"sort"
	"strings"
	"testing"

	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const notebooks = "../../testdata/notebooks"

// account is what became of a notebook, a map for each draft or skipped row.
type account []map[string]string

// readNotebook surveys and walks every sheet with no options but the lists, and
// checks that every cell with text is accounted for.
func readNotebook(t testing.TB, path string, probe Probe) account {
	book, err := notebook.Open(context.Background(), path, notebook.Options{})
	require.NoError(t, err)
	defer func() { assert.NoError(t, book.Close()) }()
	var out account
	sheets := book.Sheets()
	for i, s := range sheets {
		plan, err := Survey(s, Options{Probe: probe, Others: slices.Concat(sheets[:i], sheets[i+1:])})
		require.NoError(t, err)
		require.NoError(t, plan.Walk(s, func(o *Outcome) error {
			assertCellsAddUp(t, o)
			out = append(out, accountOf(s.Name(), o)...)
			return nil
		}))
	}
	return out
}

func assertCellsAddUp(t testing.TB, o *Outcome) {
	text, sum := 0, o.Used
	for i := range o.Row.Cells {
		if HasText(&o.Row.Cells[i]) {
			text++
		}
	}
	for _, n := range o.Left {
		sum += n
	}
	assert.Equal(t, text, sum, "row %d: cells used (%d) and left (%v)", o.Row.Number, o.Used, o.Left)
	assert.Equal(t, len(o.Drafts) == 0, o.Skip != "", "row %d: a row has drafts or a reason why not", o.Row.Number)
}

func accountOf(sheet string, o *Outcome) account {
	var out account
	for i := range o.Drafts {
		d := &o.Drafts[i]
		m := map[string]string{"row": fmt.Sprint(d.Row)}
		if sheet != "" {
			m["sheet"] = sheet
		}
		if d.Empty {
			m["empty"] = "yes"
		}
		for _, v := range d.Values {
			text := v.Text
			if mark := strings.TrimSpace(v.Sex + " " + v.Stage); mark != "" {
				text += " [" + mark + "]"
			}
			key := string(v.Meaning)
			if v.Meaning == Term {
				key = "term " + v.Heading
			}
			add(m, key, text)
			if v.Doubt.Code != "" {
				add(m, "doubts", string(v.Meaning)+": "+v.Doubt.Code)
			}
		}
		out = append(out, m)
	}
	if len(o.Drafts) == 0 && o.Skip != skipBlank && o.Skip != skipHeadings && o.Skip != skipTitle {
		m := map[string]string{"row": fmt.Sprint(o.Row.Number), "skip": o.Skip}
		if sheet != "" {
			m["sheet"] = sheet
		}
		out = append(out, m)
	}
	for _, n := range o.Notes {
		m := map[string]string{"row": fmt.Sprint(o.Row.Number), "note": n.Code}
		if sheet != "" {
			m["sheet"] = sheet
		}
		out = append(out, m)
	}
	return out
}

func add(m map[string]string, key, text string) {
	if m[key] != "" {
		text = m[key] + "; " + text
	}
	m[key] = text
}

// readExpected reads a table that says what a notebook holds: a line for each
// record, with a column for each meaning, and for each row skipped with its
// reason. Titles, headings and blank rows are not listed.
func readExpected(t testing.TB, path string) account {
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var out account
	for _, l := range lines[1:] {
		m := map[string]string{}
		for i, v := range l {
			if v != "" {
				m[lines[0][i]] = v
			}
		}
		out = append(out, m)
	}
	return out
}

// lines writes an account a line an entry, for a readable difference.
func (a account) lines() []string {
	var out []string
	for _, m := range a {
		keys := make([]string, 0, len(m))
		for k := range m {
			if k != "row" {
				keys = append(keys, k)
			}
		}
		sort.Strings(keys)
		s := "row " + m["row"]
		for _, k := range keys {
			s += " | " + k + " = " + m[k]
		}
		out = append(out, s)
	}
	return out
}

// TestNotebooks reads every notebook under testdata with no options, without
// and with a taxon list, and compares it with the table that says what a
// person reads there.
func TestNotebooks(t *testing.T) {
	tables, err := filepath.Glob(filepath.Join(notebooks, "*.expected.csv"))
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(tables), 40)
	lists := newListed()
	for _, table := range tables {
		stem := strings.TrimSuffix(table, ".expected.csv")
		t.Run(filepath.Base(stem), func(t *testing.T) {
			files, err := filepath.Glob(stem + ".*")
			require.NoError(t, err)
			for _, f := range files {
				if f != table {
					want := readExpected(t, table).lines()
					assert.Equal(t, want, readNotebook(t, f, nil).lines(), "without lists")
					assert.Equal(t, want, readNotebook(t, f, lists).lines(), "with a taxon list")
				}
			}
		})
	}
}
