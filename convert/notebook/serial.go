package notebook

import (
	"math"
	"strconv"
	"strings"
	"time"
)

// isoOfSerial turns a spreadsheet's day number into ISO 8601: a date, a date
// and time of day to the nearest second, or a time alone where the number has
// no day. ok is false where the number stands for no day: negative, beyond
// the year 9999, zero without a time, or the 29 February 1900 that spreadsheet
// programs count and the calendar does not have.
//
// Source: ECMA-376 part 1, section 18.17.4.1 (the 1900 and 1904 date systems):
// in the 1900 system day 1 is 1 January 1900 and day 60 the 29 February 1900
// kept for compatibility; in the 1904 system day 0 is 1 January 1904.
func isoOfSerial(v float64, date1904, timeOnly bool) (iso string, ok bool) {
	if math.IsNaN(v) || v < 0 || v > 2958466 {
		return "", false
	}
	day := math.Floor(v)
	second := int(math.Round((v - day) * 86400))
	if second == 86400 {
		day, second = day+1, 0
	}
	if day == 0 && (!date1904 || timeOnly) {
		if v == 0 && !timeOnly {
			return "", false
		}
		return clock(second), true
	}
	var base time.Time
	switch {
	case date1904:
		base = time.Date(1904, 1, 1, 0, 0, 0, 0, time.UTC)
	case day == 60:
		return "", false
	case day < 60:
		base = time.Date(1899, 12, 31, 0, 0, 0, 0, time.UTC)
	default:
		base = time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC)
	}
	date := base.AddDate(0, 0, int(day))
	if date.Year() > 9999 {
		return "", false
	}
	iso = date.Format("2006-01-02")
	if second > 0 {
		iso += "T" + clock(second)
	}
	return iso, true
}

// clock writes a second of the day as 22:45:00.
func clock(second int) string {
	b := make([]byte, 0, 8)
	for _, n := range [3]int{second / 3600, second / 60 % 60, second % 60} {
		if len(b) > 0 {
			b = append(b, ':')
		}
		if n < 10 {
			b = append(b, '0')
		}
		b = strconv.AppendInt(b, int64(n), 10)
	}
	return string(b)
}

// formatClass says what a number format makes of a number.
type formatClass uint8

const (
	plainFormat formatClass = iota
	dateFormat              // shows a day, with or without a time
	timeFormat              // shows a time of day only
	elapsedFormat
)

// classOf classifies a number format code by its first section, the one for
// positive numbers. Source: ECMA-376 part 1, section 18.8.31 (numFmts).
func classOf(code string) formatClass {
	class := plainFormat
	for i := 0; i < len(code); i++ {
		switch c := code[i]; c {
		case ';':
			return class
		case '\\', '_', '*':
			i++
		case '"':
			for i++; i < len(code) && code[i] != '"'; i++ {
			}
		case '[':
			from := i + 1
			for i++; i < len(code) && code[i] != ']'; i++ {
			}
			switch code[from:min(i, len(code))] {
			case "h", "hh", "H", "HH", "m", "mm", "M", "MM", "s", "ss", "S", "SS":
				class = max(class, elapsedFormat)
			}
		case 'G', 'g':
			if len(code) >= i+7 && (code[i:i+7] == "General" || code[i:i+7] == "GENERAL") {
				i += 6
			}
		case 'A', 'a':
			// AM/PM and A/P
			if i+1 < len(code) && code[i+1] == '/' || i+4 < len(code) && code[i+2] == '/' {
				if class == plainFormat {
					class = timeFormat
				}
				for i+1 < len(code) && (code[i+1] == '/' || code[i+1]|0x20 == 'p' || code[i+1]|0x20 == 'm') {
					i++
				}
			}
		case 'y', 'Y', 'd', 'D':
			return dateFormat
		case 'm', 'M':
			// Minutes beside hours or seconds, a month alone or as a word.
			n := len(code[i:]) - len(strings.TrimLeft(code[i:], "mM"))
			if n > 2 || class == plainFormat && !hasClock(code[i:]) {
				return dateFormat
			}
			i += n - 1
		case 'h', 'H', 's', 'S':
			if class == plainFormat {
				class = timeFormat
			}
		case 'E', 'e':
			if i+1 < len(code) && (code[i+1] == '+' || code[i+1] == '-') {
				i++ // an exponent
			}
		}
	}
	return class
}

// hasClock reports whether the section goes on to show hours or seconds.
func hasClock(section string) bool {
	for i := 0; i < len(section); i++ {
		switch section[i] {
		case ';':
			return false
		case '\\', '_', '*':
			i++
		case '"':
			for i++; i < len(section) && section[i] != '"'; i++ {
			}
		case '[':
			for i++; i < len(section) && section[i] != ']'; i++ {
			}
		case 'h', 'H', 's', 'S':
			return true
		}
	}
	return false
}

// builtInClass classifies the number formats that a workbook names by number
// only. Source: ECMA-376 part 1, section 18.8.30 (numFmt), with the meanings
// of 27-36 and 50-58 in East Asian workbooks.
func builtInClass(id int) formatClass {
	switch {
	case id >= 14 && id <= 17, id == 22, id >= 27 && id <= 31, id == 36, id >= 50 && id <= 58:
		return dateFormat
	case id >= 18 && id <= 21, id >= 32 && id <= 35, id == 45, id == 47:
		return timeFormat
	case id == 46:
		return elapsedFormat
	}
	return plainFormat
}
