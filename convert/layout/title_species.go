package layout

import (
	"path/filepath"
	"regexp"
	"strings"

	"fieldfare/convert/reading"
)

// speciesOfTitle takes the species of a list that names none from the lines
// above it, the sheet's name or the file's: "Barn Owl boxes 2019". It is asked
// about.
func (b *block) speciesOfTitle(p *Plan) {
	if b.named() || b.axis != nil && (b.axis.species || b.rowYear() < 0) || b.facts.has(Taxon) || b.facts.has(Scientific) || b.facts.has(Vernacular) || b.chosen != nil && len(b.chosen.Columns) > 0 {
		return
	}
	top := b.first
	if len(b.headRows) > 0 {
		top = b.headRows[0]
	}
	name, v := p.page.speciesAbove(top)
	if name == "" {
		file := filepath.Base(p.page.file)
		for _, text := range [...]string{p.page.sheet, strings.ReplaceAll(strings.TrimSuffix(file, filepath.Ext(file)), "_", " ")} {
			if name = p.page.speciesIn(text); name != "" {
				v = Value{From: FromFile, Verbatim: text}
				if text == p.page.sheet {
					v.From = FromSheet
				}
				break
			}
		}
	}
	if name == "" {
		return
	}
	v.Meaning, v.Text = Taxon, name
	v.Doubt = reading.QueryOf("name-from-title", "No column of this page names a species. “"+name+"” was taken from “"+v.Verbatim+"”. Please check it.", name)
	v.Verbatim = ""
	b.facts.set(v)
}

// speciesAbove finds the species named in a line above a row, nearest first;
// behind a blank line and records it is not sought.
func (p *page) speciesAbove(row int) (string, Value) {
	for i := len(p.rows) - 1; i >= 0; i-- {
		r := &p.rows[i]
		if r.number >= row || r.n == 0 {
			continue
		}
		if r.n > 6 {
			break
		}
		for c := range r.looks {
			if r.looks[c] == 0 || r.looks[c].is(lookMarked|lookInt|lookRealDate) {
				continue
			}
			if name := p.speciesIn(r.text(c)); name != "" {
				return name, Value{From: FromPage, Verbatim: r.text(c), Ref: cellRef(c, r.number)}
			}
		}
	}
	return "", Value{}
}

// speciesIn finds the longest name of a species among the words of a title: a
// known one, in the plural as well, or one written like a scientific or an
// everyday name at the start of a part.
func (p *page) speciesIn(text string) string {
	if len(text) > 120 || len(labelsIn(text)) > 0 {
		return ""
	}
	words := strings.Fields(text)
	for n := min(5, len(words)); n >= 1; n-- {
		for i := 0; i+n <= len(words); i++ {
			run := strings.Trim(strings.Join(words[i:i+n], " "), ".,;:()-–")
			if run == "" || !mayName(words[i:i+n]) || titleWords[strings.ToLower(run)] || groupWords[strings.ToLower(run)] || i+n < len(words) && placeWords[strings.ToLower(strings.Trim(words[i+n], ".,;:()"))] {
				continue
			}
			for _, name := range [...]string{run, strings.TrimSuffix(run, "s"), strings.TrimSuffix(run, "es")} {
				if name != "" && p.eyes.probe.KnownTaxon(name) && capitals(name) > 0 {
					return name
				}
			}
		}
	}
	if m := namedRecords.FindStringSubmatch(text); m != nil {
		if name := trim(m[1]); strings.Count(name, " ") < 3 && !isGroupName(name) && !titleWords[strings.ToLower(name)] && !looksPlace(name) && !isNamed(p, name) {
			return name
		}
	}
	for i, part := range append(titleParts(text), text) {
		name := bareSpecies(part)
		if i > 0 && part == text && name == "" {
			break
		}
		if isBinomial(name) || strings.Contains(name, " ") && looksVernacular(name) && !looksPlace(name) && capitals(name) >= 1 && !isGroupName(name) {
			return name
		}
	}
	return ""
}

// mayName reports whether the words of a title could be a name by themselves:
// they begin with a capital, and no word of the trade, no dash and no “at” or
// “of” stands among them.
func mayName(words []string) bool {
	for i, w := range words {
		bare := strings.ToLower(strings.Trim(w, ".,;:()-–"))
		if bare == "" || titleWords[bare] || surveyWords[bare] || i+1 < len(words) && strings.ContainsAny(w[len(w)-1:], ",;:)") {
			return false
		}
	}
	return words[0][0] >= 'A' && words[0][0] <= 'Z' || words[0][0] == '(' || isDigit(words[0][0])
}

// namedRecords says of what a page holds records: "Records of the Swallowtail at
// Sallowmere".
var namedRecords = regexp.MustCompile(`^(?:Records|Sightings|Counts|Surveys?|Notes|Census) (?:of|on|for) (?:the )?(\p{Lu}[\p{L}'’ -]+?)(?: (?:at|in|from|near|on)\b|[,;(]|$)`)

// bareSpecies is what a title says before the words of the trade: "Barn Owl" of
// "Barn Owl boxes 2019".
func bareSpecies(part string) string {
	var out []string
	for w := range strings.FieldsSeq(cutYear(part)) {
		bare := strings.ToLower(strings.Trim(w, ".,;:()-–"))
		if titleWords[bare] || surveyWords[bare] || bare == "" {
			break
		}
		out = append(out, w)
	}
	name := trim(strings.Trim(strings.Join(out, " "), " ,;:-–()"))
	if name == "" || name[0] < 'A' || name[0] > 'Z' {
		return ""
	}
	return name
}

// surveyWords follow the name of a species in the title of a page about it.
var surveyWords = wordSet("pellet pellets droppings tracks signs burrows box boxes nest nests nesting search searches egg eggs roost roosts spraint spraints colony colonies pair pairs census monitoring visits visit checks check spawn breeding site sites tree trees larva larvae exuviae holt holts sett setts on at in of and")
