package validate

import (
	"fmt"
	"strings"

	"fieldfare/dwc"
)

// contradiction is something that remarks say which makes the record another
// one than it looks.
type contradiction struct {
	words  []string // any of them
	unless []string // words beside it that make it harmless
	says   string
	// told says whether the record's own terms already say so.
	told func(o *dwc.Occurrence) bool
}

func toldNever(*dwc.Occurrence) bool   { return false }
func toldDead(o *dwc.Occurrence) bool  { return o.Vitality == "dead" }
func toldDoubt(o *dwc.Occurrence) bool { return o.IdentificationQualifier != "" }
func toldOrigin(o *dwc.Occurrence) bool {
	return o.EstablishmentMeans != "" || o.BasisOfRecord == "LivingSpecimen"
}

var contradictions = []contradiction{
	{
		words:  []string{"not seen", "none seen", "not found", "none found", "not present", "no sign", "absent", "not recorded", "nothing seen", "failed to find", "could not find", "couldn't find", "did not see", "no longer here", "not there"},
		unless: []string{"since", "before", "elsewhere", "until", "seen well", "for years", "for some years", "previously", "for a while", "not seen here", "not found here", "last year", "female not", "male not", "mate not", "parent"},
		says:   "that it was not seen. Record an absence, or leave the row out",
		told:   toldNever,
	},
	{
		words:  []string{"escaped", "escapee", "escape from", "from captivity", "captive", "pet ", "aviary", "zoo ", "butterfly house", "butterfly farm"},
		unless: []string{"escaped before", "escaped the", "escaped from the net", "escaped from net", "escaped while", "escaped when", "escaped being"},
		says:   "that it had escaped or was captive. Such an animal is not a wild record; give establishmentMeans, or leave the row out",
		told:   toldOrigin,
	},
	{
		words: []string{"released"},
		unless: []string{"and released", "then released", "later released", "were released", "was released", "all released", "released unharmed", "released alive", "released after", "released at", "released later",
			"released next", "released in", "released on", "released nearby", "released back", "released following", "released this", "released away", "released well", "released into cover", "released into the", "released when", "released once", "released safely", "released into vegetation", "not released"},
		says: "that it was released. If it had been brought or bred, it is not a wild record; if it was caught here and let go, answer keep",
		told: toldOrigin,
	},
	{
		words:  []string{"bred and released", "reared and released", "bred stock", "released stock", "from stock", "introduced", "planted", "livestock", "bred", "reared", "ex larva", "ex larvae", "ex pupa", "ex pupae", "ex ova", "ex ovum", "ex egg", "emerged indoors", "emerged in captivity", "hatched indoors", "e.l.", "e.p."},
		unless: []string{"bred here", "has bred", "have bred", "may have bred", "probably bred", "possibly bred", "half-bred", "introduced by", "pure-bred", "was introduced to"},
		says:   "that it was bred. The date is then that of its emergence, not of a wild adult; record the stage that was found, with its date, or answer keep",
		told:   toldOrigin,
	},
	{
		words:  []string{"dead", "corpse", "roadkill", "road kill", "wings only", "remains"},
		unless: []string{"deadly", "dead nettle", "deadnettle", "dead-nettle", "dead wood", "deadwood", "dead lea", "dead hedge", "dead elm", "dead oak", "dead tree", "dead bra", "dead birch", "dead willow", "dead ash", "dead reed", "dead stem", "dead bramble", "dead grass", "dead of", "dead still", "dead calm", "dead bird", "dead log", "dead trunk", "dead bracken", "dead twig", "dead heather", "dead ivy", "dead flower", "dead pine", "not dead", "playing dead", "feigning dead", "feigned dead", "remains of", "remains to", "death's"},
		says:   "that it was dead. The date and place of finding may not be those of its life",
		told:   toldDead,
	},
	{
		words:  []string{"?", "possibly", "not sure", "not certain", "uncertain", "unsure", "perhaps", "maybe", "doubtful", "dubious", "tentative", "misidentif*", "wrong id", "probably", "could be", "might be", "may be", "could have been", "might have been", "may have been", "to be confirmed", "tbc", "needs confirmation", "needs confirming", "needs checking", "not confirmed", "unconfirmed", "cannot rule out", "can't rule out", "not ruled out"},
		unless: []string{"possibly a second", "possibly second", "probably second", "probably a second", "possibly migrant", "probably migrant", "possibly bred", "probably bred", "perhaps a second", "possibly the same", "probably the same", "how many more", "be seen", "be heard", "be found", "be counted", "be caught", "be watched", "be a second", "been a second", "be second", "be breeding", "be migrant", "be a migrant", "be an immigrant", "be due", "before it could", "until it could", "be potted", "be identified", "be photographed", "be measured", "be examined", "be reached", "be determined", "be released", "be retained", "be sexed", "be netted", "be caught", "be kept", "be boxed", "be approached", "be because", "be more", "been more", "be better", "be worse", "be the same", "been the same", "be from"},
		says:   "that there is a doubt. Say what is doubtful: the name, the count or the place",
		told:   toldDoubt,
	},
}

