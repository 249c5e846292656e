package layout

// transposed reports whether a list stands on its side from a row on: the
// headings in one column, a record in each column beside it. Rows above the
// counts head them, rows below say more of each.
func (p *page) transposed(i int) (head, bool) {
	r := &p.rows[i]
	if r.n < 3 || r.struck {
		return head{}, false
	}
	said := map[Meaning]bool{}
	counts, rows := -1, 0
	var cols []int
	for j := i; j < len(p.rows) && p.rows[j].n > 1 && p.rows[j].first == r.first; j++ {
		ms := headingSenses(p.rows[j].text(r.first), false)
		if len(ms) == 0 || ms[0].weight < weightExact-5 || said[ms[0].meaning] {
			return head{}, false
		}
		said[ms[0].meaning] = true
		rows++
		isCounts := p.rows[j].count(lookInt, r.first+1, len(p.rows[j].looks)) == p.rows[j].n-1
		switch {
		case isName(ms[0].meaning) && ms[0].meaning != TaxonNumber:
			for c := r.first + 1; c < len(p.rows[j].looks); c++ {
				if l := p.rows[j].looks[c]; l.is(lookTaxon | lookBinomial) {
					cols = append(cols, c)
				} else if l != 0 {
					return head{}, false
				}
			}
		case ms[0].meaning == Count && isCounts:
			counts = j
		}
	}
	if rows < 3 || len(cols) < 2 || counts <= i || !said[Date] {
		return head{}, false
	}
	return head{from: i, to: counts - 1, table: true, species: true, cols: cols, transposed: true}, true
}

// settleTransposed takes the rows below the counts of a list on its side for
// what they say of each record.
func (p *Plan) settleTransposed(b *block) {
	if b.factRows == nil {
		b.factRows = map[int]bool{}
	}
	for i := range b.sample {
		r := &b.sample[i]
		if r.n < 2 || r.struck || r.first >= b.axis.cols[0].col {
			continue
		}
		if ms := headingSenses(r.text(r.first), false); len(ms) == 0 || ms[0].weight < weightExact-5 || ms[0].meaning == Count {
			continue
		}
		p.takeFactRow(b, r)
	}
}
