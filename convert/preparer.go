package convert

import (
	"slices"

	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// preparer makes batches of rows ready for the third pass, on a goroutine of
// its own: it does what does not depend on their order.
type preparer struct {
	reader    *spool.Reader
	publisher publisher
}

// prepared is what is made of a batch.
type prepared struct {
	rows []preparedRow
}

// preparedRow is a row, and its records as they may leave.
type preparedRow struct {
	row    spool.Row
	public []dwc.Occurrence
}

func newPreparer(s *settings, parts *spool.Parts) *preparer {
	return &preparer{reader: spool.NewReader(parts), publisher: publisher{settings: s}}
}

func (p *preparer) batch(rows *encodedRows, made *prepared) error {
	made.rows = made.rows[:0]
	return rows.each(p.reader, func(row *spool.Row) {
		if n := len(made.rows); n < cap(made.rows) {
			made.rows = made.rows[:n+1]
		} else {
			made.rows = append(made.rows, preparedRow{})
		}
		to := &made.rows[len(made.rows)-1]
		p.reader.Copy(&to.row)
		to.public = slices.Grow(to.public[:0], len(row.Records))[:len(row.Records)]
		for i := range row.Records {
			p.publisher.public(&to.public[i], &row.Records[i])
		}
	})
}
