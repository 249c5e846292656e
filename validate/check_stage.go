package validate

import (
	"fmt"
	"strings"
)

// young tells the stages that do not fly.
func young(stage string) bool {
	switch stage {
	case "egg", "larva", "pupa", "nymph", "caterpillar":
		return true
	}
	return false
}

// checkStageAtLight asks about a young stage at light: larvae do not fly to a
// lamp.
func checkStageAtLight(s *subject) {
	if s.f.Light && young(s.o.LifeStage) {
		s.query(aboutRecord, written(s.name(), s.o.LifeStage, s.o.SamplingProtocol), "stage-at-light", fmt.Sprintf(
			"%s is recorded as %s, but the method is “%s”, which catches adults. Check the stage or the method.", s.name(), s.o.LifeStage, s.o.SamplingProtocol))
	}
}

// youngMethods are the words of methods that find eggs, larvae or pupae and
// no adults.
var youngMethods = []string{"leaf mine", "leaf-mine", "leafmine", "mine search", "mines", "mining", "larval", "larva ", "larvae", "caterpillar", "pupa ", "pupae", "pupal", "cocoon", "egg search", "eggs", "ova", "spinning", "feeding sign"}

// checkStageBySearch asks about an adult by leaf-mine and the like. A bred
// adult is another matter.
func checkStageBySearch(s *subject) {
	m := s.o.SamplingProtocol
	if m == "" || s.f.Light || s.o.LifeStage != "adult" {
		return
	}
	m = strings.ToLower(m) + " "
	if strings.Contains(m, "rear") || strings.Contains(m, "bred") || strings.Contains(m, "adult") {
		return
	}
	for _, word := range youngMethods {
		if at := strings.Index(m, word); at >= 0 && (at == 0 || !letter(m[at-1])) {
			s.query(aboutRecord, written(s.name(), s.o.LifeStage, s.o.SamplingProtocol), "adult-by-search-for-young", fmt.Sprintf(
				"%s is recorded as adult, but the method is “%s”, which finds the young stages. Check the stage or the method.", s.name(), s.o.SamplingProtocol))
			return
		}
	}
}

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// checkSexOfYoung asks about the sex of a stage that does not show it.
func checkSexOfYoung(s *subject) {
	if s.o.Sex == "" || s.o.LifeStage != "egg" && s.o.LifeStage != "larva" {
		return
	}
	s.query(aboutRecord, written(s.name(), s.o.Sex, s.o.LifeStage), "sex-of-young", fmt.Sprintf(
		"%s is recorded as %s and %s, a stage that does not show its sex. Check which is right; “m” may have stood for a mine.", s.name(), s.o.Sex, s.o.LifeStage))
}
