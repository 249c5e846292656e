package when_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

var (
	romans = strings.Fields("i ii iii iv v vi vii viii ix x xi xii")
	names  = strings.Fields("January February March April May June July August September October November December")
)

// pick returns one of the forms.
func pick(r *rand.Rand, forms ...string) string { return forms[r.IntN(len(forms))] }

func dayForms(r *rand.Rand, d int) string {
	end := "th"
	switch {
	case d%10 == 1 && d != 11:
		end = "st"
	case d%10 == 2 && d != 12:
		end = "nd"
	case d%10 == 3 && d != 13:
		end = "rd"
	}
	return pick(r, fmt.Sprint(d), fmt.Sprintf("%02d", d), fmt.Sprint(d)+end)
}

func monthForms(r *rand.Rand, m int) string {
	name := names[m-1]
	return pick(r, romans[m-1], strings.ToUpper(romans[m-1]), name, name[:3], strings.ToUpper(name[:3]), name[:3]+".", strings.ToLower(name))
}

func numberForms(r *rand.Rand, m int) string { return pick(r, fmt.Sprint(m), fmt.Sprintf("%02d", m)) }

func yearForms(r *rand.Rand, y int) string {
	return pick(r, fmt.Sprint(y), fmt.Sprintf("%02d", y%100), fmt.Sprintf("'%02d", y%100))
}

// TestRenderings writes random days, nights and intervals in random ways and
// reads them: never may one be fair with another value, and nearly all must
// be fair. Numbers above 12 for the day are left to chance, as in life.
func TestRenderings(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	o := when.Options{Today: lastDay, MaxDays: 40}
	total, fair := 0, 0
	for range 60000 {
		first := when.DateOf(when.Date{Year: 1970, Month: 1, Day: 2}.Days() + r.IntN(20000))
		gap := []int{0, 0, 1, 1, 1, 2, 5, 20}[r.IntN(8)]
		last := first.Add(gap)
		o.Year = 0
		bare := first.Year == last.Year && r.IntN(4) == 0
		if bare {
			o.Year = first.Year
		}
		text := render(r, first, last, bare)
		want := first.String()
		if gap > 0 {
			want += "/" + last.String()
		}
		got := when.Read(text, o)
		total++
		switch {
		case got.State == reading.Fair && got.EventDate != want:
			assert.Fail(t, "silently wrong", "%q (%d): %s, want %s", text, o.Year, got.EventDate, want)
		case got.State == reading.Fair:
			fair++
		default:
			if r.IntN(300) == 0 {
				t.Logf("%s (%d): %s %q: %s", text, o.Year, got.State, got.EventDate, got.Message)
			}
		}
	}
	t.Logf("%d of %d fair (%.2f %%)", fair, total, 100*float64(fair)/float64(total))
	assert.Greater(t, float64(fair), 0.98*float64(total))
}

// render writes a day, or the days from first to last.
// With bare, the year is left to the page.
func render(r *rand.Rand, first, last when.Date, bare bool) string {
	numeric := r.IntN(2) == 0
	sep := pick(r, "/", ".", "-", " ")
	if numeric && sep == " " {
		sep = "/"
	}
	month := func(d when.Date) string {
		if numeric {
			return numberForms(r, d.Month)
		}
		return monthForms(r, d.Month)
	}
	day := func(d when.Date) string {
		if numeric {
			return numberForms(r, d.Day)
		}
		return dayForms(r, d.Day)
	}
	year := func(d when.Date) string {
		if bare {
			return ""
		}
		return sep + yearForms(r, d.Year)
	}
	whole := func(d when.Date) string { return day(d) + sep + month(d) + year(d) }
	if first == last {
		text := whole(first)
		switch r.IntN(6) {
		case 0:
			text = first.Weekday().String()[:3] + " " + text
		case 1:
			text = " " + text + "."
		}
		return text
	}
	to := pick(r, "/", "-", "–", " - ", " to ", " – ")
	if to == sep && numeric && r.IntN(4) > 0 {
		to = map[string]string{"/": "-", "-": "/", ".": "-"}[sep]
	}
	switch {
	case first.Month == last.Month && first.Year == last.Year && r.IntN(3) > 0:
		return day(first) + to + day(last) + sep + month(last) + year(last)
	case first.Year == last.Year && r.IntN(2) > 0:
		return day(first) + sep + month(first) + to + day(last) + sep + month(last) + year(last)
	}
	return whole(first) + to + whole(last)
}

// TestMonthFirst does the same for numbers in a notebook with the month first.
func TestMonthFirst(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	o := when.Options{Today: lastDay, Order: when.MonthDay}
	for range 5000 {
		d := when.DateOf(when.Date{Year: 1970, Month: 1, Day: 2}.Days() + r.IntN(20000))
		sep := pick(r, "/", "-", ".")
		text := numberForms(r, d.Month) + sep + numberForms(r, d.Day) + sep + pick(r, fmt.Sprint(d.Year), fmt.Sprintf("%02d", d.Year%100))
		got := when.Read(text, o)
		assert.Equal(t, reading.Fair, got.State, "%s: %s", text, got.Message)
		assert.Equal(t, d.String(), got.EventDate, text)
	}
}
