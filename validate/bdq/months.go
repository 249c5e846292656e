package bdq

import (
	"strings"
	"sync"
)

// monthNames holds the months of the languages in which labels of western
// collections are mostly written, with their usual abbreviations, as in the
// Unicode CLDR (gregorian calendar, wide and abbreviated), without accents.
var monthNames = [12]string{
	"january jan janvier janv januar janner enero ene janeiro gennaio gen januari januarius",
	"february feb fevrier fevr fev februar febrero fevereiro febbraio februari februarius",
	"march mar mars marz maerz marzo marco maart mrt mart martius",
	"april apr avril avr abril abr aprile aprilis",
	"may mai mayo maio mag maggio mei maj maius",
	"june jun juin juni junio junho giugno giu junius",
	"july jul juillet juil juli julio julho luglio lug julius",
	"august aug aout agosto ago augustus augusti",
	"september sep sept septembre septiembre setembro set settembre sett septembris",
	"october oct octobre oktober okt octubre outubro out ottobre ott octobris",
	"november nov novembre noviembre novembro novembris",
	"december dec decembre dezember dez diciembre dic dezembro dicembre desember des decembris",
}

var romanMonths = [12]string{"i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"}

var monthByName = sync.OnceValue(func() map[string]int {
	names := map[string]int{}
	for i, list := range monthNames {
		for name := range strings.FieldsSeq(list) {
			names[name] = i + 1
		}
	}
	return names
})

// namedMonth reads the name or usual abbreviation of a month, and a longer
// beginning of an English one; "Ma" is neither March nor May.
func namedMonth(word string) (int, bool) {
	word = folded(strings.TrimSuffix(word, "."))
	if m, ok := monthByName()[word]; ok {
		return m, true
	}
	if len(word) < 3 {
		return 0, false
	}
	for i, list := range monthNames {
		english, _, _ := strings.Cut(list, " ")
		if strings.HasPrefix(english, word) {
			return i + 1, true
		}
	}
	return 0, false
}

func romanMonth(word string) (int, bool) {
	word = strings.ToLower(strings.TrimSuffix(word, "."))
	for i, roman := range romanMonths {
		if word == roman {
			return i + 1, true
		}
	}
	return 0, false
}
