package layout

import "fieldfare/convert/reading"

// sum is what the counts of a column come to, from the first row and from the
// row behind the last sum.
type sum struct{ all, part int }

func (s *sum) add(text string) {
	if n := leadingNumber(text); n > 0 {
		s.all += n
		s.part += n
	}
}

// leadingNumber is the first whole number of a count: 20 of "c.20", 0 where
// there is none.
func leadingNumber(text string) int {
	for i := 0; i < len(text); i++ {
		if !isDigit(text[i]) {
			continue
		}
		n := 0
		for ; i < len(text) && isDigit(text[i]) && n < 1e8; i++ {
			n = n*10 + int(text[i]-'0')
		}
		return n
	}
	return 0
}

// sumsUp reports whether a row without a name or a date of its own is a row of
// sums: figures under counts only, most of them what the column above comes
// to.
func (w *walker) sumsUp(b *block, s *listState, k *keptRow) bool {
	for c := range k.looks {
		if k.looks[c] == 0 || b.axis != nil && c < len(b.axis.byCol) && b.axis.byCol[c] >= 0 {
			continue
		}
		if c < len(s.byCol) && s.byCol[c] >= 0 {
			if pl := &s.plans[s.byCol[c]]; !pl.count && pl.left == "" {
				return false // something else stands on the row
			}
		}
	}
	return w.figuresFit(b, s, k)
}

// figuresFit reports whether most figures of a row are what the columns above
// them come to.
func (w *walker) figuresFit(b *block, s *listState, k *keptRow) bool {
	fit, n, more := 0, 0, false
	judge := func(c int, at *sum) {
		v, ok := isInt(k.text(c))
		if !ok {
			return
		}
		n++
		if v > 0 && (v == at.all || v == at.part) {
			fit++
			more = more || v > 0
		}
	}
	for c := range k.looks {
		if k.looks[c] == 0 {
			continue
		}
		switch {
		case b.axis != nil && c < len(b.axis.byCol) && b.axis.byCol[c] >= 0:
			if i := b.axis.byCol[c]; b.axis.cols[i].left == "" && b.axis.cols[i].role == Count {
				judge(c, &s.axisSums[i])
			}
		case c < len(s.byCol) && s.byCol[c] >= 0:
			if pl := &s.plans[s.byCol[c]]; pl.count {
				judge(c, &pl.sum)
			}
		}
	}
	return more && fit*5 >= n*3
}

// endSums begins the sums anew behind a row of sums.
func (s *listState) endSums() {
	for i := range s.plans {
		s.plans[i].sum.part = 0
	}
	for i := range s.axisSums {
		s.axisSums[i].part = 0
	}
}

// askUnlabelled asks about counts of a table of nights whose row has no date
// and no other label.
func askUnlabelled(d *Draft, row int) {
	if v, ok := d.Get(Date); ok && v.From == FromAbove {
		v.Doubt = v.Doubt.And(reading.QueryOf("row-without-label", "Row "+itoa(row)+" holds counts but no date. It is taken for a further row of “"+v.Text+"”. If it is a row of sums, write “Total” before it.", v.Text))
	}
}

// bare reports whether a row has text in the columns of counts only.
func (b *block) bare(k *keptRow) bool {
	for c := range k.looks {
		if k.looks[c] != 0 && !(b.axis != nil && c < len(b.axis.byCol) && b.axis.byCol[c] >= 0) {
			return false
		}
	}
	return true
}
