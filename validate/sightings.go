package validate

import (
	"encoding/binary"
	"fmt"
	"math"
	"os"
)

// sighting is what is remembered of a record of a group, in few bytes.
type sighting struct {
	content    [16]byte
	recorder   uint64 // 0: nobody named
	initials   uint64
	short      uint64 // of first initials and surnames
	method     uint64 // 0: nothing said
	manner     uint64 // time, habitat and the like; 0: nothing said
	remarks    uint64
	lat, lon   float32
	count      int32 // -1: no number
	quantity   uint32
	sheet, row int32
	before     int32 // the sighting of the group before this one; -1: none
}

// mostInGroup is how many records of a group are remembered to compare the
// next with.
const mostInGroup = 16

// sightings are those of all groups, in their order: the latest in memory, the
// earlier ones in a temporary file once there are many. Where no file can be
// written, all stay in memory.
type sightings struct {
	groups []group
	recent []sighting
	gone   int32 // how many went to the file
	file   *os.File
	named  bool // the file still has its name
	stays  bool // no more can be written
	block  []byte
}

// group is where the sightings of a group are.
type group struct {
	last int32
	n    int8
}

const (
	// sightingsAtHand is how many are held before the file is begun, and how
	// many are written to it at once.
	sightingsAtHand = 1 << 14
	sightingBytes   = 92
)

// add adds one to the group at a place.
func (s *sightings) add(at int, one *sighting) {
	g := &s.groups[at]
	one.before = -1
	if g.n > 0 {
		one.before = g.last
	}
	g.last = s.gone + int32(len(s.recent))
	g.n++
	s.recent = append(s.recent, *one)
	if len(s.recent) >= 2*sightingsAtHand && !s.stays {
		s.spill()
	}
}

// of returns the sightings of the group at a place in their order, in the
// memory given.
func (s *sightings) of(at int, into *[mostInGroup]sighting) ([]sighting, error) {
	g := &s.groups[at]
	last := g.last
	for i := int(g.n) - 1; i >= 0; i-- {
		if last >= s.gone {
			into[i] = s.recent[last-s.gone]
		} else if err := s.read(last, &into[i]); err != nil {
			return nil, err
		}
		last = into[i].before
	}
	return into[:g.n], nil
}

// spill writes the earlier half of what is at hand to the file.
func (s *sightings) spill() {
	if s.file == nil {
		f, named, err := temporary()
		if err != nil {
			s.stays = true
			return
		}
		s.file, s.named = f, named
	}
	s.block = s.block[:0]
	for i := range s.recent[:sightingsAtHand] {
		s.block = s.recent[i].append(s.block)
	}
	if _, err := s.file.WriteAt(s.block, int64(s.gone)*sightingBytes); err != nil {
		s.stays = true // as on a full disk
		return
	}
	s.gone += sightingsAtHand
	s.recent = append(s.recent[:0], s.recent[sightingsAtHand:]...)
}

func (s *sightings) read(n int32, into *sighting) error {
	var b [sightingBytes]byte
	if _, err := s.file.ReadAt(b[:], int64(n)*sightingBytes); err != nil {
		return fmt.Errorf("a temporary file could not be read back: %w", err)
	}
	into.from(b[:])
	return nil
}

// close gives the file up.
func (s *sightings) close() {
	if s.file != nil {
		s.file.Close()
		if s.named {
			os.Remove(s.file.Name())
		}
	}
	*s = sightings{}
}

func (s *sighting) append(b []byte) []byte {
	b = append(b, s.content[:]...)
	for _, v := range [...]uint64{s.recorder, s.initials, s.short, s.method, s.manner, s.remarks} {
		b = binary.LittleEndian.AppendUint64(b, v)
	}
	for _, v := range [...]uint32{math.Float32bits(s.lat), math.Float32bits(s.lon), uint32(s.count), s.quantity, uint32(s.sheet), uint32(s.row), uint32(s.before)} {
		b = binary.LittleEndian.AppendUint32(b, v)
	}
	return b
}

func (s *sighting) from(b []byte) {
	b = b[copy(s.content[:], b):]
	for _, v := range [...]*uint64{&s.recorder, &s.initials, &s.short, &s.method, &s.manner, &s.remarks} {
		*v = binary.LittleEndian.Uint64(b)
		b = b[8:]
	}
	next := func() uint32 {
		v := binary.LittleEndian.Uint32(b)
		b = b[4:]
		return v
	}
	s.lat, s.lon = math.Float32frombits(next()), math.Float32frombits(next())
	s.count, s.quantity, s.sheet, s.row, s.before = int32(next()), next(), int32(next()), int32(next()), int32(next())
}

func sightingOf(e *Entry) sighting {
	s := sighting{content: e.Content, count: -1, sheet: int32(e.Sheet), row: int32(e.Row)}
	if e.RecordedBy != "" {
		s.recorder = newHash.folded(e.RecordedBy).sum()
		s.initials = newHash.folded(initials(e.RecordedBy)).sum()
		s.short = newHash.folded(short(e.RecordedBy)).sum()
	}
	if e.SamplingProtocol != "" {
		s.method = newHash.folded(e.SamplingProtocol).sum()
	}
	if e.EventTime != "" || e.FieldNumber != "" || e.Habitat != "" {
		s.manner = newHash.text(e.EventTime).text(e.FieldNumber).folded(e.Habitat).sum()
	}
	s.remarks = newHash.text(e.OccurrenceRemarks).text(e.FieldNotes).sum()
	if e.Facts.Placed {
		s.lat, s.lon = float32(e.Facts.Latitude), float32(e.Facts.Longitude)
	}
	if e.Facts.Counted {
		s.count = e.Facts.Count
	}
	s.quantity = uint32(newHash.folded(e.OrganismQuantity).sum())
	return s
}
