package when_test

import (
	"fmt"
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/assert"
)

func ExampleRead() {
	o := when.Options{Today: when.Date{Year: 2025, Month: 12, Day: 31}}
	for _, text := range []string{"12.vi.98", "12/13 June 2021", "early June 2003", "31 June 2021"} {
		r := when.Read(text, o)
		fmt.Printf("%s: %s %q\n", text, r.State, r.EventDate)
		fmt.Println("  " + r.Explain())
	}
	// Output:
	// 12.vi.98: fair "1998-06-12"
	//   The 12th of June 1998.
	// 12/13 June 2021: fair "2021-06-12/2021-06-13"
	//   The night of 12 to 13 June 2021.
	// early June 2003: query "2003-06-01/2003-06-10"
	//   “early June 2003” is no single day: it was read as 1 June 2003 to 10 June 2003.
	// 31 June 2021: held ""
	//   The calendar has no 31 June. Check the day and the month of “31 June 2021”.
}

func ExampleEvidence() {
	var e when.Evidence
	for _, text := range []string{"6/12/2021", "6/25/2021", "7/4/2021"} {
		e.Observe(text)
	}
	order, verdict := e.Order(when.DayMonth)
	fmt.Println(verdict.Message)
	fmt.Println(when.Read("6/12/2021", when.Options{Order: order}).EventDate)
	// Output:
	// The column's dates are read with the month first: “6/25/2021” can only be that.
	// 2021-06-12
}

// TestEventDateTerm reads the examples that Darwin Core gives for eventDate
// (https://dwc.tdwg.org/terms/#dwc:eventDate). They are ISO 8601-1 themselves,
// so the value must come out as it went in, but for intervals with a
// shortened end, written in full here.
func TestEventDateTerm(t *testing.T) {
	for text, want := range map[string]string{
		"1963-03-08T14:07-06:00": "1963-03-08T14:07-06:00",
		"2009-02-20T08:40Z":      "2009-02-20T08:40Z",
		"2018-08-29T15:19":       "2018-08-29T15:19",
		"1809-02-12":             "1809-02-12",
		"1906-06":                "1906-06",
		"1971":                   "1971",
		"2007-03-01T13:00:00Z/2008-05-11T15:30:00Z": "2007-03-01T13:00:00Z/2008-05-11T15:30:00Z",
		"1900/1909":     "1900/1909",
		"2007-11-13/15": "2007-11-13/2007-11-15",
	} {
		r := when.Read(text, when.Options{Today: lastDay, MaxDays: 1000, Floor: 1800})
		assert.Equal(t, want, r.EventDate, "%q: %s", text, r.Message)
	}
}

func TestReadParts(t *testing.T) {
	for _, c := range []struct {
		text             string
		year, month, day int
		night            bool
		start, end       string
		from, to         string
	}{
		{"12/6/21", 2021, 6, 12, false, "2021-06-12", "2021-06-12", "", ""},
		{"12/13 June 2021", 2021, 6, 0, true, "2021-06-12", "2021-06-13", "", ""},
		{"31 May/1 June 2021", 2021, 0, 0, true, "2021-05-31", "2021-06-01", "", ""},
		{"31 Dec 2020/1 Jan 2021", 0, 0, 0, true, "2020-12-31", "2021-01-01", "", ""},
		{"June 2003", 2003, 6, 0, false, "2003-06-01", "2003-06-30", "", ""},
		{"2003", 2003, 0, 0, false, "2003-01-01", "2003-12-31", "", ""},
		{"12 June 2021 22:45-01:30", 2021, 6, 0, true, "2021-06-12", "2021-06-13", "22:45", "01:30"},
		{"12 June 2021 22:45", 2021, 6, 12, false, "2021-06-12", "2021-06-12", "22:45", ""},
		{"27/30 January 1995", 1995, 1, 0, false, "1995-01-27", "1995-01-30", "", ""},
	} {
		r := when.Read(c.text, when.Options{Today: lastDay})
		assert.Equal(t, [3]int{c.year, c.month, c.day}, [3]int{r.Year, r.Month, r.Day}, c.text)
		assert.Equal(t, c.night, r.Night, c.text)
		assert.Equal(t, c.start+" "+c.end, r.Start.String()+" "+r.End.String(), c.text)
		assert.Equal(t, c.from+" "+c.to, r.Time+" "+r.EndTime, c.text)
	}
}

