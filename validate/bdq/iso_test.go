package bdq

import (
	"encoding/csv"
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc/calendar"
	"fieldfare/testdata/need"
)

// TestISODays reads dates in every form for days of many years and compares
// them with the standard library's calendar.
func TestISODays(t *testing.T) {
	for day := time.Date(1895, 12, 25, 0, 0, 0, 0, time.UTC); day.Year() < 2031; day = day.AddDate(0, 0, 11) {
		year, week := day.ISOWeek()
		weekday := int(day.Weekday()+6)%7 + 1
		want := int(day.Unix() / 86400)
		for _, text := range []string{
			day.Format("2006-01-02"), day.Format("20060102"), day.Format("2006-002"), day.Format("2006002"),
			weekText(year, week, weekday, "-"), weekText(year, week, weekday, ""),
		} {
			got, ok := parseISO(text)
			require.True(t, ok, text)
			require.Equal(t, want, got.first(), text)
			require.Equal(t, want, got.last(), text)
			require.Equal(t, day.YearDay(), dayOfYear(got.from), text)
		}
	}
}

func weekText(year, week, day int, sign string) string {
	return fmt.Sprintf("%04d%sW%02d%s%d", year, sign, week, sign, day)
}

// TestISOForms: the forms of ISO 8601-1:2019, by the clauses of the standard
// as Wikipedia's "ISO 8601" describes them.
func TestISOForms(t *testing.T) {
	valid := []string{
		"1985", "1985-04", "1985-04-12", "19850412", "1985-102", "1985102", "1985-W15", "1985W15", "1985-W15-5", "1985W155",
		"1985-04-12T23", "1985-04-12T23:20", "1985-04-12T23:20:30", "19850412T232030", "1985-04-12T23:20:30.5", "1985-04-12T23:20:30,5",
		"1985-04-12T23:20Z", "1985-04-12T23:20+04", "1985-04-12T23:20-04:30", "19850412T2320+0430", "1985-04-12T23:20-0600",
		"2009-W53-7", "1998-12-31T23:59:60Z", "0000", "1985-04-12T23,5",
		"1985-04-12T23:20/1985-06-25T10:30", "1985/1986", "2007-11-13/15", "2008-02-15/03-14", "2007-12-14T13:30/15:30",
		"2007-11-13T09:00/15T17:00", "2007-12-14T13:30Z/15:30", "1999-11/12",
		"2007-03-01T13:00:00Z/P1Y2M10DT2H30M", "P1Y2M10DT2H30M/2008-05-11T15:30:00Z", "2007-03-01/P2W",
	}
	invalid := []string{
		"", "0", "63", "196", "85-04-12", "12345", "+12345-01-01", "198504", "1985-4", "1985-4-12", "1985-04-1", "1985-13", "1985-00",
		"1985-04-31", "1985-02-29", "1900-02-29", "1985-000", "1985-366", "1985-W00", "1985-W53", "1985-W15-0", "1985-W15-8", "1985-W1",
		"1985-04-12T", "1985-04-12T24:00", "1985-04-12T24", "1985-04-12T4", "1985-04-12T14:0", "1985-04-12T14:60", "1985-04-12T14:07:61",
		"1985-04-12T14:07:60", "1985-04-12T1407", "19850412T14:07", "1985-04T14", "1985T14", "1985-04-12T14:07+", "1985-04-12T14:07+1", "1985-04-12T14:07+24",
		"1985-04-12T14:07ZZ", "1985-04-12T14:07.", "1985-04-12T14:07:", "1985-04-12t14:07", "1985-04-12 14:07", " 1985", "1985 ", "1985-", "1985-04-",
		"1985/", "/1985", "1986/1985", "1985/86", "1985-04-12/11", "1985/1986/1987", "..", "1985/..", "1985-04-12/P", "1985-04-12/PT", "1985-04-12/P1", "1985-04-12/PT1H",
		"P1Y", "1985-04-12/1Y", "1985~", "1985?", "198X", "1985_04_12", "１９８５",
		"1985-W", "1985W", "1985-W15-", "1985-04-12T14:07-06:0", "2007-12-14T13:30/T15:30", "9999-12-31/P1D",
	}
	for _, text := range valid {
		_, ok := parseISO(text)
		assert.True(t, ok, "%q is valid", text)
	}
	for _, text := range invalid {
		_, ok := parseISO(text)
		assert.False(t, ok, "%q is not valid", text)
	}
}

// TestISODarwinCore reads the examples that Darwin Core gives for its terms of
// dates (list of terms, TDWG, CC BY 4.0).
func TestISODarwinCore(t *testing.T) {
	file, err := os.Open(need.ReferenceFile(t, "dwc/darwin_core_terms.csv"))
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	read := 0
	for _, row := range rows {
		if name := row[1]; name != "eventDate" && name != "dateIdentified" && name != "georeferencedDate" {
			continue
		}
		for i, part := range strings.Split(row[6], "`") {
			if i%2 == 1 {
				read++
				_, ok := parseISO(part)
				assert.True(t, ok, "%s %q", row[1], part)
			}
		}
	}
	assert.GreaterOrEqual(t, read, 15)
}

func TestISOIntervals(t *testing.T) {
	for text, want := range map[string][2]string{
		"2007-11-13/15":             {"2007-11-13", "2007-11-15"},
		"2008-02-15/03-14":          {"2008-02-15", "2008-03-14"},
		"1906-06":                   {"1906-06-01", "1906-06-30"},
		"1904-02":                   {"1904-02-01", "1904-02-29"},
		"1999-11/12":                {"1999-11-01", "1999-12-31"},
		"1900/1909":                 {"1900-01-01", "1909-12-31"},
		"2009-W01":                  {"2008-12-29", "2009-01-04"},
		"2007-11-13T09:00/15T17:00": {"2007-11-13", "2007-11-15"},
		"2007-03-01/P2W":            {"2007-03-01", "2007-03-15"},
		"P1Y2M/2008-05-11":          {"2007-03-11", "2008-05-11"},
	} {
		got, ok := parseISO(text)
		require.True(t, ok, text)
		from, to := strings.Split(want[0], "-"), strings.Split(want[1], "-")
		number := func(s string) int { n, _ := digits(s); return n }
		assert.Equal(t, calendar.Number(number(from[0]), number(from[1]), number(from[2])), got.first(), text)
		assert.Equal(t, calendar.Number(number(to[0]), number(to[1]), number(to[2])), got.last(), text)
	}
}

func FuzzISO(f *testing.F) {
	for _, seed := range []string{"1985-04-12T23:20:30.5-06:00", "1985-W15-5", "1985-102/P1Y2M3DT4H5M6S", "2007-12-14T13:30Z/15:30", "P2W/1985"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, ok := parseISO(s)
		if !ok {
			return
		}
		if d.first() > d.last()+1 || d.from.month < 1 || d.from.month > 12 || d.to.day < 1 || d.to.day > 31 || d.from.year < 0 {
			t.Fatalf("%q: %+v", s, d)
		}
	})
}

func FuzzVerbatimDate(f *testing.F) {
	for _, seed := range []string{"9.ii-10.iii.2000", "XX DEC 1932", "1932年3月5日", "May 5-7, 1999", "5 May 1999, 14:30", "03/04/2020", "1990s"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, s string) {
		iso, ok, dated := interpretDate(s)
		if !ok {
			return
		}
		if _, valid := parseISO(iso); !valid || !dated {
			t.Fatalf("%q gives %q", s, iso)
		}
	})
}
