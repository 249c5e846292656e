package gridref

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

const monthName = `(?:JAN(?:UARY)?|FEB(?:RUARY)?|MAR(?:CH)?|APR(?:IL)?|MAY|JUNE?|JULY?|AUG(?:UST)?|SEPT?(?:EMBER)?|OCT(?:OBER)?|NOV(?:EMBER)?|DEC(?:EMBER)?)\b\.?`

var (
	strayDate = regexp.MustCompile(`[ ,;:(]+(?:` +
		`\d{4}-\d{1,2}-\d{1,2}(?:[ T]\d\d:\d\d(?::\d\d)?)?|` +
		`(?:[0-3]?\d)([./-])(?:[01]?\d)([./-])(?:\d{4}|\d\d)(?: \d\d:\d\d(?::\d\d)?)?|` +
		`(?:[0-3]?\d(?:ST|ND|RD|TH)?[ -])?` + monthName + `(?:[ -]?'?(?:\d{4}|\d\d))?` +
		`)\)?$`)
	embedded = regexp.MustCompile(`(?:^|[^A-Z0-9])((?:[HJNOST][A-HJ-Z]|W[AV]|[A-HJ-Z])[ .:-]?(?:` +
		`\d{5}[ .,/-]?\d{5}|\d{4}[ .,/-]?\d{4}|\d{3}[ .,/-]?\d{3}|\d{2}[ .,/-]?\d{2}(?:NE|NW|SE|SW)?|\d{2} ?(?:NE|NW|SE|SW)|\d{2}[A-NP-Z]?))`)
	afterEmbedded = regexp.MustCompile(`^(?:[^A-Z0-9]|$)`)
)

// parseBeside finds references among other writing: a stray date, a site's
// name, a second reference.
func parseBeside(w written) (Reading, error, bool) {
	var refs []Square
	var names []string
	for rest := w.text; ; {
		at := embedded.FindStringSubmatchIndex(rest)
		if at == nil {
			break
		}
		found := rest[at[2]:at[3]]
		rest = rest[at[3]:]
		if !afterEmbedded.MatchString(rest) {
			continue
		}
		r, err := Parse(found)
		if err != nil || r.Doubt.Code != "" || r.Geographic() {
			continue
		}
		if r.Square.Grid == Irish && r.Square.Size > 2000 {
			// A plot, a road and a map sheet are written like that too.
			continue
		}
		refs, names = append(refs, r.Square), append(names, r.Square.String())
	}
	if len(refs) == 0 {
		return Reading{}, nil, false
	}
	finest := refs[0]
	for _, s := range refs[1:] {
		if s.Size < finest.Size {
			finest = s
		}
	}
	for _, s := range refs {
		if around, err := finest.Coarsen(s.Size); err != nil || around != s {
			r, err := fault(TwoReferences, fmt.Sprintf("%s holds more than one reference: %s. Please give the one that belongs to this record.",
				w.quoted, strings.Join(names, ", ")), names...)
			return r, err, true
		}
	}
	r := Reading{Square: finest}
	if len(refs) > 1 && len(slices.Compact(refs)) == 1 {
		r.Note = fmt.Sprintf("%s holds the same reference several times; it was read once, as %s.", w.quoted, finest)
		return r, nil, true
	}
	if len(refs) > 1 {
		return query(r, TwoReferences, fmt.Sprintf("%s holds more than one reference, one within the other. It was read as the smallest, %s; "+
			"please confirm it.", w.quoted, finest)), nil, true
	}
	return query(r, OtherWords, fmt.Sprintf("%s holds other words beside the reference. It was read as %s; please confirm it.", w.quoted, finest)), nil, true
}

// parseDated reads a reference that a date has strayed behind.
func parseDated(w written) (Reading, error, bool) {
	at := strayDate.FindStringIndex(w.text)
	if at == nil || at[0] < 4 {
		return Reading{}, nil, false
	}
	r, err := Parse(w.text[:at[0]])
	if err != nil || r.Geographic() || r.Square.Size > 10_000 {
		return Reading{}, nil, false
	}
	return query(r, StrayDate, fmt.Sprintf("%s has a date behind the reference, as spreadsheets make of figures. It was read as %s; "+
		"please check that no figures of the reference were lost.", w.quoted, r.Square)), nil, true
}
