// Package when reads dates as recorders write them.
//
// [Read] turns a text ("12.vi.98", "12/13 June 2021", "early June 2003") into
// a value of dwc:eventDate, a day, month, year, time or interval of ISO
// 8601-1, with a state and, where there is something to say, a sentence.
// Nothing is guessed in silence: a plain day or night is fair, anything that
// is likely or vague is a query, anything else is held.
//
// # Days
//
// Day, month and year may be numbers, Roman or English month names, written
// out, shortened to three letters or more, or with one slip of the pen. The
// day comes before the month unless [Options] say otherwise; a date that can
// only be read the other way is a query. [Evidence] finds the order of a
// column from its own dates.
//
// [ReadCell] and [ReadShown] read real spreadsheet dates, the second with what
// the cell shows, which may be less than it stores. [ReadTime] reads times of
// day that stand apart. [Join] puts a date and an end date together.
//
// A year of two figures is that of the page where the figures agree, else the
// latest that is not in the future; where that is [ShortYearSpan] years back
// or more, it is a query. A date without a year has the page's, and is held
// where the page states none. Three small numbers (3/5/07) are asked about
// where they may be days and their month, in the page's year.
//
// # Nights
//
// A light trap is run over a night and its record is dated by the evening on
// which it was set (common practice, no source). "12/13 June 2021" and "night
// of 12 June 2021" are the interval 2021-06-12/2021-06-13. With
// Options.Evening a single day becomes such a night.
//
// # Vague dates
//
// Each has a fixed meaning (common practice, no source), and is a query:
//
//	June 2003, 2003            the whole month, the whole year
//	early, beginning, start    days 1 to 10 of a month
//	mid, middle                days 11 to 20
//	late, end                  from day 21
//	first to fourth week       days 1-7, 8-14, 15-21, 22-28
//	last week                  the last seven days
//	first, second half         days 1-15, from day 16
//	spring                     March to May
//	summer                     June to August
//	autumn                     September to November
//	winter 1998, 1998/99       December 1998 to February 1999
//	Q2 2021                    April to June; other quarters alike
//	early, mid, late summer    June, July, August; other seasons alike
//	early, mid, late 1998      January-April, May-August, September-December
//	1990s                      1990 to 1999; early 1990-1993, mid 1994-1996, late 1997-1999
//	c. 1985                    five years either way; of a month, one month; of a day, three days
//	week ending, week of       seven days to, or from, the day
//	weekend of                 Saturday and Sunday
//	00/06/2021, ??/06/2021     the whole month
//
// The seasons are those of meteorology, in whole months of the northern
// hemisphere. "Before 1970" has no beginning and is held, as is "1995/6",
// which may be a month or two years.
//
// # What is held or asked about
//
// Held: days that the calendar does not have, days after Options.Today,
// intervals that end before they begin, dates without a year, texts with
// words that are not understood before the date. A query: years before
// Options.Floor, intervals of more than Options.MaxDays, a weekday that
// disagrees, a doubt that is written (?), a spreadsheet's day number, a remark
// after the date. [Page] finds the year that breaks the order of a page.
package when
