package tally

import (
	"fmt"
	"strings"

	"fieldfare/convert/reading"
)

// heading is what a column's heading says of whatever is counted below it.
type heading struct {
	sex, stage, caste string
	// sign is what is counted where that is no animal ("mines").
	sign string
}

// plural has the signs that a heading may name in the singular.
var plural = map[string]string{"mine": "mines", "leaf mine": "leaf mines", "case": "cases", "larval case": "larval cases", "exuvia": "exuviae",
	"web": "webs", "spinning": "spinnings", "cocoon": "cocoons", "egg batch": "egg batches", "gall": "galls"}

// headingOf reads the sex and the stage of a column.
func headingOf(sexText, stageText string) heading {
	var h heading
	switch sexText { // what it usually is
	case "":
	case "male", "female":
		h.sex = sexText
	default:
		h.add(sexText)
	}
	switch stageText {
	case "":
	case "adult", "larva", "pupa", "egg", "nymph", "juvenile":
		h.stage = stageText
	default:
		h.add(stageText)
	}
	return h
}

// add reads the words of a heading. One that names several sexes or stages
// ("m/f") says nothing.
func (h *heading) add(text string) {
	list, ok := lex(tidy(text))
	if !ok {
		return
	}
	var own heading
	for i, t := range list {
		switch t.kind {
		case sex:
			if own.sex != "" && own.sex != t.text {
				return
			}
			own.sex = t.text
		case stage:
			if t.short && len(list) > 1 && i == 0 {
				return // "N. of ..."
			}
			if own.stage != "" && own.stage != t.text {
				return
			}
			own.stage = t.text
		case caste:
			own.caste, own.sex = t.text, casteSex(t.text)
		case sign:
			own.stage = t.meaning.stage
			own.sign = strings.ToLower(tidy(text)[t.start:t.end])
			if p, ok := plural[own.sign]; ok {
				own.sign = p
			}
		}
	}
	if own.sex != "" {
		h.sex = own.sex
	}
	if own.stage != "" {
		h.stage = own.stage
	}
	h.caste, h.sign = own.caste+h.caste, own.sign+h.sign
}

// casteSex is what a caste's name says of the sex.
func casteSex(c string) string {
	switch c {
	case "queen", "gyne":
		return "female"
	case "drone":
		return "male"
	}
	return ""
}

// headed gives the parts what the column's heading says. Where the cell says
// something else, the cell is believed and asked about.
func headed(parts []Part, text string, o Options) reading.Verdict {
	var v reading.Verdict
	if o.Sex == "" && o.Stage == "" {
		return v
	}
	h := headingOf(o.Sex, o.Stage)
	for i := range parts {
		p := &parts[i]
		for _, f := range [...]struct {
			field *string
			says  string
		}{{&p.Sex, h.sex}, {&p.LifeStage, h.stage}, {&p.Caste, h.caste}} {
			switch *f.field {
			case "", f.says:
				*f.field = f.says
			default:
				if f.says != "" {
					v = v.And(reading.QueryOf("heading-disagrees", fmt.Sprintf("The column's heading says %s, but the cell says “%s”. The cell was believed; please check.", f.says, text)))
				}
			}
		}
		if h.sign != "" && !p.Absent && v.State == reading.Fair {
			p.count(h.sign)
		}
	}
	return v
}

// count makes a number of individuals a number of signs.
func (p *Part) count(sign string) {
	switch {
	case p.IndividualCount != "":
		p.OrganismQuantity, p.OrganismQuantityType, p.IndividualCount = p.IndividualCount, sign, ""
	case p.OrganismQuantityType == IndividualsType:
		p.OrganismQuantityType = sign
	case p.OrganismQuantity == "":
		p.Remarks = appendRemark(p.Remarks, sign)
	}
}
