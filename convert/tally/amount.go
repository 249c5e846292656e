package tally

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"fieldfare/convert/reading"
)

// CoverType is the organismQuantityType of the share of the ground that
// plants cover, named like Darwin Core's own example "% biomass".
const CoverType = "% cover"

// methods are words for how moths are caught, as they stand behind a count.
const methods = `traps?|mv|merc|act|actinic|led|lights?|lamps?|sugar(?:ed|ing)?|(?:wine )?ropes?|net(?:ted)?|bait|field|garden|robinson|skinner|heath|dusking|sweep(?:ing)?|beat(?:en|ing)?`

var (
	cover     = regexp.MustCompile(`(?i)^((?:<|>|≤|≥|~|c\.? ?|ca\.? ?)?\d{1,3}(?:\.\d+)?(?: ?%? ?(?:-|–|to) ?\d{1,3}(?:\.\d+)?)?) ?(?:%|per ?cent) ?(cover)?$`)
	thousands = regexp.MustCompile(`(?i)^(?:c\.? ?|~)?\d{1,3}\.\d ?k$`)
	growths   = regexp.MustCompile(`(?i)^(?:(?:c\.? ?|ca\.? ?|~|>|<)?\d{1,5}\+?|several|many|a few) ((?:flowering )?(?:plants?|clumps?|stems?|spikes?|shoots?|rosettes?|tussocks?|tufts?|patch|patches|fruiting bod(?:y|ies)))$`)
	area      = regexp.MustCompile(`(?i)^((?:c\.? ?|ca\.? ?|~|>|<)?\d{1,5}(?:\.\d+)?) ?(?:sq\.? ?m(?:et(?:re|er)s?)?|square met(?:re|er)s?|m²)$`)
	byMethod  = regexp.MustCompile(`(?i)^(\d{1,5}) ?\(?(?:` + methods + `)\)?(?: ?[,;/&+] ?| and | )(\d{1,5}) ?\(?(?:` + methods + `)\)?$`)
	letterO   = regexp.MustCompile(`^[1-9]\d{0,3}[Oo]{1,3}$`)
	addedUp   = regexp.MustCompile(`^(\d{1,4}(?: ?\+ ?\d{1,4})+) ?= ?(\d{1,5})$`)
)

// amount reads the cells that are a quantity of something else than
// individuals, a rounded number, or a sum worked out.
func amount(s string) (Part, reading.Verdict, bool) {
	if m := cover.FindStringSubmatch(s); m != nil {
		quantity := strings.TrimSpace(strings.ReplaceAll(m[1], "%", ""))
		for _, figure := range decimal.FindAllString(quantity, -1) {
			if share, err := strconv.ParseFloat(figure, 64); err != nil || share > 100 {
				return Part{}, reading.Verdict{}, false
			}
		}
		p := Part{OrganismQuantity: quantity, OrganismQuantityType: CoverType}
		if m[2] != "" {
			return p, reading.Verdict{}, true
		}
		return p, reading.QueryOf("share", fmt.Sprintf("“%s” was read as the share of the ground that is covered. Please check; if it is anything else, say how many there were.", s)), true
	}
	if thousands.MatchString(s) {
		return Part{OrganismQuantity: s, OrganismQuantityType: IndividualsType}, reading.Verdict{}, true
	}
	if m := growths.FindStringSubmatch(s); m != nil {
		p := Part{OrganismQuantity: strings.TrimSpace(strings.TrimSuffix(s, m[1])), OrganismQuantityType: strings.ToLower(m[1])}
		return p, reading.QueryOf("growths", fmt.Sprintf("“%s” was read as a quantity of plants or fungi. Please check; if an animal was found on them, say how many there were.", s)), true
	}
	if m := area.FindStringSubmatch(s); m != nil {
		p := Part{OrganismQuantity: m[1], OrganismQuantityType: AreaType}
		return p, reading.QueryOf("area-as-count", fmt.Sprintf("“%s” was read as the area that was covered. Please check; if it is anything else, say how many there were.", s)), true
	}
	if m := byMethod.FindStringSubmatch(s); m != nil {
		a, _ := digits(m[1])
		b, _ := digits(m[2])
		return Part{}, reading.HeldOf("counts-by-method", fmt.Sprintf("“%s” gives two counts, each with the way of finding them. Please say how many there were in all.", s), strconv.Itoa(a+b)), true
	}
	if letterO.MatchString(s) {
		return Part{}, reading.HeldOf("letter-for-nought", fmt.Sprintf("“%s” has a letter O that may stand for a nought. Please say how many there were.", s), strings.NewReplacer("O", "0", "o", "0").Replace(s)), true
	}
	if m := addedUp.FindStringSubmatch(s); m != nil {
		sum := 0
		for _, figure := range strings.Split(m[1], "+") {
			n, _ := digits(strings.TrimSpace(figure))
			sum += n
		}
		if total, _ := digits(m[2]); total != sum || sum == 0 {
			return Part{}, reading.HeldOf("sum-disagrees", fmt.Sprintf("“%s” does not add up: it makes %d. Please say how many there were.", s, sum), strconv.Itoa(sum), m[2]), true
		}
		v, _ := plausible(sum, m[2])
		return Part{IndividualCount: strconv.Itoa(sum)}, v, true
	}
	return Part{}, reading.Verdict{}, false
}

// AreaType is the organismQuantityType of the ground that plants cover.
const AreaType = "m²"

var decimal = regexp.MustCompile(`\d+(?:\.\d+)?`)
