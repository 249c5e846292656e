package layout

// tally sums up a walk, for Print.
type tally struct {
	rows, drafts, used int
	left               map[string]int
	skipped            map[string]int
	carried            map[Meaning]int
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
			if v := &o.Drafts[i].Values[j]; v.From == FromAbove {
				if t.carried == nil {
					t.carried = map[Meaning]int{}
				}
				t.carried[v.Meaning]++
			}
		}
	}
}
