package convert

import (
	"slices"
	"strings"

	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/dwc"
)

// leaving is everything that is written of the records that leave: the
// archive, and copies in other formats.
//
// Blurred records are written after all others, in the order of their ids:
// between the rows of its page a blurred record would betray its place.
type leaving struct {
	archive *archive
	copies  []copyWriter
	blurred waiting
}

func newLeaving(job Job, s *settings, v *setView, out *stage.Folder) (*leaving, error) {
	file, err := out.Create(SubmissionFile)
	if err != nil {
		return nil, err
	}
	l := &leaving{}
	if l.blurred.rows, err = spool.New(out.Temp()); err != nil {
		return nil, err
	}
	if l.archive, err = newArchive(file, s, v); err != nil {
		return nil, err
	}
	for _, format := range job.Formats {
		c, err := newCopy(format, columnsOf(v), out)
		if err != nil {
			return nil, err
		}
		l.copies = append(l.copies, c)
	}
	return l, nil
}

func (l *leaving) add(o *dwc.Occurrence, r *spool.Record) error {
	if r.Facts.Blur > 0 {
		return l.blurred.add(o, r)
	}
	return l.write(o, r)
}

func (l *leaving) write(o *dwc.Occurrence, r *spool.Record) error {
	if err := l.archive.add(o, r); err != nil {
		return err
	}
	for _, c := range l.copies {
		if err := c.add(o, r); err != nil {
			return err
		}
	}
	return nil
}

// end writes what has waited for all others: then it is known what leaves.
func (l *leaving) end() error { return l.blurred.each(l.write) }

func (l *leaving) close(metadata *dwc.Dataset) error {
	if err := l.archive.close(metadata); err != nil {
		return err
	}
	for _, c := range l.copies {
		if err := c.close(); err != nil {
			return err
		}
	}
	return nil
}

// abandon gives up what is unfinished; after close it does nothing.
func (l *leaving) abandon() {
	if l == nil {
		return
	}
	if l.archive != nil {
		l.archive.abort()
	}
	if l.blurred.rows != nil {
		l.blurred.rows.Close()
	}
}

// waiting holds records until they can be written in the order of their ids.
// It keeps some hundred bytes of each in memory, the rest in a spool.
type waiting struct {
	rows    *spool.Spool
	places  []waitingPlace
	encoded []byte
}

type waitingPlace struct {
	id string
	at int64
}

func (w *waiting) add(o *dwc.Occurrence, r *spool.Record) error {
	w.places = append(w.places, waitingPlace{o.EventID + " " + o.OccurrenceID, w.rows.Size()})
	w.encoded = encodeLeaving(w.encoded, o, r)
	return w.rows.Append(w.encoded)
}

func (w *waiting) each(fn func(o *dwc.Occurrence, r *spool.Record) error) error {
	slices.SortStableFunc(w.places, func(a, b waitingPlace) int { return strings.Compare(a.id, b.id) })
	var row spool.Row
	for i := range w.places {
		encoded, err := w.rows.At(w.places[i].at)
		if err != nil {
			return err
		}
		if err := spool.Decode(encoded, &row, nil); err != nil {
			return err
		}
		if err := fn(&row.Records[0].Occurrence, &row.Records[0]); err != nil {
			return err
		}
	}
	return nil
}

// encodeLeaving encodes a record as it may leave, with what is needed to write
// it.
func encodeLeaving(b []byte, o *dwc.Occurrence, r *spool.Record) []byte {
	kept := spool.Row{Records: []spool.Record{{Occurrence: *o, Facts: r.Facts, EmptyVisit: r.EmptyVisit, Measurements: r.Measurements}}}
	return spool.Encode(b[:0], &kept)
}
