package validate

import (
	"fmt"
	"math/bits"
)

// seasonDays is how far a date may lie outside the flight months: seasons
// shift by days from year to year (common practice, no source).
const seasonDays = 7

// checkSeason asks about an adult outside the flight months of the list, and
// says by how far. A date that is an interval is asked about only where all of
// it lies outside.
func checkSeason(s *subject) {
	f := s.f
	flight := f.Taxon.Flight
	if flight == 0 || flight&0xfff == 0xfff || !f.Dated || s.o.OccurrenceStatus == "absent" {
		return
	}
	if stage := s.o.LifeStage; stage != "" && stage != "adult" {
		return
	}
	days, side := outside(flight, f)
	if days == 0 {
		return
	}
	month := monthOf(f.Start)
	s.query(aboutRecord, written(s.o.ScientificName, monthNames[month-1]), "out-of-season", fmt.Sprintf(
		"%s is on the wing in %s by the list; this date is %d days %s. Check the date and the name, or say that it was seen out of season.",
		s.name(), months(flight), days, side))
}

// outside says by how many days, and on which side, a date lies outside the
// months; 0 where it does not, but for the days of grace.
func outside(months uint16, f *Facts) (days int32, side string) {
	if f.End-f.Start > 300 || touches(months, f.Start, f.End, seasonDays) {
		return 0, ""
	}
	early, late := gapBefore(months, f.End), gapAfter(months, f.Start)
	if late < early {
		return late, "after its last month"
	}
	return early, "before its first month"
}

// checkStageSeason asks about an egg, a larva or a pupa outside the months of
// the list.
func checkStageSeason(s *subject) {
	t := &s.f.Taxon
	var stage uint16
	switch s.o.LifeStage {
	case "egg":
		stage = t.Eggs
	case "larva", "caterpillar", "nymph":
		stage = t.Larvae
	case "pupa":
		stage = t.Pupae
	}
	if stage == 0 || !s.f.Dated || s.o.OccurrenceStatus == "absent" {
		return
	}
	days, side := outside(stage, s.f)
	if days == 0 {
		return
	}
	month := monthNames[monthOf(s.f.Start)-1]
	s.query(aboutRecord, written(s.o.ScientificName, s.o.LifeStage, month), "stage-out-of-season", fmt.Sprintf(
		"By the list, the %s of %s is found in %s; this date is %d days %s. Check the stage, the date and the name.",
		s.o.LifeStage, s.name(), months(stage), days, side))
}

// checkYoungSeason asks about an egg in the two months before a flight that
// begins in June or later: lists give flight months only, and before them no
// egg is laid. Earlier flights are left alone, for their eggs may have wintered.
func checkYoungSeason(s *subject) {
	f := s.f
	if s.o.LifeStage != "egg" || f.Taxon.Eggs != 0 || f.Taxon.Flight == 0 || !f.Dated || f.End-f.Start > 31 {
		return
	}
	first := firstMonth(f.Taxon.Flight)
	month := monthOf(f.Start)
	if first < 6 || month >= first || month < first-2 {
		return
	}
	s.query(aboutRecord, written(s.o.ScientificName, "egg", monthNames[month-1]), "stage-before-flight", fmt.Sprintf(
		"An egg of %s in %s: the adults fly in %s by the list, and lay no eggs before. Check the stage, the date and the name.",
		s.name(), monthNames[month-1], months(f.Taxon.Flight)))
}

// touches tells whether any day from start to end, widened by so many days,
// lies in a flight month.
func touches(flight uint16, start, end int32, widen int32) bool {
	for day := start - widen; ; day = nextMonth(day) {
		if day > end+widen {
			return false
		}
		if flight>>(monthOf(day)-1)&1 == 1 {
			return true
		}
	}
}

// gapBefore is how many days lie from a day to the next flight month.
func gapBefore(flight uint16, day int32) int32 {
	for d := day; d-day < 400; d = nextMonth(d) {
		if flight>>(monthOf(d)-1)&1 == 1 {
			return d - day
		}
	}
	return 400
}

// gapAfter is how many days lie from the last flight month to a day.
func gapAfter(flight uint16, day int32) int32 {
	for d := day; day-d < 400; {
		_, _, ofMonth := date(d)
		d -= int32(ofMonth) // the last day of the month before
		if flight>>(monthOf(d)-1)&1 == 1 {
			return day - d
		}
	}
	return 400
}

// firstMonth is where the flight begins: the first flight month that follows
// one without flight.
func firstMonth(flight uint16) int {
	for m := 1; m <= 12; m++ {
		if flight>>(m-1)&1 == 1 && flight>>((m+10)%12)&1 == 0 {
			return m
		}
	}
	return 1
}

// months writes flight months: "June to August and October".
func months(flight uint16) string {
	text := ""
	n := bits.OnesCount16(flight & 0xfff)
	for m, seen := firstMonth(flight), 0; seen < n; {
		if flight>>(m-1)&1 == 0 {
			m = m%12 + 1
			continue
		}
		last := m
		for seen++; flight>>(last%12)&1 == 1 && seen < n; seen++ {
			last = last%12 + 1
		}
		if text != "" {
			text += " and "
		}
		text += monthNames[m-1]
		if last != m {
			text += " to " + monthNames[last-1]
		}
		m = last%12 + 1
	}
	return text
}
