package convert

import (
	"slices"

	"fieldfare/convert/places"
	"fieldfare/convert/report"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// preparer makes batches of rows ready for the third pass, on a goroutine of
// its own: it does what does not depend on their order. Of most rows of which
// there is nothing to say nothing else is left to do but to write down, in
// order, what was made of them.
type preparer struct {
	*settings
	set       *setView
	ids       *identities
	reader    *spool.Reader
	publisher publisher
	sieve     *validate.Sieve
	sites     *places.Usual
	squares   squares
	rowIDs    []string // of a plain row's records
	// plain: rows may be plain at all. Drawn: there is a report to draw.
	plain, drawn bool
	text         *archiveText // nil where no archive is written
}

// prepared is what is made of a batch.
type prepared struct {
	runs []preparedRun
	// Of the rows that are not plain:
	rows []preparedRow
	// Of the plain ones:
	text   []byte
	events []plainEvent
	shown  []report.Sighting
}

// preparedRun is a row, or several plain rows of one sheet.
type preparedRun struct {
	row           int // by its place among the batch's; -1 for plain rows
	sheet         int
	rows, records int
	// Where what was made of them ends in that of the batch.
	text, events, shown int
}

// preparedRow is a row, and its records as they may leave.
type preparedRow struct {
	row    spool.Row
	public []dwc.Occurrence
}

func newPreparer(w *writer, parts *spool.Parts) *preparer {
	p := &preparer{
		settings: w.settings, set: w.set, ids: w.ids, reader: spool.NewReader(parts), publisher: publisher{settings: w.settings},
		sieve: w.set.checks.Sieve(), sites: w.set.sites.Again(), squares: newSquares(), drawn: w.accounts.season != nil,
	}
	p.plain = w.exact == nil && w.against == nil && w.standard == nil && w.set.ledger == nil && (w.leaving == nil || len(w.leaving.copies) == 0)
	if w.leaving != nil {
		p.text = w.leaving.archive.newText()
	}
	return p
}

func (p *preparer) batch(rows *encodedRows, made *prepared) error {
	made.runs, made.rows, made.text, made.events, made.shown = made.runs[:0], made.rows[:0], made.text[:0], made.events[:0], made.shown[:0]
	n := p.set.firsts[rows.number]
	return rows.each(p.reader, func(row *spool.Row) {
		if p.plain && p.isPlain(row, n) {
			p.write(row, made)
		} else {
			p.keep(row, made)
		}
		n += len(row.Records)
	})
}

// keep keeps a row as it is, for the writer to settle.
func (p *preparer) keep(row *spool.Row, made *prepared) {
	at := len(made.rows)
	if at < cap(made.rows) {
		made.rows = made.rows[:at+1]
	} else {
		made.rows = append(made.rows, preparedRow{})
	}
	to := &made.rows[at]
	p.reader.Copy(&to.row)
	to.public = slices.Grow(to.public[:0], len(row.Records))[:len(row.Records)]
	for i := range row.Records {
		p.publisher.public(&to.public[i], &row.Records[i])
	}
	made.runs = append(made.runs, preparedRun{row: at})
}

// isPlain tells whether a row, whose first record is the n-th, leaves as it is:
// whole, with nothing to ask, and with ids that depend on nothing else. It then
// has these ids.
func (p *preparer) isPlain(row *spool.Row, n int) bool {
	if row.Skip != "" || len(row.Findings) > 0 || len(row.Records) == 0 {
		return false
	}
	p.rowIDs = p.rowIDs[:0]
	for i := range row.Records {
		r := &row.Records[i]
		if r.EmptyVisit || len(r.Findings) > 0 || len(r.Measurements) > 0 || r.Facts.Blur > 0 || r.Occurrence.InformationWithheld != "" || r.Occurrence.OccurrenceID != "" {
			return false
		}
		if p.sieve.Concerns(entry(row, r, n+i)) {
			return false
		}
		if _, slipped := p.set.slip(row.Sheet, row.Number, r); slipped {
			return false
		}
		if _, wandered := p.wander(p.sites, &p.squares, r); wandered {
			return false
		}
		id := p.ids.maker.ID(r.Content, 1)
		if p.ids.taken(id) {
			return false
		}
		p.rowIDs = append(p.rowIDs, id)
	}
	return true
}

// write makes what is written of a plain row.
func (p *preparer) write(row *spool.Row, made *prepared) {
	last := len(made.runs) - 1
	if last < 0 || made.runs[last].row >= 0 || made.runs[last].sheet != row.Sheet {
		made.runs = append(made.runs, preparedRun{row: -1, sheet: row.Sheet})
		last++
	}
	for i := range row.Records {
		r := &row.Records[i]
		o := p.publisher.leave(r)
		o.OccurrenceID = p.rowIDs[i]
		if p.drawn {
			made.shown = append(made.shown, report.SightingOf(o, false, false))
		}
		if p.text != nil {
			made.text, made.events = p.text.append(made.text, made.events, o, r)
		}
	}
	for i := range row.Records {
		p.reader.Changed(i, &published)
	}
	run := &made.runs[last]
	run.rows++
	run.records += len(row.Records)
	run.text, run.events, run.shown = len(made.text), len(made.events), len(made.shown)
}

// count returns how many rows the batch has.
func (m *prepared) count() int {
	n := len(m.rows)
	for i := range m.runs {
		n += m.runs[i].rows
	}
	return n
}

// settle writes what was made of a batch, in the order of its rows.
func (w *writer) settle(made *prepared) error {
	text, events, shown := 0, 0, 0
	for i := range made.runs {
		run := &made.runs[i]
		if run.row >= 0 {
			if err := w.row(&made.rows[run.row].row, made.rows[run.row].public); err != nil {
				return err
			}
			continue
		}
		w.records += run.records
		w.accounts.plain(run.sheet, run.rows, run.records)
		for ; shown < run.shown; shown++ {
			w.accounts.season.Add(&made.shown[shown])
		}
		if w.leaving != nil {
			if err := w.leaving.archive.addText(made.text[text:run.text], made.events[events:run.events], run.records); err != nil {
				return err
			}
		}
		text, events = run.text, run.events
	}
	return nil
}
