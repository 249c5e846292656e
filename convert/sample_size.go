package convert

import (
	"regexp"
	"slices"
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/dwc"
)

// sampleSizes finds a number of traps or nets: "2 traps", "two MV traps",
// "3 trap nights", "2 x actinic trap".
var sampleSizes = regexp.MustCompile(`(?i)(?:^|[\s,;(+&])(\d{1,3}|one|two|three|four|five|six)\s*(?:[x×]\s*)?((?:\d+ ?w\s+)?(?:[a-z]+[ -]){0,3}?)(trap[ -]?nights?|traps?|nets?)\b`)

// vague are the words and signs beside which a number is none to rely on.
var vague = regexp.MustCompile(`(?i)\b(of|or|about|approx\w*|circa|ca?|up to|over|under|at least|not|no)\b|[~?<>≈/]|\d\s*(-|–|to)\s*\d|\d\.\d|\+`)

// otherwiseCounted begins a text before which a number is not that of traps.
var otherwiseCounted = regexp.MustCompile(`(?i)^(w|watts?|hours?|hrs?|h|nights?|min|mins|minutes?)\b`)

var smallNumbers = map[string]string{"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6"}

// sampleSize fills the size of the sample where the notebook states a number of
// traps or nets. A length of time is the effort's, and stays there as written.
func sampleSize(o *dwc.Occurrence, texts ...string) {
	value, unit := "", ""
	for _, text := range texts {
		found := sampleSizes.FindAllStringSubmatch(text, -1)
		if len(found) == 0 {
			continue
		}
		if len(found) > 1 || value != "" || vague.MatchString(text) {
			return // several numbers are none
		}
		m := found[0]
		if otherwiseCounted.MatchString(m[2]) {
			continue
		}
		value = strings.ToLower(m[1])
		if n, word := smallNumbers[value]; word {
			value = n
		}
		unit = strings.TrimSuffix(strings.ToLower(m[3]), "s")
		if strings.HasPrefix(unit, "trap") && strings.HasSuffix(unit, "night") {
			unit = "trap night"
		}
	}
	if value = strings.TrimLeft(value, "0"); value != "" {
		o.SampleSizeValue, o.SampleSizeUnit = value, unit
	}
}

// effort is a column's effort; a bare number has the heading beside it, which
// alone says of what it is.
func effort(v *layout.Value, text string) string {
	if isNumber(text) && !strings.EqualFold(v.Heading, "effort") {
		return labelled(v, text)
	}
	return text
}

// counted turns "Traps: 2" round, so that it reads as "2 traps", in each part of
// an effort.
func counted(effort string) string {
	parts := strings.Split(effort, "; ")
	for i, part := range parts {
		heading, n, found := strings.Cut(part, ": ")
		if !found {
			continue
		}
		words := strings.Fields(strings.ToLower(heading))
		if at := slices.Index(words, "of"); at >= 0 {
			words = words[at+1:]
		}
		parts[i] = n + " " + strings.Join(words, " ")
	}
	return strings.Join(parts, "; ")
}
