package pages

import (
	"fmt"
	"strings"
	"time"
)

var layouts = []struct {
	name string
	make func(*maker)
}{
	{"list", (*maker).list},
	{"ditto list", (*maker).dittoList},
	{"date sections", (*maker).dateSections},
	{"species by nights", (*maker).nightsAcross},
	{"nights down", (*maker).nightsDown},
	{"months over days", (*maker).monthsOverDays},
	{"tables below each other", (*maker).tablesBelow},
	{"split dates", (*maker).splitDates},
	{"a row a night", (*maker).rowANight},
}

// column is one column of a list: the words that may head it, and its value.
type column struct {
	words []string
	value func(night, catch) any
}

func (m *maker) columns() []column {
	who := func(night, catch) any { return m.person }
	return []column{
		{[]string{"Date", "When", "Night", "Date caught"}, func(n night, _ catch) any { return m.date(n.date) }},
		{[]string{"Species", "What", "Taxon", "Name", "Moth"}, func(_ night, c catch) any { return m.name(c.species) }},
		{[]string{"Count", "How many", "No.", "Number", "Quantity"}, func(_ night, c catch) any { return c.count }},
		{[]string{"Site", "Where", "Place", "Location"}, func(n night, _ catch) any { return n.place.name }},
		{[]string{"Grid ref", "Grid reference", "OS ref", "Square"}, func(n night, _ catch) any { return n.place.square }},
		{[]string{"Recorder", "Who", "Observer"}, who},
	}
}

// writeList writes the columns in an order of chance.
func (m *maker) writeList(columns []column, carry func(column int, before, now any) any) {
	m.Shuffle(len(columns), func(i, j int) { columns[i], columns[j] = columns[j], columns[i] })
	if m.IntN(3) == 0 {
		m.row("Moths of the fen")
		m.row()
	}
	var heads []any
	for _, c := range columns {
		heads = append(heads, pick(m, c.words...))
	}
	m.row(heads...)
	before := make([]any, len(columns))
	for _, n := range m.nights {
		for _, c := range n.catches {
			m.record(m.next(), n, c)
			var cells []any
			for i, col := range columns {
				v := col.value(n, c)
				cells = append(cells, carry(i, before[i], v))
				before[i] = v
			}
			m.row(cells...)
		}
	}
}

func asItIs(_ int, _, now any) any { return now }

func (m *maker) list() { m.writeList(m.columns(), asItIs) }

func (m *maker) dittoList() {
	mark := pick(m, `"`, "do", "ditto", "-\"-", ",,")
	m.writeList(m.columns(), func(_ int, before, now any) any {
		if _, number := now.(int); !number && before == now {
			return mark
		}
		return now
	})
}

func (m *maker) splitDates() {
	columns := m.columns()[1:]
	heads := []string{"Day", "Month", "Year"}
	part := func(i int, of func(time.Time) any) {
		columns = append(columns, column{heads[i : i+1], func(n night, _ catch) any { return of(n.date) }})
	}
	part(0, func(d time.Time) any { return d.Day() })
	named := m.IntN(2) == 0
	part(1, func(d time.Time) any {
		if named {
			return d.Format("Jan")
		}
		return int(d.Month())
	})
	part(2, func(d time.Time) any { return d.Year() })
	m.writeList(columns, asItIs)
}

// facts writes what holds for all that follows.
func (m *maker) facts(at place) {
	if m.IntN(2) == 0 {
		m.row("Site", at.name)
		m.row("Grid ref", at.square)
		m.row("Recorder", m.person)
	} else {
		m.row("Site: " + at.name)
		m.row("Grid ref: " + at.square)
		m.row("Recorder: " + m.person)
	}
	m.row()
}

func (m *maker) dateSections() {
	m.facts(m.nights[0].place)
	m.row("Species", "Count")
	for _, n := range m.nights {
		m.row(m.date(n.date))
		for _, c := range n.catches {
			m.record(m.next(), n, c)
			m.row(m.name(c.species), c.count)
		}
	}
}

func cell(count int) any {
	if count == 0 {
		return nil
	}
	return count
}

// grid writes species down, and a column for each night, below the headings.
func (m *maker) grid(nights []night) {
	for _, s := range kinds(nights) {
		cells := []any{m.name(s)}
		for _, n := range nights {
			if c := n.count(s); c > 0 {
				m.record(m.next(), n, catch{s, c})
			}
			cells = append(cells, cell(n.count(s)))
		}
		m.row(cells...)
	}
}

func (m *maker) dates(nights []night) []any {
	cells := []any{"Species"}
	for _, n := range nights {
		cells = append(cells, m.date(n.date))
	}
	return cells
}

func (m *maker) nightsAcross() {
	m.facts(m.nights[0].place)
	m.row(m.dates(m.nights)...)
	m.grid(m.nights)
	if m.IntN(2) == 0 {
		total := []any{"Total"}
		for _, n := range m.nights {
			sum := 0
			for _, c := range n.catches {
				sum += c.count
			}
			total = append(total, sum)
		}
		m.row(total...)
	}
}

func (m *maker) nightsDown() {
	m.facts(m.nights[0].place)
	all := kinds(m.nights)
	heads := []any{"Date"}
	for _, s := range all {
		heads = append(heads, m.name(s))
	}
	m.row(heads...)
	for _, n := range m.nights {
		cells := []any{m.date(n.date)}
		for _, s := range all {
			if c := n.count(s); c > 0 {
				m.record(m.next(), n, catch{s, c})
			}
			cells = append(cells, cell(n.count(s)))
		}
		m.row(cells...)
	}
}

func (m *maker) monthsOverDays() {
	m.row(fmt.Sprintf("Moths %d", m.nights[0].date.Year()))
	m.facts(m.nights[0].place)
	months, days := []any{nil}, []any{"Species"}
	last := time.Month(0)
	for _, n := range m.nights {
		if month := n.date.Month(); month != last {
			months, last = append(months, month.String()), month
		} else {
			months = append(months, nil)
		}
		days = append(days, n.date.Day())
	}
	m.row(months...)
	m.row(days...)
	m.grid(m.nights)
}

func (m *maker) tablesBelow() {
	half := 1 + m.IntN(len(m.nights)-1)
	first := m.IntN(len(places))
	for i, nights := range [][]night{m.nights[:half], m.nights[half:]} {
		for j := range nights {
			nights[j].place = places[(first+i)%len(places)]
		}
		if i > 0 {
			m.row()
		}
		m.facts(nights[0].place)
		m.row(m.dates(nights)...)
		m.grid(nights)
	}
}

func (m *maker) rowANight() {
	m.row("Date", "Site", "Grid ref", "Recorder", "Caught")
	for _, n := range m.nights {
		var caught []string
		for _, c := range n.catches {
			m.record(m.next(), n, c)
			caught = append(caught, fmt.Sprintf("%d %s", c.count, m.name(c.species)))
		}
		m.row(m.date(n.date), n.place.name, n.place.square, m.person, strings.Join(caught, ", "))
	}
}
