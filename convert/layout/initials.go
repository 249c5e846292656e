package layout

import (
	"regexp"
	"strings"
)

// A page may say whose initials it uses: "IC = Ines Calloway; TA = Tom
// Achterberg", "Ines Calloway (IC)", or the two in neighbouring cells.
var (
	initialsFirst = regexp.MustCompile(`\b([A-Z]{2,4})\s*(?:=|:|–|-)\s*(\p{Lu}[\p{L}'’-]+(?: \p{Lu}\.?)*(?: (?:de|van|von|der|la))*(?: \p{Lu}[\p{L}'’-]+)+)\s*[;,.]?`)
	nameFirst     = regexp.MustCompile(`(\p{Lu}[\p{L}'’-]+(?: \p{Lu}\.?)*(?: (?:de|van|von|der|la))*(?: \p{Lu}[\p{L}'’-]+)+)\s*(?:\(([A-Z]{2,4})\)|=\s*([A-Z]{2,4})\b)\s*[;,.]?`)
)

// spells reports whether initials are those of a name.
func spells(initials, name string) bool {
	letters := ""
	for w := range strings.FieldsSeq(strings.ReplaceAll(name, "-", " ")) {
		if w[0] >= 'A' && w[0] <= 'Z' {
			letters += w[:1]
		}
	}
	return letters == initials || len(letters) > 2 && len(initials) == 2 && letters[:1]+letters[len(letters)-1:] == initials
}

// keyOfInitials takes what a text says of initials into the map, and returns
// the text without it.
func keyOfInitials(text string, names map[string]string) string {
	if len(text) > 2000 || !strings.ContainsAny(text, "=:(-–") {
		return text
	}
	take := func(pattern *regexp.Regexp, initials, name func(m []string) string) {
		text = pattern.ReplaceAllStringFunc(text, func(found string) string {
			m := pattern.FindStringSubmatch(found)
			i, n := initials(m), name(m)
			if !spells(i, n) || looksPlace(n) {
				return found
			}
			if names != nil {
				names[i] = n
			}
			return " "
		})
	}
	take(initialsFirst, func(m []string) string { return m[1] }, func(m []string) string { return m[2] })
	if names == nil {
		return text // a name before its initials may be more than their key
	}
	take(nameFirst, func(m []string) string { return m[2] + m[3] }, func(m []string) string { return m[1] })
	return text
}

// withoutKey is a text without what it says of initials; behind “Recorders:”
// the names stay.
func withoutKey(text string) string {
	rest := keyOfInitials(text, nil)
	if rest == text {
		return text
	}
	if label, _, ok := strings.Cut(text, ":"); ok {
		if s, ok := labelOf(label); ok && s.meaning == Recorder {
			var names []string
			for _, m := range initialsFirst.FindAllStringSubmatch(text, -1) {
				names = append(names, m[2])
			}
			return label + ": " + strings.Join(names, "; ")
		}
	}
	return trim(strings.Trim(rest, " ;,."))
}

// findInitials gathers what the page says of initials.
func (p *page) findInitials() {
	p.initials = map[string]string{}
	for i := range p.rows {
		r := &p.rows[i]
		for c := range r.looks {
			if r.looks[c] == 0 || !r.looks[c].is(lookWords|lookLong|lookPerson|lookText) {
				continue
			}
			text := r.text(c)
			if strings.ContainsAny(text, "=:(") {
				keyOfInitials(text, p.initials)
			} else if next := r.text(c + 1); r.n <= 3 && isInitials(text) && next != "" && spells(text, next) && strings.Contains(next, " ") && !looksPlace(next) && !strings.ContainsAny(next, "0123456789") {
				p.initials[text] = next
			}
		}
	}
}

// writeOut puts the names in place of initials that the page explains.
func (p *page) writeOut(d *Draft) {
	for i := range d.Values {
		v := &d.Values[i]
		if v.Meaning != Recorder && v.Meaning != Determiner && v.Meaning != Verifier {
			continue
		}
		var out strings.Builder
		changed := false
		rest := v.Text
		for rest != "" {
			n := strings.IndexFunc(rest, func(r rune) bool { return r < 'A' || r > 'Z' })
			switch {
			case n == 0:
				end := strings.IndexAny(rest, " ,;/&+")
				if end != 0 {
					return // more than initials
				}
				out.WriteByte(rest[0])
				rest = rest[1:]
				continue
			case n < 0:
				n = len(rest)
			}
			name, ok := p.initials[rest[:n]]
			if !ok {
				return
			}
			out.WriteString(name)
			changed = true
			rest = rest[n:]
		}
		if changed {
			if v.Verbatim == "" {
				v.Verbatim = v.Text
			}
			v.Text = out.String()
		}
	}
}
