package when

// quick reads the plainest forms without taking the text apart: 12/6/21,
// 12.06.2021, 2021-06-12, 12 June 2021. Anything else, and anything that is
// to be asked about for how it is written, is left to the slow way.
func quick(t string, o *Options) (Date, bool) {
	if len(t) < 6 || len(t) > 18 || !digit(t[0]) {
		return Date{}, false
	}
	a, i := shortNumber(t, 0)
	if i == 4 {
		return quickISO(t, a)
	}
	if i > 2 || i == len(t) {
		return Date{}, false
	}
	sep := t[i]
	switch {
	case sep == ' ' && i+1 < len(t) && letter(t[i+1]):
		return quickNamed(t, a, i+1, o)
	case sep != '/' && sep != '.' && sep != '-':
		return Date{}, false
	}
	b, j := shortNumber(t, i+1)
	if n := j - i - 1; n < 1 || n > 2 || j == len(t) || t[j] != sep {
		return Date{}, false
	}
	if o.Order == MonthDay {
		a, b = b, a
	}
	return quickYear(t, j+1, Date{0, b, a}, o)
}

// quickYear reads the year that ends the text.
func quickYear(t string, i int, d Date, o *Options) (Date, bool) {
	y, k := shortNumber(t, i)
	if k != len(t) {
		return Date{}, false
	}
	switch k - i {
	case 2:
		var other int
		if y, other = o.shortYear(y); other != 0 || o.Year > 0 && (y < o.Year-1 || y > o.Year+1) {
			return Date{}, false
		}
	case 4:
		if y < 1000 {
			return Date{}, false
		}
	default:
		return Date{}, false
	}
	d.Year = y
	return d, d.Valid()
}

func quickISO(t string, year int) (Date, bool) {
	if len(t) != 10 || t[4] != '-' || t[7] != '-' || year < 1000 {
		return Date{}, false
	}
	m, i := shortNumber(t, 5)
	d, j := shortNumber(t, 8)
	date := Date{year, m, d}
	return date, i == 7 && j == 10 && date.Valid()
}

// quickNamed reads "June 2021" after a day and a space.
func quickNamed(t string, d, i int, o *Options) (Date, bool) {
	var buf [10]byte
	j := i
	for j < len(t) && letter(t[j]) && j-i < len(buf) {
		buf[j-i] = t[j] | 0x20
		j++
	}
	if j-i < 3 || j >= len(t) || t[j] != ' ' || t[i] >= 0x80 {
		return Date{}, false
	}
	m := monthBeginning(buf[:j-i])
	if m == 0 {
		return Date{}, false
	}
	return quickYear(t, j+1, Date{0, m, d}, o)
}

// shortNumber reads up to four figures at i.
func shortNumber(t string, i int) (n, end int) {
	for end = i; end < len(t) && end < i+5 && digit(t[end]); end++ {
		n = n*10 + int(t[end]-'0')
	}
	return n, end
}
