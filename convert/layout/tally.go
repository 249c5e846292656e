package layout

// tally sums up a walk, for Print.
type tally struct {
	rows, drafts, used int
	left               map[string]int
	skipped            map[string]int
	carried            map[Meaning]int
	sections           map[Meaning]bool // what lines of the page say
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
	}
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
