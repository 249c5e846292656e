package tally

import (
	"fmt"
	"strings"

	"fieldfare/convert/reading"
)

// ReadSex reads a cell of a column for sex: "m", "♂", "Female". A cell that
// gives counts of each ("2 m, 1 f") gives several parts; one that says that
// nothing is known is fair and gives none. What is not understood is a query
// and goes into the remarks, for the record is good without it.
func ReadSex(text string) Reading { return readLabel(text, sex) }

// ReadStage reads a cell of a column for life stage: "imago", "L", "larvae".
// It answers as ReadSex does.
func ReadStage(text string) Reading { return readLabel(text, stage) }

func readLabel(text string, k kind) Reading {
	s := tidy(text)
	what := "sex"
	if k == stage {
		what = "life stage"
	}
	switch strings.ToLower(strings.TrimRight(s, ".")) {
	case "", "-", "–", "—", "n/a", "na", "none", "unknown", "?", "unk", "not known", "not recorded", "u", "unsexed", "indet", "undetermined", "nk", "n/k", "not sexed", "not stated", "not noted":
		return Reading{Verdict: reading.Verdict{Message: "No " + what + " is given."}}
	case "both", "mixed", "m/f", "f/m", "♂/♀", "mf", "m or f", "male/female", "various", "both sexes", "several":
		return Reading{reading.QueryOf("shared-label", fmt.Sprintf("“%s” gives more than one %s without saying how many of each. It is kept as a remark.", s, what)), []Part{{Remarks: s}}}
	}
	if p, ok := loneLabel(s, k); ok {
		return Reading{Parts: []Part{p}}
	}
	list, ok := []token(nil), false
	if len(s) <= longest {
		list, ok = lex(s)
	}
	if ok {
		if items, ok := parse(s, list); ok {
			if parts, v, ok := resolve(nil, s, items); ok && allLabelled(parts, k) {
				if v.State == reading.Query {
					v.Message = quoting(s, v.Message)
				}
				return Reading{v, parts}
			}
		}
	}
	return Reading{reading.QueryOf("label-not-understood", fmt.Sprintf("“%s” is not understood as a %s, and is kept as a remark. Please write it in words.", s, what)),
		[]Part{{Remarks: what + ": " + s}}}
}

// stageLetters are plain only in a column of their own.
var stageLetters = map[byte]string{'a': "adult", 'i': "adult", 'l': "larva", 'p': "pupa", 'e': "egg", 'o': "egg", 'n': "nymph", 'j': "juvenile"}

// loneLabel reads the letters that are plain in a column of their own.
func loneLabel(s string, k kind) (Part, bool) {
	key := strings.ToLower(strings.TrimRight(s, "."))
	if k == sex {
		switch key {
		case "m":
			return Part{Sex: "male"}, true
		case "f":
			return Part{Sex: "female"}, true
		}
		return Part{}, false
	}
	if len(key) == 1 {
		if value, ok := stageLetters[key[0]]; ok {
			return Part{LifeStage: value}, true
		}
	}
	if m, ok := dictionary[key]; ok && m.kind == stage && !m.keep {
		return Part{LifeStage: m.text}, true
	}
	return Part{}, false
}

func allLabelled(parts []Part, k kind) bool {
	for _, p := range parts {
		if k == sex && p.Sex == "" && p.Caste == "" || k == stage && p.LifeStage == "" && p.Caste == "" {
			return false
		}
	}
	return len(parts) > 0
}
