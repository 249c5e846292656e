package when

import "fieldfare/convert/reading"

// Order says which of two numbers is the day.
type Order uint8

const (
	// DayMonth: 12/6 is the twelfth of June.
	DayMonth Order = iota
	// MonthDay: 12/6 is the sixth of December.
	MonthDay
)

// Limits that hold where Options leave them at zero.
const (
	// DefaultFloor is the earliest year that is not asked about.
	DefaultFloor = 1900
	// firstYear is the first that can be a record's: the Biodiversity Data
	// Quality standard's bdq:earliestValidDate is 15 November 1582 by default.
	firstYear = 1582
	// DefaultMaxDays is the longest interval of stated days that is not asked
	// about, in days, first and last counted (common practice, no source).
	DefaultMaxDays = 14
	// ShortYearSpan is how many years back from the present one a year of two
	// figures is taken without asking (common practice, no source: the span of
	// one recorder's life in the field).
	ShortYearSpan = 80
)

// Options are what a reading depends on besides the text.
type Options struct {
	Order Order
	// Year is the year stated elsewhere on the page, for dates without one;
	// 0 for none.
	Year int
	// Today is the present day; later dates are held. Zero: no day is too
	// late, and years of two figures are those up to 2049.
	Today Date
	// Floor is the earliest year that is believed without asking; 0 stands
	// for DefaultFloor.
	Floor int
	// MaxDays is the longest interval of stated days that is not a query; 0
	// stands for DefaultMaxDays.
	MaxDays int
	// Evening: a single day without a time is the evening of a trap night.
	Evening bool
}

func (o *Options) floor() int {
	if o.Floor > 0 {
		return o.Floor
	}
	return DefaultFloor
}

func (o *Options) maxDays() int {
	if o.MaxDays > 0 {
		return o.MaxDays
	}
	return DefaultMaxDays
}

// present returns the last year that a year of two figures may stand for.
func (o *Options) present() int {
	if o.Today.IsZero() {
		return 2049
	}
	return o.Today.Year
}

// shortYear gives a year of two figures its century: the year stated on the
// page or its neighbour where the figures agree, else the latest year that is
// not in the future. other is the year it could as well be, 0 where there is
// no doubt.
func (o *Options) shortYear(yy int) (year, other int) {
	for _, y := range [...]int{o.Year, o.Year - 1, o.Year + 1} {
		if o.Year > 0 && y%100 == yy {
			return y, 0
		}
	}
	now := o.present()
	year = now - now%100 + yy
	if year > now {
		year -= 100
	}
	if year <= now-ShortYearSpan {
		return year, year + 100
	}
	return year, 0
}

// Reading is what a text says about when.
type Reading struct {
	reading.Verdict
	// Start and End are the first and the last day, both included; zero where
	// the reading is held.
	Start, End Date
	// Time and EndTime are the hours stated, as "22:45"; empty where none is.
	Time, EndTime string
	// EventDate is the value of dwc:eventDate, a day, month, year, time or
	// interval of ISO 8601-1; empty where the reading is held.
	EventDate string
	// Year, Month and Day are those of dwc:year, dwc:month and dwc:day: 0
	// where the interval does not lie within one.
	Year, Month, Day int
	// Night: the text was read as one or more nights, Start the first evening.
	Night bool
}
