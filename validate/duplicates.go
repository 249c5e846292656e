package validate

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"fieldfare/convert/reading"
)

// duplicates finds observations that stand there more than once: the same
// taxon, stage and sex on the same date at the same place.
type duplicates struct {
	keys      hashes // of the records
	pastKeys  hashes // of the earlier submission
	pastBoth  hashes // the same with their ids
	repeated  sorted
	before    sorted
	beforeIDs sorted
	seen      sightings
	failed    error // of reading one back
}

func withID(key uint64, id string) uint64 {
	return hash(key).text(id).sum()
}

func (d *duplicates) addPast(key uint64, id string) {
	d.pastKeys.add(key)
	d.pastBoth.add(withID(key, id))
}

func (d *duplicates) settle() error {
	var errs [3]error
	d.repeated, errs[0] = d.keys.repeated()
	d.seen.groups = make([]group, len(d.repeated))
	d.before, errs[1] = d.pastKeys.distinct()
	d.beforeIDs, errs[2] = d.pastBoth.distinct()
	return errors.Join(errs[:]...)
}

// concerns tells whether find may compare the record with another.
func (d *duplicates) concerns(k *keys, e *Entry) bool {
	if len(d.repeated) == 0 && len(d.before) == 0 {
		return false
	}
	key := k.same(e.Occurrence, e.Facts)
	return d.repeated.has(key) || d.before.has(key)
}

// find compares a record with those before it. One without a place waits for
// that first: by then it may be another observation than it seems.
func (d *duplicates) find(k *keys, e *Entry, where func(sheet, row int) string) (reading.Finding, bool) {
	if siteOf(e.Occurrence, e.Facts) == noPlace {
		return reading.Finding{}, false
	}
	key := k.same(e.Occurrence, e.Facts)
	if at, shared := d.repeated.find(key); shared {
		this := sightingOf(e)
		var before [mostInGroup]sighting
		known, err := d.seen.of(at, &before)
		if err != nil && d.failed == nil {
			d.failed = err
		}
		for i := range known {
			if f, same := compare(e, &known[i], &this, where); same {
				return f, true
			}
		}
		if len(known) < mostInGroup {
			d.seen.add(at, &this)
		}
	}
	if d.before.has(key) && !d.beforeIDs.has(withID(key, e.ID)) {
		return queryOf(aboutRecord, subjectOf(e), "handed-in-before", fmt.Sprintf(
			"An observation of %s at %s on this date was handed in before, but worded otherwise: another count, remark or spelling. If this corrects it, answer keep; if it is the same observation again, leave the row out.", nameOf(e.Occurrence), siteOf(e.Occurrence, e.Facts))), true
	}
	return reading.Finding{}, false
}

// subjectOf names the observation: what, where and when.
func subjectOf(e *Entry) string {
	return written(nameOf(e.Occurrence), siteOf(e.Occurrence, e.Facts), dayOf(e), e.Sex, stageUnlessAdult(e.LifeStage))
}

func stageUnlessAdult(stage string) string {
	if stage == "adult" {
		return ""
	}
	return stage
}

func dayOf(e *Entry) string {
	if e.Facts.Dated {
		return iso(e.Facts.Start)
	}
	return e.VerbatimEventDate
}

// initials are the first letters of names, or what is written as initials.
func initials(names string) string {
	var b strings.Builder
	for name := range strings.SplitSeq(names, " | ") {
		if len(name) <= 3 && strings.ToUpper(name) == name {
			b.WriteString(name)
			continue
		}
		for word := range strings.FieldsSeq(strings.ReplaceAll(name, ".", " ")) {
			b.WriteByte(word[0])
		}
	}
	return b.String()
}

// short has, of each name, the first letter and the surname: "Ines Calloway",
// "I. Calloway" and "I. M. Calloway" may be one person.
func short(names string) string {
	var b strings.Builder
	for name := range strings.SplitSeq(names, " | ") {
		words := strings.Fields(strings.ReplaceAll(name, ".", " "))
		if len(words) > 1 {
			_, size := utf8.DecodeRuneInString(words[0])
			b.WriteString(words[0][:size])
			words = words[len(words)-1:]
		}
		b.WriteString(strings.Join(words, ""))
	}
	return b.String()
}

// samePeople tells whether two records may be of the same people: the same
// names, initials of them, or nobody named in one.
func (s *sighting) samePeople(t *sighting) bool {
	if s.recorder == 0 || t.recorder == 0 || s.recorder == t.recorder || s.short == t.short {
		return true
	}
	return s.initials == t.initials && (s.recorder == s.initials || t.recorder == t.initials)
}

// apart is how far two places are from each other, in degrees of latitude,
// roughly; 0 where one has none.
func (s *sighting) apart(t *sighting) float64 {
	if s.lat == 0 && s.lon == 0 || t.lat == 0 && t.lon == 0 {
		return 0
	}
	return math.Hypot(float64(s.lat-t.lat), float64(s.lon-t.lon)*math.Cos(float64(s.lat)*math.Pi/180))
}

// compare decides whether a record is another one of the group again.
func compare(e *Entry, old, this *sighting, where func(sheet, row int) string) (reading.Finding, bool) {
	if old.sheet == this.sheet && old.row == this.row {
		return reading.Finding{}, false // parts of one row differ on purpose
	}
	at := where(int(old.sheet), int(old.row))
	if old.content == this.content {
		return queryOf(aboutRecord, subjectOf(e), "duplicate",
			fmt.Sprintf("The same observation is written twice, letter for letter: here and at %s. If it is one observation, leave one row out.", at)), true
	}
	sameCount := old.count == this.count && old.quantity == this.quantity
	if old.method != this.method && old.method != 0 && this.method != 0 {
		return reading.Finding{}, false // two traps at one site
	}
	sameManner := old.manner == this.manner || old.manner == 0 || this.manner == 0
	const near = 0.003 // some 300 m
	if old.sheet != this.sheet {
		switch {
		case !old.samePeople(this) && !sameCount:
			return reading.Finding{}, false
		case !sameCount && (!sameManner || old.apart(this) > near):
			return reading.Finding{}, false
		}
		return queryOf(aboutRecord, subjectOf(e), "two-notebooks", fmt.Sprintf(
			"The same observation stands at %s too%s. If it is one observation, leave one of the rows out.", at, difference(old, this))), true
	}
	if !old.samePeople(this) || !sameManner || old.apart(this) > near {
		return reading.Finding{}, false
	}
	return queryOf(aboutRecord, subjectOf(e), "near-duplicate", fmt.Sprintf(
		"%s is recorded twice on one date at %s, here and at %s%s. If it is one observation, leave one row out; if there were two, answer keep.",
		nameOf(e.Occurrence), siteOf(e.Occurrence, e.Facts), at, difference(old, this))), true
}

func difference(old, this *sighting) string {
	switch {
	case old.count != this.count && old.count >= 0 && this.count >= 0:
		return fmt.Sprintf(", with a count of %d there and %d here", old.count, this.count)
	case old.count != this.count || old.quantity != this.quantity:
		return ", with another count"
	case old.remarks != this.remarks:
		return ", with another remark"
	}
	return ", worded otherwise"
}
