package layout

import (
	"slices"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
)

// cellPlan says what to do with the cells of one column.
type cellPlan struct {
	column              *column
	value               Value // with everything set that is the same for every row
	bit                 uint64
	joined              []int // columns, from 0, where several make one value
	slave               bool  // read with its master
	carry               bool
	dittos              bool // marks in the column repeat what is above
	labelled            bool // kept behind its heading
	visit               bool // carried within a visit only
	place               bool // carried within a site only
	ofBlock             bool // whose changes end what is carried within a site, date or recorder
	method              bool // carried within a site and recorder, with a question within other dates
	rareGap             bool // nearly every row has its own: a gap is asked about
	date                bool
	name                bool
	count               bool
	sections            bool // remarks whose few letters are read with their heading
	damage              damageKind
	letters             string // the square that the column's references share
	sixFigures          bool   // dates such as 030718
	mixedDates, swapped bool   // text among real dates; days and months exchanged
	left                string
	last                Value    // the value above, for carrying down
	has                 bool     // last is set
	parts               []string // of a joined value above
	seen                bool     // the row at hand has a value or repeats one
	explicit            bool     // the row at hand has a value of its own
	sum                 sum      // of a column of counts
}

// listState is a list's state in one walk: its plans and what stands above.
type listState struct {
	b         *block
	plans     []cellPlan
	byCol     []int // plan of each column
	carries   []int
	section   facts
	bits      map[Meaning]uint64
	siteBit   uint64 // of those, 0 where there is no such column
	dateBit   uint64
	itemsCol  int    // column whose cells name several species, -1 for none
	dateLast  Value  // of a diary
	axisMask  uint64 // what a table's headings say of each count
	axisSums  []sum  // of a table's columns
	nameCol   int    // column of the name, -1 for none
	yearCol   int    // column of years that completes the months over a table's counts, -1 for none
	tickCol   int    // column of ticks on a card that names what was not seen as well, -1 for none
	noted     bool
	sentences bool // that sentences were taken apart has been said
	traps     bool // counts stand under the names of traps
	year      int  // of the last date that had one, where the page names none
	rowYear   int  // that stands in the place of the row: "Long Drove TF4912 1995"
	placeCol  int  // column of places with their references, -1 for none
	short     bool // that year was written with two figures
	headTxt   string
	above     string // the last date with its month
	// lastMonth is that of the date above, turned whether the dates of a page of
	// one year run on into the next.
	lastMonth int
	turned    bool
	nameAt    []int // columns that name the taxon
	visitOn   bool  // the date of the row at hand is carried from above
	siteNew   bool  // the row at hand names another site than the one above,
	whoNew    bool  // another recorder,
	dateNew   bool  // another date
	data      bool  // the rows' last was a record
	recorded  bool  // a record has stood below the last line that holds for those below it
	blanks    bool  // the row before was blank
}

func newListState(p *Plan, b *block) *listState {
	s := &listState{b: b, nameCol: -1, tickCol: b.tickColumn(), yearCol: b.rowYear(), itemsCol: -1, placeCol: -1, bits: map[Meaning]uint64{}}
	if b.kind == kindNone || b.kind == kindDiary {
		return s
	}
	s.section = facts{}
	s.byCol = b.byCol
	s.traps = b.trapped()
	s.plans = make([]cellPlan, len(b.cols))
	for i := range b.cols {
		c := &b.cols[i]
		pl := b.planOf(i)
		pl.bit = s.bit(c.meaning)
		if p.page.hiddenColumns[c.col] {
			pl.value.Doubt = c.doubt.And(reading.QueryOf("hidden-column", "This column is hidden in the workbook. It was read like the others."))
		}
		switch c.split {
		case splitItems:
			s.itemsCol = c.col
		case splitSiteGrid:
			s.placeCol = c.col
		}
		if pl.name {
			s.nameAt = append(s.nameAt, c.col)
		}
		if pl.carry {
			s.carries = append(s.carries, i)
		}
		s.plans[i] = pl
	}
	if b.axis != nil {
		s.axisSums = make([]sum, len(b.axis.cols))
		for m := range b.axis.means {
			s.axisMask |= s.bit(m)
		}
		if b.axis.means[Site] {
			s.axisMask |= s.bit(GridRef)
		}
		for _, m := range []Meaning{Taxon, Scientific, Vernacular} {
			if b.axis.means[m] {
				s.axisMask |= s.bit(Taxon)
			}
		}
	}
	if len(s.nameAt) > 0 {
		s.nameCol = s.nameAt[0]
		if len(b.heads) > 0 {
			s.headTxt = b.heads[len(b.heads)-1].text(s.nameCol)
		}
	}
	return s
}

// planOf says what is to be done with the cells of a column, as far as the
// block alone tells.
func (b *block) planOf(i int) cellPlan {
	c := &b.cols[i]
	slave := c.master != i
	pl := cellPlan{
		column:   c,
		left:     c.left,
		slave:    slave,
		value:    Value{Meaning: c.meaning, Heading: c.heading, Sex: c.sex, Stage: c.stage, From: FromCell, Doubt: c.doubt},
		carry:    c.carry && !slave && c.left == "",
		dittos:   c.stats.ditto > 0,
		labelled: c.left == "" && c.needsHeading(),
		visit:    ofVisit[c.meaning],
		place:    ofPlace[c.meaning],
		method:   c.meaning == Method,
		ofBlock:  c.meaning == Site || c.meaning == Recorder || c.meaning == Date,
		rareGap:  c.stats.n >= 20 && b.filled[c.col] >= 0.97 && c.stats.ditto == 0,
		date:     c.meaning == Date && c.left == "",
		count:    c.meaning == Count && c.left == "",
		name:     isName(c.meaning) && c.left == "",
		sections: c.meaning == Remarks && sectionHeading(c.heading),
		damage:   damageOf(c),
	}
	if c.meaning == Term {
		pl.value.Heading = c.term
	}
	for _, j := range c.joined {
		pl.joined = append(pl.joined, b.cols[j].col)
	}
	switch pl.damage {
	case damageGrid:
		pl.letters = b.columnLetters(c)
	case damageDate:
		pl.mixedDates, pl.swapped = b.columnDates(c)
		pl.sixFigures = c.stats.sixFigures()
		if !pl.mixedDates && !pl.sixFigures {
			pl.damage = damageNone
		}
	}
	return pl
}

// noteShared remembers what the shared columns say on a row on which the list
// itself has nothing, for rows below that leave them blank.
func (s *listState) noteShared(r *notebook.Row) {
	for i := range s.plans {
		pl := &s.plans[i]
		c := pl.column.col
		if !pl.carry || len(pl.joined) > 0 || !slices.Contains(s.b.shared, c) || c >= len(r.Cells) || !HasText(&r.Cells[c]) {
			continue
		}
		v := pl.value
		v.Text, v.Raw, v.Kind, v.Ref = trim(r.Cells[c].Text), r.Cells[c].Raw, r.Cells[c].Kind, cellRef(c, r.Number)
		if isDitto(v.Text) {
			continue
		}
		if pl.date {
			s.completeDate(&v)
		}
		pl.last, pl.has = v, true
	}
}

// bit is a meaning's place in the masks of this walk.
func (s *listState) bit(m Meaning) uint64 {
	if _, ok := s.bits[m]; !ok {
		s.bits[m] = 1 << (len(s.bits) % 64)
		s.siteBit, s.dateBit = s.bits[Site], s.bits[Date]
	}
	return s.bits[m]
}

func isName(m Meaning) bool {
	return m == Taxon || m == Scientific || m == Vernacular || m == TaxonNumber
}