func TestEvening(t *testing.T) {
	o := when.Options{Today: lastDay, Evening: true}
	for text, want := range map[string]string{
		"12/6/21":               "2021-06-12/2021-06-13",
		"2021-06-12":            "2021-06-12/2021-06-13",
		"Sat 12 June 2021":      "2021-06-12/2021-06-13",
		"31.xii.20":             "2020-12-31/2021-01-01",
		"44359":                 "2021-06-12/2021-06-13",
		"12/13 June 2021":       "2021-06-12/2021-06-13",
		"27/30 January 1995":    "1995-01-27/1995-01-30",
		"June 2003":             "2003-06",
		"2021-06-12T22:45":      "2021-06-12T22:45",
		"morning of 13/6/21":    "2021-06-13",
		"31/12/25":              "2025-12-31/2026-01-01", // tonight, not the future
		"c. 12 June 2021":       "2021-06-09/2021-06-15",
		"week of 7 June 2021":   "2021-06-07/2021-06-13",
		"evening of 12/6/21":    "2021-06-12/2021-06-13",
		"12/06/2021 00:00":      "2021-06-12/2021-06-13",
		"night of 12 June 2021": "2021-06-12/2021-06-13",
	} {
		r := when.Read(text, o)
		assert.Equal(t, want, r.EventDate, "%q: %s", text, r.Message)
	}
	assert.Equal(t, "2021-06-12", when.Read("12/6/21", when.Options{}).EventDate, "off unless asked for")
}

func TestReadCell(t *testing.T) {
	o := when.Options{Today: lastDay}
	for raw, want := range map[string]string{
		"2021-06-12":          "2021-06-12",
		"2021-06-12T00:00:00": "2021-06-12",
		"2021-06-12T22:45:00": "2021-06-12T22:45",
		"2021-06-12T22:45:30": "2021-06-12T22:45:30",
	} {
		r := when.ReadCell(raw, o)
		assert.Equal(t, want, r.EventDate, raw)
		assert.Equal(t, reading.Fair, r.State, raw)
		assert.Empty(t, r.Message, raw)
	}
	assert.Equal(t, reading.Held, when.ReadCell("22:45:00", o).State, "a time alone")
	assert.Equal(t, reading.Held, when.ReadCell("2026-06-12", o).State, "the future")
	assert.Equal(t, reading.Query, when.ReadCell("1899-06-12", o).State, "before the floor")
}

func TestOptions(t *testing.T) {
	md := when.Options{Order: when.MonthDay, Today: lastDay}
	for text, want := range map[string]string{
		"6/12/2021": "2021-06-12", "6/12-13/2021": "2021-06-12/2021-06-13", "6/30-7/1/2021": "2021-06-30/2021-07-01", "6/12/21-6/13/21": "2021-06-12/2021-06-13",
		"06122021": "2021-06-12", "12 June 2021": "2021-06-12", "2021-06-12": "2021-06-12",
	} {
		assert.Equal(t, want, when.Read(text, md).EventDate, text)
	}
	r := when.Read("25/6/2021", md)
	assert.Equal(t, "2021-06-25", r.EventDate)
	assert.Equal(t, "against-order", r.Code)

	assert.Equal(t, reading.Query, when.Read("12/6/1899", when.Options{}).State)
	assert.Equal(t, reading.Fair, when.Read("12/6/1899", when.Options{Floor: 1850}).State)
	assert.Equal(t, reading.Fair, when.Read("1-30 June 2021", when.Options{MaxDays: 31}).State)
	assert.Equal(t, reading.Query, when.Read("12-14 June 2021", when.Options{MaxDays: 2}).State)

	// Two figures: the page's century, the present's, or a question.
	assert.Equal(t, "1921-06-12", when.Read("12/6/21", when.Options{Today: lastDay, Year: 1921}).EventDate)
	assert.Equal(t, "1922-01-02", when.Read("2/1/22", when.Options{Today: lastDay, Year: 1921}).EventDate)
	assert.Equal(t, "2045-06-12", when.Read("12/6/45", when.Options{}).EventDate, "no present day given")
	early := when.Read("12/6/30", when.Options{Today: lastDay})
	assert.Equal(t, []string{"1930", "2030"}, early.Candidates)
	assert.Equal(t, "century", early.Code)
}

