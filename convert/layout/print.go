package layout

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"sort"
	"strings"

	"fieldfare/convert/notebook"
)

// Print writes how the sheet is read, for people: what each part of the page
// was taken for, each column with its meaning and why, what holds for the
// whole page, what is carried down, what is skipped and why. After a Walk the
// counts are those of the whole sheet; before, they are there only if Survey
// saw the sheet whole.
func (p *Plan) Print(w io.Writer) {
	name := p.page.file
	if p.page.sheet != "" {
		name += ", sheet “" + p.page.sheet + "”"
	}
	fmt.Fprintln(w, name)
	for _, b := range p.blocks {
		p.printBlock(b, w)
	}
	p.tally.print(w)
	for _, n := range p.notes {
		fmt.Fprintf(w, "  To check: %s\n", n.Message)
	}
	for _, b := range p.blocks {
		for _, n := range b.notes {
			fmt.Fprintf(w, "  To check: %s\n", n.Message)
		}
	}
}

// columnNotes are the messages about the page and its columns.
func (p *Plan) columnNotes() map[string]bool {
	said := map[string]bool{}
	for _, n := range p.notes {
		said[n.Message] = true
	}
	for _, b := range p.blocks {
		for _, n := range b.notes {
			said[n.Message] = true
		}
	}
	return said
}

var kindWords = map[kind]string{kindList: "a list, one record a row", kindAcross: "a table, species down and nights or places across",
	kindDown: "a table, nights or places down and species across", kindDiary: "a diary, several records a line", kindNone: "no page of records"}

func (p *Plan) printBlock(b *block, w io.Writer) {
	rows := "from row " + itoa(b.first)
	if b.last > 0 {
		rows = fmt.Sprintf("rows %d to %d", b.first, b.last)
	}
	fmt.Fprintf(w, "  Taken for %s: %s", kindWords[b.kind], rows)
	if len(b.headRows) > 0 {
		fmt.Fprintf(w, ", headings on %s", rowsNamed(b.headRows))
	}
	if b.why != "" {
		fmt.Fprintf(w, " (%s)", b.why)
	}
	fmt.Fprintln(w)
	lines := map[int]string{}
	for i := range b.cols {
		if c := &b.cols[i]; c.left != leaveEmpty || c.heading != "" {
			lines[c.col] = b.columnLine(i)
		}
	}
	if b.axis != nil {
		for i := range b.axis.cols {
			lines[b.axis.cols[i].col] = b.axis.cols[i].line()
		}
	}
	for _, c := range slices.Sorted(maps.Keys(lines)) {
		if p.page.hiddenColumns[c] {
			lines[c] += "; hidden in the workbook"
		}
		fmt.Fprintf(w, "    %-3s %s\n", notebook.ColumnName(c+1), lines[c])
	}
	b.facts.print(w)
}

// line says in words what a column of a table's counts is.
func (ac *axisColumn) line() string {
	if ac.left != "" {
		return "left out: " + ac.left + " — the heading “" + ac.heading + "”"
	}
	what := "counts"
	if ac.role != Count {
		what = string(ac.role)
	}
	if mark := strings.TrimSpace(ac.sex + " " + ac.stage); mark != "" {
		what += " " + mark
	}
	var of []string
	for i := range ac.values {
		of = append(of, string(ac.values[i].Meaning)+" “"+ac.values[i].Text+"”")
	}
	if len(of) > 0 {
		what += " of " + strings.Join(of, ", ")
	}
	if ac.heading != "" {
		what += " — the heading “" + ac.heading + "”"
	}
	return what
}

// columnLine says in words what a column holds and why.
func (b *block) columnLine(i int) string {
	c := &b.cols[i]
	what := string(c.meaning)
	switch {
	case c.left != "":
		what = "left out: " + c.left
	case c.part != whole:
		what += " (" + partNames[c.part] + ")"
	case c.meaning == Term:
		what = "term " + c.term
	case c.weekday != "":
		what = "count of " + c.weekday
	case c.trap:
		what = "count of the trap “" + c.heading + "”"
	case c.sex != "" || c.stage != "":
		what = strings.TrimSpace(what + " " + c.sex + c.stage)
	}
	if c.split == splitNameCount {
		what += " and count in one cell"
	} else if c.split == splitSiteGrid {
		what += " and grid reference in one cell"
	}
	if c.left == "" && c.master != i {
		what += ", joined with column " + notebook.ColumnName(b.cols[c.master].col+1)
	}
	if c.why != "" {
		what += " — " + c.why
	}
	if c.carry && c.used() && c.stats.blank+c.stats.ditto > 0 && !ofVisit[c.meaning] {
		what += "; blanks repeat the value above"
	}
	return what
}

func (f *facts) print(w io.Writer) {
	for i := range f.values {
		v := &f.values[i]
		where := string(v.From)
		if v.Ref.Row > 0 {
			where += ", " + v.Ref.String()
		}
		fmt.Fprintf(w, "    For all rows that lack their own: %s “%s” (%s)\n", v.Meaning, v.Text, where)
	}
	if f.month > 0 {
		fmt.Fprintf(w, "    Days without a month are of %s (%s)\n", monthTitles[f.month], f.monthFrom)
	}
	if f.year > 0 {
		fmt.Fprintf(w, "    Dates without a year are of %d (%s)\n", f.year, f.yearFrom)
	}
}

func (t *tally) print(w io.Writer) {
	if t.rows == 0 {
		return
	}
	fmt.Fprintf(w, "  %s, %s; %s used\n", many(t.rows, "row"), many(t.drafts, "record"), many(t.used, "cell"))
	for _, k := range sortedKeys(t.carried) {
		fmt.Fprintf(w, "    Carried down: %s, %s\n", k, many(t.carried[k], "time"))
	}
	for _, k := range sortedKeys(t.skipped) {
		fmt.Fprintf(w, "    Skipped: %s, %s (%s)\n", k, many(t.skipped[k], "row"), t.where(k))
	}
	for _, k := range sortedKeys(t.left) {
		fmt.Fprintf(w, "    Cells left out: %s, %d\n", k, t.left[k])
	}
	for _, n := range t.notes {
		fmt.Fprintf(w, "  To check, row %d: %s\n", n.Ref.Row, n.Message)
	}
	if t.more > 0 {
		fmt.Fprintf(w, "  To check: %s like these; all are in the queries workbook.\n", many(t.more, "more row"))
	}
}

func sortedKeys[K ~string, V any](m map[K]V) []K {
	keys := make([]K, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	sort.Slice(keys, func(i, j int) bool { return keys[i] < keys[j] })
	return keys
}

// rowsNamed tells rows by their numbers: "row 3", "rows 3, 4 and 5".
func rowsNamed(ns []int) string {
	last := itoa(ns[len(ns)-1])
	if len(ns) == 1 {
		return "row " + last
	}
	var first []string
	for _, n := range ns[:len(ns)-1] {
		first = append(first, itoa(n))
	}
	return "rows " + strings.Join(first, ", ") + " and " + last
}
