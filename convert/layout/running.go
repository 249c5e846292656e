package layout

import (
	"strings"

	"fieldfare/convert/notebook"
)

// runningColumns leaves out columns without a date among those of nights that
// hold what the nights so far come to: "1 Aug | T | 2 Aug | T".
func (b *block) runningColumns() {
	a := b.axis
	if a.species || !a.means[Date] {
		return
	}
	for i := range a.cols {
		if ac := &a.cols[i]; i > 0 && ac.left == "" && ac.role == Count && !ac.dated() && b.runs(i) {
			ac.left = leaveCumulative
		}
	}
}

// dated reports whether a date stands over the column.
func (ac *axisColumn) dated() bool {
	v := ac.get(Date)
	return v != nil && (v.Kind == notebook.Date || scanDate(v.Text) != noDate || strings.ContainsAny(v.Text, "0123456789"))
}

// runs reports whether every figure of a column is the sum of the nights to
// its left.
func (b *block) runs(i int) bool {
	fit, more := 0, false
	for j := range b.sample {
		r := &b.sample[j]
		total, ok := isInt(r.text(b.axis.cols[i].col))
		if !ok || r.firstLook().is(lookTotal) {
			continue
		}
		sum := 0
		for k := range b.axis.cols[:i] {
			if ac := &b.axis.cols[k]; ac.dated() && ac.left == "" {
				sum += leadingNumber(r.text(ac.col))
			}
		}
		if sum != total {
			return false
		}
		fit++
		more = more || total > 0
	}
	return fit >= 2 && more
}