func TestJoin(t *testing.T) {
	o := when.Options{Today: lastDay}
	for _, c := range []struct {
		start, end, want string
		state            reading.State
	}{
		{"12/6/21", "13/6/21", "2021-06-12/2021-06-13", reading.Fair},
		{"12/6/21", "12/6/21", "2021-06-12", reading.Fair},
		{"12/6/21", "14/6/21", "2021-06-12/2021-06-14", reading.Fair},
		{"12/6/21", "11/6/21", "", reading.Held},
		{"12/6/21", "12/9/21", "2021-06-12/2021-09-12", reading.Query},
		{"12/6/21", "nonsense", "2021-06-12", reading.Query},
		{"nonsense", "12/6/21", "", reading.Held},
		{"June 2003", "August 2003", "2003-06/2003-08", reading.Query},
		{"2003", "2005", "2003/2005", reading.Query},
		{"2003", "12/6/2005", "2003-01-01/2005-06-12", reading.Query},
		{"2021-06-12T22:45", "2021-06-13T05:00", "2021-06-12T22:45/2021-06-13T05:00", reading.Fair},
		{"12/13 June 2021", "13/6/21", "2021-06-12/2021-06-13", reading.Fair},
	} {
		r := when.Join(when.Read(c.start, o), when.Read(c.end, o), `"`+c.end+`"`, o)
		assert.Equal(t, c.want, r.EventDate, "%s, %s: %s", c.start, c.end, r.Message)
		assert.Equal(t, c.state, r.State, "%s, %s: %s", c.start, c.end, r.Message)
	}
}

// weeks are the Saturdays from April to August of 2022, the day first.
func weeks() []string {
	return strings.Fields("2/4/2022 9/4/2022 16/4/2022 23/4/2022 30/4/2022 7/5/2022 14/5/2022 21/5/2022 28/5/2022 4/6/2022 11/6/2022 18/6/2022 " +
		"25/6/2022 2/7/2022 9/7/2022 16/7/2022 23/7/2022 30/7/2022 6/8/2022 13/8/2022")
}

func TestEvidence(t *testing.T) {
	for _, c := range []struct {
		name  string
		texts []string
		want  when.Order
		state reading.State
	}{
		{"nothing", nil, when.DayMonth, reading.Fair},
		{"either", []string{"1/2/2021", "3/4/21"}, when.DayMonth, reading.Fair},
		{"day first", []string{"1/2/2021", "13/4/21"}, when.DayMonth, reading.Fair},
		{"month first", []string{"1/2/2021", "4/13/21"}, when.MonthDay, reading.Fair},
		{"mixed", []string{"4/13/21", "13/4/21", "25/4/21"}, when.DayMonth, reading.Query},
		{"mixed the other way", []string{"4/13/21", "4/14/21", "25/4/21"}, when.MonthDay, reading.Query},
		{"a slip in a column in order", append(weeks(), "3/13/2022"), when.DayMonth, reading.Fair},
		{"a slip and a day that is none", append(weeks(), "3/13/2022", "31/9/2022"), when.DayMonth, reading.Fair},
		{"a slip in a column that goes back", append(weeks(), "3/13/2022", "2/4/2022"), when.DayMonth, reading.Query},
		{"a slip and a night that cannot be placed", append(weeks(), "3/13/2022", "3-4.9.22"), when.DayMonth, reading.Query},
		{"a slip in a short column", []string{"2/4/2022", "9/4/2022", "16/4/2022", "4/23/2022"}, when.DayMonth, reading.Query},
		{"names and nights say nothing", []string{"12 June 2021", "12/13 June 2021", "2021-06-13", "vi/12/98", "1932.10.6"}, when.DayMonth, reading.Fair},
		{"with weekdays", []string{"Sat 6/12/2021", "Fri. 6/25/2021"}, when.MonthDay, reading.Fair},
		{"month names", []string{"June 12/13", "Jun 6/25"}, when.DayMonth, reading.Fair},
		{"intervals", []string{"25/6-26/6/21", "12-13/6/21"}, when.DayMonth, reading.Fair},
		{"with times", []string{"6/13/2021 22:45"}, when.MonthDay, reading.Fair},
		{"a night", []string{"12/13/6/21"}, when.DayMonth, reading.Fair},
		{"impossible", []string{"13/25/2021", "32/1/2021"}, when.DayMonth, reading.Fair},
	} {
		var e when.Evidence
		for _, text := range c.texts {
			e.Observe(text)
		}
		order, v := e.Order(when.DayMonth)
		assert.Equal(t, c.want, order, c.name)
		assert.Equal(t, c.state, v.State, c.name)
	}
	for text, want := range map[string]bool{
		"3/4/2021": true, "3/3/2021": false, "13/4/2021": false, "2021-03-04": false, "3.4.": true,
		"3/4": true, "3 April 2021": false, "": false, "3/4/2021 22:45": true, "3-4.6.21": true,
	} {
		assert.Equal(t, want, when.Ambiguous(text), text)
	}
}
