package convert

import (
	"fieldfare/convert/spool"
	"fieldfare/convert/stage"
	"fieldfare/dwc"
)

// leaving is everything that is written of the records that leave: the
// archive, and copies in other formats.
type leaving struct {
	archive *archive
	copies  []copyWriter
}

func newLeaving(job Job, s *settings, v *setView, out *stage.Folder) (*leaving, error) {
	file, err := out.Create(SubmissionFile)
	if err != nil {
		return nil, err
	}
	l := &leaving{}
	if l.archive, err = newArchive(file, s, v); err != nil {
		return nil, err
	}
	for _, format := range job.Formats {
		c, err := newCopy(format, v.used.Columns("occurrenceID"), out)
		if err != nil {
			return nil, err
		}
		l.copies = append(l.copies, c)
	}
	return l, nil
}

func (l *leaving) add(o *dwc.Occurrence, r *spool.Record) error {
	if err := l.archive.add(o, r); err != nil {
		return err
	}
	if o.OccurrenceID == "" {
		return nil // a visit on which nothing was found
	}
	for _, c := range l.copies {
		if err := c.add(o); err != nil {
			return err
		}
	}
	return nil
}

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
	if l != nil && l.archive != nil {
		l.archive.abort()
	}
}
