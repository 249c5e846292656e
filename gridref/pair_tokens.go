package gridref

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// figure is one number of an easting and northing pair as written.
type figure struct {
	value      float64
	whole      int     // figures before the point
	decimals   int     // figures after it
	axis       byte    // 'E' or 'N' where it is labelled
	scientific bool    // written like 5.453E+05
	precision  float64 // what one in the last place is worth
}

var (
	pairToken = regexp.MustCompile(`^(?:(\d\.?\d*E\+?\d{1,2})(?:\b|$)|(\d+)(?:\.(\d+))?|(EASTINGS?|NORTHINGS?|EAST|NORTH|ME|MN|[ENXY])|([ ,;/:=()\[\]'"*]+|M\b|METRES?))`)

	thousandsPair = regexp.MustCompile(`^(\d{2,3})[, '](\d{3})[ ,;/]+(?:(\d)[, '])?(\d{1,3})[, '](\d{3})$`)
	thousands     = regexp.MustCompile(`\b([ENXY]?)(\d{1,3})[, '](\d{3})(M?[ENXY]?)\b`)
	hyphenPair    = regexp.MustCompile(`^(\d{6})-(\d{5,7})$`)
	commaPair     = regexp.MustCompile(`^(\d{5,7}),(\d{1,3})[ ;/]+(\d{5,7}),(\d{1,3})$`)
)

// pairFigures reads two numbers, perhaps labelled; the easting comes first in
// the result. labelled says that the order was given by labels; ok is false
// where the text is no such pair.
func pairFigures(text string) (e, n figure, labelled, ok bool) {
	if m := hyphenPair.FindStringSubmatch(text); m != nil {
		text = m[1] + " " + m[2]
	} else if m := thousandsPair.FindStringSubmatch(text); m != nil {
		text = m[1] + m[2] + " " + m[3] + m[4] + m[5]
	} else if m := commaPair.FindStringSubmatch(text); m != nil {
		text = m[1] + "." + m[2] + " " + m[3] + "." + m[4]
	} else if strings.ContainsAny(text, "EX") && strings.ContainsAny(text, "NY") && len(thousands.FindAllString(text, -1)) == 2 {
		text = thousands.ReplaceAllString(text, "$1$2$3$4")
	}
	var numbers []figure
	var waiting byte // a label before its number
	for text != "" {
		m := pairToken.FindStringSubmatch(text)
		if m == nil || m[5] != "" && m[5][0] == 'M' && len(numbers) == 0 {
			// M before any number is the Irish square.
			return e, n, false, false
		}
		// Hyphens only stand between numbers, never before one.
		text = strings.TrimLeft(text[len(m[0]):], " ")
		text = strings.TrimPrefix(text, "- ")
		switch {
		case m[1] != "" || m[2] != "":
			f, good := newFigure(m[1], m[2], m[3])
			if !good {
				return e, n, false, false
			}
			f.axis, waiting = waiting, 0
			numbers = append(numbers, f)
		case m[4] != "":
			axis := axisOf(m[4])
			if k := len(numbers); k > 0 && numbers[k-1].axis == 0 && !(k == 1 && waiting == 0 && text != "" && labelsLead(numbers)) {
				numbers[k-1].axis = axis
			} else if waiting == 0 {
				waiting = axis
			} else {
				return e, n, false, false
			}
		}
	}
	if len(numbers) != 2 || waiting != 0 {
		return e, n, false, false
	}
	e, n = numbers[0], numbers[1]
	switch {
	case e.axis == 0 && n.axis == 0:
		return e, n, false, true
	case e.axis == 'N' && n.axis == 'E':
		return n, e, true, true
	}
	return e, n, true, e.axis == 'E' && n.axis == 'N'
}

// labelsLead reports whether the first number's label came before it.
func labelsLead(numbers []figure) bool { return numbers[0].axis != 0 }

func axisOf(label string) byte {
	switch label[0] {
	case 'E', 'X':
		return 'E'
	case 'M':
		return label[1]
	}
	return 'N'
}

func newFigure(scientific, whole, decimals string) (f figure, ok bool) {
	if scientific == "" {
		text := whole
		if decimals != "" {
			text += "." + decimals
		}
		v, err := strconv.ParseFloat(text, 64)
		return figure{value: v, whole: len(whole), decimals: len(decimals),
			precision: math.Pow10(-len(decimals))}, err == nil
	}
	v, err := strconv.ParseFloat(scientific, 64)
	mantissa, exponent, _ := strings.Cut(scientific, "E")
	power, _ := strconv.Atoi(strings.TrimPrefix(exponent, "+"))
	_, fraction, _ := strings.Cut(mantissa, ".")
	return figure{value: v, whole: power + 1, scientific: true,
		precision: math.Pow10(power - len(fraction))}, err == nil && power <= 7
}