var contradicting = func() *wordIndex {
	var lists [][]string
	for i := range contradictions {
		lists = append(lists, contradictions[i].words)
	}
	return newWordIndex(lists...)
}()

// contradictionsIn are the contradictions in a text that nothing beside them
// makes harmless, as bits by their places in the list.
func contradictionsIn(text string) uint32 {
	low := strings.ToLower(text)
	kinds := contradicting.in(low)
	for i := range contradictions {
		if kinds>>i&1 == 1 && containsAny(low, contradictions[i].unless) {
			kinds &^= 1 << i
		}
	}
	return kinds
}

// checkRemarks asks about remarks that contradict the record.
func checkRemarks(s *subject) {
	if s.o.OccurrenceStatus == "absent" {
		return
	}
	for _, text := range [...]string{s.o.OccurrenceRemarks, s.o.EventRemarks} {
		if text == "" {
			continue
		}
		kinds := s.texts.contradicts.of(text, contradictionsIn)
		for i := range contradictions {
			c := &contradictions[i]
			if kinds>>i&1 == 1 && !c.told(s.o) {
				s.query(aboutRemarks, text, "remarks-contradict", fmt.Sprintf("The remark “%s” says %s.", text, c.says))
				return
			}
		}
	}
}

// dayWords tell of the day, in remarks on a light-trap record.
var dayWords = []string{"by day", "in daylight", "in the daytime", "daytime", "in sunshine", "in the sunshine", "in the sun", "midday", "mid-day", "at noon", "flying by day", "afternoon", "day-flying", "on flowers by day", "in hot sun"}

// dayHarmless are words that put the day where it does no harm.
var dayHarmless = []string{"next day", "following", "previous", "flies by day", "day before", "also by day", "also seen", "rest", "came to light", "weather", "examined", "released", "hot day", "warm day"}

var tellingOfDay = newWordIndex(dayWords)

// tellsOfDay is 0 for a text that tells nothing of the day.
func tellsOfDay(text string) uint32 {
	low := strings.ToLower(text)
	found := tellingOfDay.in(low)
	if found != 0 && containsAny(low, dayHarmless) {
		return 0
	}
	return found
}

// checkDaylight asks about a light-trap record whose remarks or date tell of
// the day. (A time by the clock is compared with the sunset while the time is
// read.)
func checkDaylight(s *subject) {
	if !s.f.Light {
		return
	}
	for _, text := range [...]string{s.o.OccurrenceRemarks, s.o.FieldNotes, s.o.VerbatimEventDate} {
		if text == "" {
			continue
		}
		if s.texts.ofDay.of(text, tellsOfDay) == 0 {
			continue
		}
		s.query(aboutRemarks, text, "light-by-day", fmt.Sprintf(
			"The method is “%s”, but “%s” tells of the day. Check the method, the date and the time.", s.o.SamplingProtocol, text))
		return
	}
}
