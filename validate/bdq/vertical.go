package bdq

import (
	"math/big"
	"regexp"
	"strings"
)

// metresIn are the lengths of the units in which depths and elevations are
// written: the international foot and yard (1959), the fathom of two yards as
// the standard's notes give it, and the international mile.
var metresIn = map[string]string{
	"m": "1", "meter": "1", "meters": "1", "metre": "1", "metres": "1", "mtr": "1", "mtrs": "1", "mts": "1", "mt": "1",
	"masl": "1", "mamsl": "1", "msnm": "1", "metros": "1", "metro": "1", "mètres": "1", "mètre": "1",
	"km": "1000", "kms": "1000", "kilometer": "1000", "kilometers": "1000", "kilometre": "1000", "kilometres": "1000",
	"cm": "0.01", "centimeters": "0.01", "centimetres": "0.01",
	"ft": "0.3048", "feet": "0.3048", "foot": "0.3048", "'": "0.3048", "′": "0.3048",
	"yd": "0.9144", "yds": "0.9144", "yard": "0.9144", "yards": "0.9144",
	"ftm": "1.8288", "ftms": "1.8288", "fm": "1.8288", "fms": "1.8288", "fth": "1.8288", "fath": "1.8288",
	"fathom": "1.8288", "fathoms": "1.8288",
	"mi": "1609.344", "mile": "1609.344", "miles": "1609.344",
}

// verticalWords may stand beside the figures without changing what they mean.
var verticalWords = map[string]bool{
	"depth": true, "depths": true, "deep": true, "elevation": true, "elev": true, "el": true, "altitude": true,
	"alt": true, "height": true, "range": true, "at": true, "a": true, "above": true, "sea": true, "level": true,
	"asl": true, "amsl": true, "msl": true, "s": true, "l": true, "n": true, "of": true, "in": true, "water": true,
	"mean": true, "from": true, "is": true, "the": true, "between": true,
}

var lowest = map[string]bool{"min": true, "minimum": true, "mindepth": true, "minelevation": true, "minelev": true, "lowest": true, "lower": true}
var highest = map[string]bool{"max": true, "maximum": true, "maxdepth": true, "maxelevation": true, "maxelev": true, "highest": true, "upper": true}

var verticalToken = regexp.MustCompile(`\d+(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+|\pL+|['′]|[^\s\d\pL]`)

// decimalComma finds a comma between digits that does not part thousands:
// "1,5 m" may be one figure or two.
var decimalComma = regexp.MustCompile(`\d,\d{1,2}(?:\D|$)|\d,\d{4}`)

// figure is one number of a depth or elevation with what was said of it.
type figure struct {
	text     string
	unit     string
	negative bool
	role     byte // 'l' lowest, 'h' highest, 0 not said
}

// interpretVertical reads a depth or elevation of one value or a range with
// its unit, and gives the lower and the upper value in metres, exact. Figures
// without a unit, open ranges ("over 100 m"), approximations and values that
// contradict themselves are not read.
func interpretVertical(text string, belowZero bool) (low, high string, ok bool) {
	if len(text) > 200 || decimalComma.MatchString(text) {
		return "", "", false
	}
	figures, ok := verticalFigures(text)
	if !ok || len(figures) == 0 || len(figures) > 2 {
		return "", "", false
	}
	last := figures[len(figures)-1]
	var metres [2]*big.Rat
	for i, f := range figures {
		if f.unit == "" {
			f.unit = last.unit
		}
		factor, known := metresIn[f.unit]
		if !known || factor != metresIn[last.unit] || f.negative && !belowZero {
			return "", "", false
		}
		value, ok := new(big.Rat).SetString(strings.ReplaceAll(f.text, ",", ""))
		scale, okScale := new(big.Rat).SetString(factor)
		if !ok || !okScale {
			return "", "", false
		}
		metres[i] = value.Mul(value, scale)
		if f.negative {
			metres[i].Neg(metres[i])
		}
	}
	if len(figures) == 1 {
		return decimal(metres[0]), decimal(metres[0]), true
	}
	first, second := figures[0].role, last.role
	order := metres[0].Cmp(metres[1])
	switch {
	case first != 0 && first == second:
		return "", "", false
	case first == 'h' || second == 'l':
		order = -order
		metres[0], metres[1] = metres[1], metres[0]
		if order > 0 {
			return "", "", false
		}
	case (first == 'l' || second == 'h') && order > 0:
		return "", "", false
	case order > 0: // a range written from the top down
		metres[0], metres[1] = metres[1], metres[0]
	}
	return decimal(metres[0]), decimal(metres[1]), true
}

func verticalFigures(text string) ([]figure, bool) {
	tokens := verticalToken.FindAllString(strings.ToLower(text), -1)
	var figures []figure
	var role byte
	negative, joinedUp := false, true
	for i, token := range tokens {
		_, isUnit := metresIn[token]
		switch {
		case token[0] >= '0' && token[0] <= '9' || token[0] == '.' && len(token) > 1:
			if !joinedUp {
				return nil, false // two figures with nothing to join them
			}
			figures = append(figures, figure{text: token, negative: negative, role: role})
			negative, joinedUp, role = false, false, 0
		case isUnit && len(figures) > 0 && figures[len(figures)-1].unit == "" && !joinedUp:
			figures[len(figures)-1].unit = token
		case token == "-" || token == "–" || token == "—" || token == "−":
			// Between figures it joins; before the first it is a sign.
			if joinedUp {
				negative = true
			}
			joinedUp = true
		case token == "to" || token == "and":
			joinedUp = true
		case lowest[token]:
			role, joinedUp = 'l', true
		case highest[token]:
			role, joinedUp = 'h', true
		case strings.Contains("=:.,;", token) || token == "(" && i == 0 || token == ")" && i == len(tokens)-1:
		case verticalWords[token]:
		default:
			return nil, false
		}
	}
	return figures, !negative && role == 0
}

// decimal writes a number exactly, without needless zeros, or to ten places
// where it has no end.
func decimal(r *big.Rat) string {
	places, exact := r.FloatPrec()
	if !exact {
		places = 10
	}
	return r.FloatString(places)
}
