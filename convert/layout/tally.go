package layout

import "strings"

// tally sums up a walk, for Print.
type tally struct {
	rows, drafts, used int
	left               map[string]int
	skipped            map[string]int
	carried            map[Meaning]int
	sections           map[Meaning]bool // what lines of the page say
	rowsOf             map[string][]int // the first rows skipped, by reason
	notes              []Note           // the first about single rows
	more               int              // those beyond
	printed            map[string]bool  // messages about pages and columns
}

// shown is how many rows of a kind, and notes about rows, Print names.
const shown = 10

// where names the rows skipped for a reason: "1, 7-9".
func (t *tally) where(reason string) string {
	rows := t.rowsOf[reason]
	var parts []string
	for i := 0; i < len(rows); {
		j := i
		for j+1 < len(rows) && rows[j+1] == rows[j]+1 {
			j++
		}
		part := itoa(rows[i])
		if j > i {
			part += "-" + itoa(rows[j])
		}
		parts = append(parts, part)
		i = j + 1
	}
	if t.skipped[reason] > len(rows) {
		parts = append(parts, "…")
	}
	return strings.Join(parts, ", ")
}

// many counts things in words: "1 row", "2 rows".
func many(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return itoa(n) + " " + thing + "s"
}

// note keeps the notes about the row itself; those about columns and pages
// have another row's address or are printed by themselves.
func (t *tally) note(o *Outcome) {
	for _, n := range o.Notes {
		switch {
		case n.Ref.Row != o.Row.Number || t.printed[n.Message]:
		case len(t.notes) < shown:
			t.notes = append(t.notes, n)
		default:
			t.more++
		}
	}
}

func (t *tally) add(o *Outcome) {
	t.rows++
	t.drafts += len(o.Drafts)
	t.used += o.Used
	if o.Skip != "" {
		if t.skipped == nil {
			t.skipped = map[string]int{}
		}
		t.skipped[o.Skip]++
		if t.rowsOf == nil {
			t.rowsOf = map[string][]int{}
		}
		if len(t.rowsOf[o.Skip]) < shown {
			t.rowsOf[o.Skip] = append(t.rowsOf[o.Skip], o.Row.Number)
		}
	}
	t.note(o)
	for k, n := range o.Left {
		if t.left == nil {
			t.left = map[string]int{}
		}
		t.left[k] += n
	}
	for i := range o.Drafts {
		for j := range o.Drafts[i].Values {
			v := &o.Drafts[i].Values[j]
			if v.From == FromSection && !t.sections[v.Meaning] {
				if t.sections == nil {
					t.sections = map[Meaning]bool{}
				}
				t.sections[v.Meaning] = true
			}
			if v.From == FromAbove {
				if t.carried == nil {
					t.carried = map[Meaning]int{}
				}
				t.carried[v.Meaning]++
			}
		}
	}
}
