package layout

import (
	"fmt"
	"strings"
	"time"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// marks are the doubts about single cells that only the page as a whole shows:
// autofill, a column sorted alone.
type marks map[notebook.Ref]reading.Verdict

func (m marks) add(r notebook.Ref, v reading.Verdict) {
	m[r] = m[r].And(v)
}

const (
	autofillGrid = 4 // rows that step by one, for references
	autofillDate = 5 // and for dates
)

// findDamage looks over the kept rows for damage to whole columns.
func (b *block) findDamage(p *Plan) {
	if b.kind != kindList {
		return
	}
	b.marks = marks{}
	b.headEnd = p.page.headEnd
	for i := range b.cols {
		c := &b.cols[i]
		if !c.used() || c.master != i || len(c.joined) > 0 {
			continue
		}
		switch c.meaning {
		case GridRef:
			b.autofill(p, c, autofillGrid, stepsByOne)
		case Date:
			b.autofill(p, c, autofillDate, nextDay)
			b.autofill(p, c, autofillGrid, stepsByOne)
		}
	}
	b.sortedAlone(p)
}

// records are the rows of the sample that are records.
func (b *block) records(p *Plan) []*keptRow {
	var out []*keptRow
	for i := range b.sample {
		r := &b.sample[i]
		if r.n >= 2 && r.single() < 0 && !r.struck && !r.firstLook().is(lookTotal) && !p.repeats(b, r) {
			out = append(out, r)
		}
	}
	return out
}

// autofill marks runs of cells that step by one from row to row, as dragging
// a cell's corner makes them.
func (b *block) autofill(p *Plan, c *column, least int, next func(a, b *notebook.Cell) bool) {
	rows := b.records(p)
	for from := 0; from < len(rows); {
		to := from + 1
		for to < len(rows) && rows[to].number == rows[to-1].number+1 && c.col < len(rows[to].cells) && c.col < len(rows[to-1].cells) &&
			next(&rows[to-1].cells[c.col], &rows[to].cells[c.col]) {
			to++
		}
		if to-from >= least && b.distinctNames(rows[from:to]) && (c.meaning != Date || b.onePlace(rows[from:to])) {
			first, last := rows[from], rows[to-1]
			for _, r := range rows[from+1 : to] {
				b.marks.add(cellRef(c.col, r.number), reading.QueryOf("autofill", fmt.Sprintf(
					"The %ss in %s to %s go up by one from row to row, from “%s” to “%s”. A spreadsheet does that when a cell is dragged down to copy it. If so, all were “%s”.",
					c.meaning, cellRef(c.col, first.number), cellRef(c.col, last.number), first.text(c.col), last.text(c.col), first.text(c.col)), first.text(c.col)))
			}
		}
		from = to
	}
}

// distinctNames: the rows name different species, as one visit's do.
func (b *block) distinctNames(rows []*keptRow) bool {
	seen := map[string]bool{}
	for _, c := range b.cols {
		if c.meaning != Taxon && c.meaning != Scientific && c.meaning != Vernacular || !c.used() {
			continue
		}
		for _, r := range rows {
			t := r.text(c.col)
			if seen[t] && t != "" {
				return false
			}
			seen[t] = true
		}
		return true
	}
	return true
}

// onePlace: the rows name one site, one square and one recorder, as one
// visit's do.
func (b *block) onePlace(rows []*keptRow) bool {
	for i := range b.cols {
		c := &b.cols[i]
		if !c.used() || c.meaning != Site && c.meaning != GridRef && c.meaning != Recorder {
			continue
		}
		first := ""
		for _, r := range rows {
			switch t := r.text(c.col); {
			case t == "" || r.look(c.col).is(lookDitto):
			case first == "":
				first = t
			case t != first:
				return false
			}
		}
	}
	return true
}

// stepsByOne: the last number of the text grows by one, the rest is the same.
func stepsByOne(a, b *notebook.Cell) bool {
	if a.Kind == notebook.Date || b.Kind == notebook.Date {
		return a.Kind == b.Kind && len(a.Raw) >= 10 && len(b.Raw) >= 10 && a.Raw[4:10] == b.Raw[4:10] && yearStep(a.Raw, b.Raw)
	}
	pa, na, wa := trailingNumber(trim(a.Text))
	pb, nb, wb := trailingNumber(trim(b.Text))
	return wa > 0 && wa == wb && pa == pb && nb == na+1 && len(pa) > 0
}

func yearStep(a, b string) bool {
	x, okA := isInt(a[:4])
	y, okB := isInt(b[:4])
	return okA && okB && y == x+1
}

func trailingNumber(s string) (prefix string, n, width int) {
	i := len(s)
	for i > 0 && isDigit(s[i-1]) && len(s)-i < 9 {
		i--
	}
	n, ok := isInt(s[i:])
	if !ok {
		return s, 0, 0
	}
	return s[:i], n, len(s) - i
}

// nextDay: the second date is the day after the first.
func nextDay(a, b *notebook.Cell) bool {
	x, okA := dayOf(a)
	y, okB := dayOf(b)
	return okA && okB && x.AddDate(0, 0, 1).Equal(y)
}

// dayOf reads a plain date, day before month: enough to see days in a row.
func dayOf(c *notebook.Cell) (time.Time, bool) {
	if c.Kind == notebook.Date && len(c.Raw) >= 10 {
		t, err := time.Parse("2006-01-02", c.Raw[:10])
		return t, err == nil
	}
	text := strings.NewReplacer("-", "/", ".", "/", " ", "/").Replace(trim(c.Text))
	for _, form := range [...]string{"2/1/2006", "2/1/06", "2006/1/2", "2/Jan/2006", "2/January/2006", "2/Jan/06", "2/1", "2/Jan", "2/January"} {
		if t, err := time.Parse(form, text); err == nil {
			return t, true
		}
	}
	return time.Time{}, false
}

// sortedAlone finds a column that was sorted without the others: its values no
// longer belong to those beside it, and it alone is in order.
func (b *block) sortedAlone(p *Plan) {
	rows := b.records(p)
	if len(rows) < 6 {
		return
	}
	pairs := [...][2]Meaning{{Scientific, Vernacular}, {TaxonNumber, Taxon}, {TaxonNumber, Scientific}, {TaxonNumber, Vernacular}, {GridRef, Site}, {Group, Taxon}}
	for _, pair := range pairs {
		x, y := b.find(pair[0], whole), b.find(pair[1], whole)
		if x == nil || y == nil || !b.disagree(p, rows, x, y) {
			continue
		}
		sx, sy := inOrder(rows, x.col), inOrder(rows, y.col)
		if sx == sy {
			continue
		}
		moved, other := x, y
		if sy {
			moved, other = y, x
		}
		b.markSorted(rows, moved, other)
		return
	}
	b.weekdaysMoved(rows)
}

func (b *block) markSorted(rows []*keptRow, moved, other *column) {
	msg := fmt.Sprintf("Column %s (%s) is in order from top to bottom while the rest is not, and its values no longer go with those of column %s (%s). It was probably sorted without the other columns. Please compare it with an older copy.",
		notebook.ColumnName(moved.col+1), moved.meaning, notebook.ColumnName(other.col+1), other.meaning)
	if end := b.headEnd; end > 0 { // the rest cannot be judged, and is likely the same
		msg += " Only the first " + itoa(end) + " rows were compared; the question is asked of all."
		moved.doubt = moved.doubt.And(reading.QueryOf("column-sorted-alone", msg))
		b.note("column-sorted-alone", msg, moved.col)
		return
	}
	for _, r := range rows {
		if r.look(moved.col) != 0 {
			b.marks.add(cellRef(moved.col, r.number), reading.QueryOf("column-sorted-alone", msg))
		}
	}
	b.note("column-sorted-alone", msg, moved.col)
}

// disagree reports whether two columns that should go together do not: for
// most values that recur, what stands beside them changes.
func (b *block) disagree(p *Plan, rows []*keptRow, x, y *column) bool {
	if x.meaning == Scientific || x.meaning == Taxon {
		known, wrong := 0, 0
		for _, r := range rows {
			if same, ok := p.opts.Probe.SameTaxon(r.text(x.col), r.text(y.col)); ok {
				known++
				if !same {
					wrong++
				}
			}
		}
		if known >= 4 {
			return wrong*2 >= known
		}
	}
	beside := map[string]map[string]int{}
	for _, r := range rows {
		k, v := r.text(x.col), r.text(y.col)
		if k == "" || v == "" {
			continue
		}
		if beside[k] == nil {
			beside[k] = map[string]int{}
		}
		beside[k][v]++
	}
	all, wrong := 0, 0
	for _, vs := range beside {
		sum, most := 0, 0
		for _, n := range vs {
			sum += n
			most = max(most, n)
		}
		if sum >= 2 {
			all += sum
			wrong += sum - most
		}
	}
	return all >= 4 && wrong*5 >= all*2
}

// inOrder reports whether a column's texts rise or fall from top to bottom,
// with at least three different ones.
func inOrder(rows []*keptRow, col int) bool {
	up, down, changes := true, true, 0
	prev := ""
	for _, r := range rows {
		t := strings.ToLower(r.text(col))
		if t == "" {
			continue
		}
		if prev != "" && t != prev {
			changes++
			if t < prev {
				up = false
			} else {
				down = false
			}
		}
		prev = t
	}
	return changes >= 2 && (up || down)
}

// weekdaysMoved compares a column of weekdays with the dates.
func (b *block) weekdaysMoved(rows []*keptRow) {
	date := b.find(Date, whole)
	var days *column
	for i := range b.cols {
		if b.cols[i].part == partWeekday {
			days = &b.cols[i]
		}
	}
	if date == nil || days == nil {
		return
	}
	all, wrong := 0, 0
	for _, r := range rows {
		if date.col >= len(r.cells) {
			continue
		}
		t, ok := dayOf(&r.cells[date.col])
		said := strings.ToLower(r.text(days.col))
		if !ok || len(said) < 3 {
			continue
		}
		all++
		if !strings.HasPrefix(strings.ToLower(t.Weekday().String()), said[:3]) {
			wrong++
		}
	}
	if all >= 5 && wrong*2 >= all {
		b.markSorted(rows, date, days)
	}
}

// columnDates tells a column of dates that holds both text and real dates,
// and whether that looks like day and month exchanged.
func (b *block) columnDates(c *column) (mixed, swapped bool) {
	realDates, late, text, textLate := 0, 0, 0, 0
	for i := range b.sample {
		r := &b.sample[i]
		switch l := r.look(c.col); {
		case l.is(lookRealDate):
			realDates++
			if raw := r.cells[c.col].Raw; len(raw) >= 10 && raw[8:10] > "12" {
				late++
			}
		case l.is(lookDate):
			text++
			if n, ok := isInt(leadingDigits(r.text(c.col))); ok && n > 12 && n <= 31 {
				textLate++
			}
		case l.is(lookPair | lookDay):
			text++
		}
	}
	mixed = realDates > 0 && text > 0 && realDates >= text
	swapped = realDates >= 2 && text > 0 && late == 0 && textLate == text
	return mixed || swapped, swapped
}

func leadingDigits(s string) string {
	i := 0
	for i < len(s) && isDigit(s[i]) {
		i++
	}
	return s[:i]
}

// columnLetters is the 100 km square that all references of a column share,
// "" where they do not.
func (b *block) columnLetters(c *column) string {
	letters, n, bare := "", 0, 0
	for t, k := range c.stats.distinct {
		if allDigits(t) {
			bare += k
			continue
		}
		if !scanGridRef(t) || len(t) < 3 {
			continue
		}
		i := 0
		for i < len(t) && isLetter(t[i]) {
			i++
		}
		head := strings.ToUpper(t[:i])
		if i == 0 || letters != "" && letters != head {
			return ""
		}
		letters = head
		n += k
	}
	if n*2 < bare {
		return ""
	}
	return letters
}
