package when_test

import (
	"encoding/csv"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"golang.org/x/text/unicode/norm"
)

// isoForm is every form of ISO 8601-1 that an event date may have here.
var isoForm = regexp.MustCompile(`^(\d{4}(/\d{4})?|\d{4}-\d\d(/\d{4}-\d\d)?|` + isoDay + `(/` + isoDay + `)?)$`)

const isoDay = `\d{4}-\d\d-\d\d(T\d\d:\d\d(:\d\d)?(Z|[+-]\d\d(:\d\d)?)?)?`

// FuzzRead checks what must hold for every text: no panic, a fair reading only
// of a text with a figure or a word for a feast, a valid value with its ends
// in order, and nothing but a reason where the reading is held.
func FuzzRead(f *testing.F) {
	file, err := os.Open("testdata/cells.csv")
	if err != nil {
		f.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		f.Fatal(err)
	}
	for i, row := range rows[1:] {
		f.Add(row[0], uint16(1990+i%40), i%3 == 0, i%5 == 0)
	}
	f.Fuzz(func(t *testing.T, text string, year uint16, evening, monthFirst bool) {
		o := when.Options{Today: lastDay, Evening: evening}
		if year%2 == 0 {
			o.Year = int(year % 3000)
		}
		if monthFirst {
			o.Order = when.MonthDay
		}
		r := when.Read(text, o)
		checkReading(t, text, r)
		if r.State == reading.Fair && !hasFigure(text) && !hasFeast(text) {
			t.Fatalf("%q is fair: %+v", text, r)
		}
		if r.State == reading.Fair && lastDay.Before(r.Start) {
			t.Fatalf("%q is fair and in the future: %+v", text, r)
		}
		var e when.Evidence
		e.Observe(text)
		when.Ambiguous(text)
		when.ReadCell(text, o)
	})
}

func checkReading(t *testing.T, text string, r when.Reading) {
	t.Helper()
	if r.State == reading.Held {
		if r.EventDate != "" || !r.Start.IsZero() || !r.End.IsZero() || r.Message == "" || r.Code == "" {
			t.Fatalf("%q is held with a value or without a reason: %+v", text, r)
		}
		return
	}
	switch {
	case !isoForm.MatchString(r.EventDate):
		t.Fatalf("%q: %q is no ISO 8601-1 date", text, r.EventDate)
	case !r.Start.Valid() || !r.End.Valid() || r.End.Before(r.Start):
		t.Fatalf("%q: from %v to %v", text, r.Start, r.End)
	case (r.State == reading.Query) != (r.Code != "") || r.State == reading.Query && r.Message == "":
		t.Fatalf("%q: %+v", text, r)
	case !utf8.ValidString(r.Message) || !utf8.ValidString(r.Explain()):
		t.Fatalf("%q: %q is not valid UTF-8", text, r.Message)
	case !strings.HasPrefix(r.EventDate, r.Start.String()[:4]):
		t.Fatalf("%q: %q does not begin in %v", text, r.EventDate, r.Start)
	}
	for _, day := range regexp.MustCompile(`\d{4}-\d\d-\d\d`).FindAllString(r.EventDate, -1) {
		if _, err := time.Parse(time.DateOnly, day); err != nil {
			t.Fatalf("%q: %s is no day", text, day)
		}
	}
	// What is written out must be read back as the same value.
	again := when.Read(r.EventDate, when.Options{})
	if again.EventDate != r.EventDate {
		t.Fatalf("%q gives %q, which is read as %q: %s", text, r.EventDate, again.EventDate, again.Message)
	}
}

func hasFigure(text string) bool {
	return strings.ContainsAny(norm.NFKC.String(text), "0123456789")
}

func hasFeast(text string) bool {
	text = strings.ToLower(norm.NFKC.String(text))
	return strings.Contains(text, "christmas") || strings.Contains(text, "boxing") || strings.Contains(text, "new year")
}

// FuzzReadTime checks times of day the same way.
func FuzzReadTime(f *testing.F) {
	for _, text := range []string{"22:45", "10.45pm", "2245", "dusk-01:00", "22h45", "c. 22", "0.9479", "22:30 to 02:15", "all night", "?"} {
		f.Add(text)
	}
	form := regexp.MustCompile(`^([01]\d|2[0-3]):[0-5]\d(/([01]\d|2[0-3]):[0-5]\d)?$`)
	f.Fuzz(func(t *testing.T, text string) {
		h := when.ReadTime(text)
		switch {
		case h.EventTime != "" && (!form.MatchString(h.EventTime) || h.State == reading.Held):
			t.Fatalf("%q: %+v", text, h)
		case h.State != reading.Fair && (h.Message == "" || h.Code == ""):
			t.Fatalf("%q: %+v", text, h)
		}
	})
}

// FuzzPage checks that any order of dates is looked at without a panic, and
// that rows stay within the page.
func FuzzPage(f *testing.F) {
	f.Add([]byte{10, 20, 30, 40, 200, 50, 60})
	f.Fuzz(func(t *testing.T, steps []byte) {
		var p when.Page
		day := 18000
		for i, s := range steps {
			day += int(int8(s)) * 7
			p.Observe(i+1, when.DateOf(day))
		}
		last := 0
		for _, s := range p.Slips() {
			if s.FirstRow <= last || s.LastRow < s.FirstRow || s.LastRow > len(steps) || s.Years == 0 {
				t.Fatalf("%v: %+v", steps, s)
			}
			last = s.LastRow
		}
	})
}
