package pages

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"time"
)

// species are on the starter list and fly in June and July, so that nothing
// on a page is doubtful in itself.
var species = [][2]string{
	{"Poplar Hawk-moth", "Laothoe populi"}, {"Elephant Hawk-moth", "Deilephila elpenor"}, {"Buff-tip", "Phalera bucephala"},
	{"Buff Arches", "Habrosyne pyritoides"}, {"Peach Blossom", "Thyatira batis"}, {"Chinese Character", "Cilix glaucata"},
	{"Clouded Border", "Lomaspilis marginata"}, {"Swallow-tailed Moth", "Ourapteryx sambucaria"}, {"Mottled Beauty", "Alcis repandata"},
	{"Iron Prominent", "Notodonta dromedarius"}, {"Green Silver-lines", "Pseudoips prasinana"}, {"Light Arches", "Apamea lithoxylaea"},
	{"Brown Rustic", "Rusina ferruginea"}, {"Yellow Shell", "Camptogramma bilineata"}, {"Double Square-spot", "Xestia triangulum"},
	{"Heart and Club", "Agrotis clavis"}, {"Ingrailed Clay", "Diarsia mendica"}, {"Shoulder-striped Wainscot", "Leucania comma"},
	{"Silver-ground Carpet", "Xanthorhoe montanata"}, {"Common Wave", "Cabera exanthemata"}, {"Dusky Brocade", "Apamea remissa"},
	{"Broom Moth", "Ceramica pisi"}, {"Plain Golden Y", "Autographa jota"}, {"Small Fan-foot", "Herminia grisealis"},
}

// place is a site of the scenario and its square.
type place struct{ name, square string }

var places = []place{{"Sallowmere Reserve", "TL4588"}, {"Tinker's Row", "TF4901"}, {"Reed Bank", "TL4689"}, {"Withy Holt", "TL4587"}}

var people = []string{"Ines Calloway", "Tom Achterberg", "Maud Pellinger"}

// catch is one species on one night.
type catch struct {
	species [2]string
	count   int
}

// night is what one night at one place brought.
type night struct {
	date    time.Time
	place   place
	catches []catch
}

// maker makes one page.
type maker struct {
	*rand.Rand
	page    *Page
	nights  []night
	english bool
	form    int // how this page writes its dates
	person  string
}

func pick[T any](m *maker, list ...T) T { return list[m.IntN(len(list))] }

// contents decides what stands on the page.
func (m *maker) contents() {
	year := 2004 + m.IntN(20)
	days := m.Perm(61)[:2+m.IntN(6)]
	slices.Sort(days)
	at := pick(m, places...)
	for _, d := range days {
		n := night{date: time.Date(year, 6, 1+d, 0, 0, 0, 0, time.UTC), place: at}
		for _, s := range m.Perm(len(species))[:1+m.IntN(7)] {
			n.catches = append(n.catches, catch{species[s], 1 + m.IntN(40)})
		}
		m.nights = append(m.nights, n)
	}
	m.english = m.IntN(3) > 0
	m.form = m.IntN(7)
	m.person = pick(m, people...)
}

// name is a species as this page writes it.
func (m *maker) name(s [2]string) string {
	if m.english {
		return s[0]
	}
	return s[1]
}

// date is a date as this page writes it; a real date in some workbooks.
func (m *maker) date(d time.Time) any {
	if m.page.Workbook && m.form > 3 {
		return d
	}
	return m.dateText(d)
}

func (m *maker) dateText(d time.Time) string {
	switch m.form {
	case 0:
		return d.Format("02/01/2006")
	case 1:
		return d.Format("2 January 2006")
	case 2:
		return d.Format("2006-01-02")
	case 3:
		return d.Format("Mon 2 Jan 2006")
	case 4:
		return d.Format("2.1.06")
	case 5:
		return d.Format("2-Jan-06")
	}
	return fmt.Sprintf("%d%s %s", d.Day(), ordinal(d.Day()), d.Format("January 2006"))
}

func ordinal(day int) string {
	if day/10 != 1 {
		switch day % 10 {
		case 1:
			return "st"
		case 2:
			return "nd"
		case 3:
			return "rd"
		}
	}
	return "th"
}

// row writes a row of cells.
func (m *maker) row(cells ...any) { m.page.Cells = append(m.page.Cells, cells) }

// record notes that the row being written, or the one given, holds a record.
func (m *maker) record(row int, n night, c catch) {
	m.page.Records = append(m.page.Records, Record{row, c.species[1], n.date.Format(time.DateOnly), c.count, n.place.name})
}

// next is the number of the row that will be written next.
func (m *maker) next() int { return len(m.page.Cells) + 1 }

// kinds are all species of the given nights, in the order of the list.
func kinds(nights []night) [][2]string {
	var list [][2]string
	for _, s := range species {
		if slices.ContainsFunc(nights, func(n night) bool { return n.count(s) > 0 }) {
			list = append(list, s)
		}
	}
	return list
}

func (n night) count(s [2]string) int {
	for _, c := range n.catches {
		if c.species == s {
			return c.count
		}
	}
	return 0
}
