package report

import (
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"
)

// A picture is drawn 320 units wide, the width of a small telephone, so that
// its text stays readable there.
const pictureWidth = 320

// picture is a drawing with its text and its table.
type picture struct {
	Title   string
	SVG     template.HTML
	Columns []string
	Rows    [][]string
}

// drawing collects the parts of an SVG. Texts are escaped by it, so that what
// comes from a record cannot become markup.
type drawing struct {
	b      strings.Builder
	height float64
}

func (d *drawing) add(format string, args ...any) {
	for i, a := range args {
		if s, ok := a.(string); ok {
			args[i] = template.HTMLEscapeString(s)
		}
	}
	fmt.Fprintf(&d.b, format, args...)
}

func (d *drawing) text(x, y float64, anchor, s string) {
	d.add(`<text x="%.1f" y="%.1f" text-anchor="%s">%s</text>`, x, y, anchor, s)
}

// done returns the drawing with a title for those who cannot see it.
func (d *drawing) done(title string) template.HTML {
	return template.HTML(fmt.Sprintf(`<svg viewBox="0 0 %d %.0f" role="img" aria-label="%s" xmlns="http://www.w3.org/2000/svg">%s</svg>`,
		pictureWidth, d.height, template.HTMLEscapeString(title), d.b.String()))
}

const (
	plotLeft, plotRight = 34.0, pictureWidth - 4.0
	plotTop             = 12.0
	widestColumn        = 36.0
)

// columns draws one column a value, with the scale at the left and under each
// column its label, where it has one.
func columns(values []int, labels []string, height float64, hint func(i int) string) *drawing {
	d := &drawing{height: height}
	bottom := height - 18
	most := roundUp(max(1, slices.Max(values)))
	y := func(v int) float64 { return bottom - (bottom-plotTop)*float64(v)/float64(most) }
	for i, v := range []int{0, most / 2, most} {
		if i == 1 && most%2 != 0 {
			continue
		}
		d.add(`<line class="grid" x1="%.1f" x2="%.1f" y1="%.1f" y2="%.1f"/>`, plotLeft, plotRight, y(v), y(v))
		d.text(plotLeft-4, y(v)+3.5, "end", short(v))
	}
	step := (plotRight - plotLeft) / float64(len(values))
	for i, v := range values {
		x := plotLeft + float64(i)*step
		if v > 0 {
			width := min(step*0.8, widestColumn)
			d.add(`<rect class="bar" x="%.1f" y="%.1f" width="%.1f" height="%.1f"><title>%s</title></rect>`,
				x+(step-width)/2, min(y(v), bottom-1), width, max(bottom-y(v), 1), hint(i))
		}
		if labels[i] != "" {
			d.text(x+step/2, height-5, "middle", labels[i])
		}
	}
	return d
}

// roundUp returns the end of a scale: 1, 2, 4, 6, 8 or 10 times a power of ten.
func roundUp(n int) int {
	for unit := 1; ; unit *= 10 {
		for _, k := range []int{1, 2, 4, 6, 8, 10} {
			if k*unit >= n {
				return k * unit
			}
		}
	}
}

// short writes a number of a scale in little room.
func short(n int) string {
	switch {
	case n >= 1_000_000 && n%100_000 == 0:
		return strconv.FormatFloat(float64(n)/1e6, 'f', -1, 64) + "m"
	case n >= 10_000 && n%100 == 0:
		return strconv.FormatFloat(float64(n)/1e3, 'f', -1, 64) + "k"
	}
	return strconv.Itoa(n)
}

// yearsPicture draws the records by year, from the first year to the last.
func (s *Season) yearsPicture() *picture {
	if len(s.years) == 0 {
		return nil
	}
	first, last := 0, 0
	for y := range s.years {
		if first == 0 || y < first {
			first = y
		}
		last = max(last, y)
	}
	n := last - first + 1
	const mostYears = 150
	if n > mostYears { // a stray early one must not squeeze the others
		first, n = last-mostYears+1, mostYears
	}
	every := 1
	for n/every > 8 {
		every = map[int]int{1: 2, 2: 5, 5: 10, 10: 20, 20: 50}[every]
	}
	values, labels := make([]int, n), make([]string, n)
	p := &picture{Title: "Records by year", Columns: []string{"Year", "Records"}}
	for i := range values {
		y := first + i
		values[i] = s.years[y]
		if y%every == 0 || n == 1 {
			labels[i] = strconv.Itoa(y)
		}
	}
	hint := func(i int) string { return fmt.Sprintf("%d: %s", first+i, plural(values[i], "record")) }
	p.SVG = columns(values, labels, 150, hint).done(fmt.Sprintf("Column chart of the records by year, %d to %d; the numbers are in the table", first, last))
	keys := make([]int, 0, len(s.years))
	for y := range s.years {
		keys = append(keys, y)
	}
	slices.Sort(keys)
	for _, y := range keys {
		p.Rows = append(p.Rows, []string{strconv.Itoa(y), strconv.Itoa(s.years[y])})
	}
	if s.noYear > 0 {
		p.Rows = append(p.Rows, []string{"not certain", strconv.Itoa(s.noYear)})
	}
	return p
}

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// commonTaxa is how many of the commonest taxa have a season chart, askedTaxa
// how many of those that raised a question about the season.
const commonTaxa, askedTaxa = 9, 12

// seasonPictures draws, for the commonest taxa and those that were asked
// about, the records by ten-day period.
func (s *Season) seasonPictures() []*picture {
	var list []*picture
	common, asked := 0, 0
	for _, t := range s.byRecords() {
		switch {
		case t.vague == t.Records:
			continue
		case t.asked && asked < askedTaxa:
			asked++
		case common < commonTaxa:
		default:
			continue
		}
		common++
		list = append(list, t.picture())
	}
	return list
}

func (t *taxonCount) picture() *picture {
	labels := make([]string, tenDays)
	for m, name := range months {
		labels[3*m+1] = name[:1]
	}
	hint := func(i int) string { return periodName(i) + ": " + plural(t.periods[i], "record") }
	p := &picture{Title: t.title(), Columns: []string{"Ten days", "Records"}}
	if t.asked {
		p.Title += " (asked about)"
	}
	p.SVG = columns(t.periods[:], labels, 110, hint).done("Column chart of the records of " + t.title() + " by ten-day period, January to December; the numbers are in the table")
	for i, n := range t.periods {
		if n > 0 {
			p.Rows = append(p.Rows, []string{periodName(i), strconv.Itoa(n)})
		}
	}
	if t.vague > 0 {
		p.Rows = append(p.Rows, []string{"not known to ten days", strconv.Itoa(t.vague)})
	}
	return p
}

func (t *taxonCount) title() string {
	if t.Vernacular != "" && t.Vernacular != t.Name {
		return t.Vernacular + ", " + t.Name
	}
	return t.Name
}

func periodName(i int) string {
	return [...]string{"1–10", "11–20", "21–end of"}[i%3] + " " + months[i/3]
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return strconv.Itoa(n) + " " + word + "s"
}
