package convert

import (
	"strings"

	"fieldfare/convert/layout"
	"fieldfare/convert/privacy"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
)

// A text that stands beside a private record may be carried down to rows that
// are not private, where it would tell what the blurring hides. Rows are read
// by several workers, so each notes what it carried, and whether that is told
// is settled where the rows come together in their order.

// carriedText is a text that a record has from a row above.
type carriedText struct {
	row  int // of the batch
	from int // number of the row above
	text string
}

// carriedMeanings are those of texts that may be carried down.
var carriedMeanings = map[layout.Meaning]bool{
	layout.Method: true, layout.Effort: true, layout.Habitat: true, layout.Weather: true, layout.Remarks: true,
}

// plainWords are words of methods and weather that tell no place.
var plainWords = func() map[string]bool {
	words := map[string]bool{}
	for _, w := range strings.Fields("a about actinic all and at attraction autumn beating black blue bright bulb by c ca calm catching clear cloud cloudy cold cool day dry dull dusk " +
		"dusking evening field fine fluorescent fog frost full garden h heath hour hours hr hrs lamp led light lighting lights mercury mild min mins minutes mist moon mth mv net netting " +
		"new night nights no none of one on over overcast overnight pheromone rain robinson rothamsted search searching sheet showers skinner spot strong sugar sugaring sun sunny " +
		"sweep sweeping three torch torching transect trap trapping traps tube two uv vapour visual w walk warm watt watts wet wind windy with") {
		words[w] = true
	}
	return words
}()

// tellsNoPlace tells whether a text consists of such words and numbers.
func tellsNoPlace(text string) bool {
	for w := range strings.FieldsFuncSeq(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(" ,;:.()+-–/&%°0123456789", r) }) {
		if !plainWords[w] {
			return false
		}
	}
	return true
}

// note takes in what the i-th row of the batch carried from above, and
// whether it is private itself.
func (b *batch) note(i int, row *spool.Row) {
	private, exact := false, false
	for k := range row.Records {
		private = private || row.Records[k].Facts.Blur > 0
		exact = exact || row.Records[k].Facts.Blur == 0
	}
	for d := range b.rows[i].drafts {
		values := b.rows[i].drafts[d].Values
		for k := range values {
			v := &values[k]
			above := v.From == layout.FromAbove
			if above && !exact || !above && !private || !carriedMeanings[v.Meaning] || tellsNoPlace(v.Text) {
				continue
			}
			if !above {
				b.private = append(b.private, row.Number)
			} else {
				b.carried = append(b.carried, carriedText{row: i, from: v.Ref.Row, text: v.Text})
			}
		}
	}
}

// withoutPrivate takes out of the batch's rows what was carried down from
// private ones.
func (b *batch) withoutPrivate(parts *spool.Parts) error {
	for _, n := range b.private {
		if b.sheet.private == nil {
			b.sheet.private = map[int]bool{}
		}
		b.sheet.private[n] = true
	}
	texts := map[int][]string{}
	for _, c := range b.carried {
		if b.sheet.private[c.from] {
			texts[c.row] = append(texts[c.row], c.text)
		}
	}
	if len(texts) == 0 {
		return nil
	}
	var encoded, one []byte
	var row spool.Row
	start := 0
	for i, end := range b.ends {
		part := b.encoded[start:end]
		start = end
		if len(texts[i]) > 0 {
			if err := spool.Decode(part, &row, parts); err != nil {
				return err
			}
			for k := range row.Records {
				withhold(&row.Records[k], texts[i])
			}
			one = spool.Encode(one[:0], &row)
			part = one
		}
		encoded = append(encoded, part...)
		b.ends[i] = len(encoded)
	}
	b.encoded = encoded
	return nil
}

// withhold empties the terms that hold one of the texts.
func withhold(r *spool.Record, texts []string) {
	o := &r.Occurrence
	if r.Facts.Blur > 0 {
		return // what leaves of it is settled already
	}
	withheld := false
	for i := range dwc.Terms() {
		field := o.Field(i)
		for _, text := range texts {
			if *field != "" && strings.Contains(*field, text) {
				*field = ""
				withheld = true
			}
		}
	}
	if withheld {
		o.InformationWithheld = joinRemarks(o.InformationWithheld, privacy.CarriedWithheld)
	}
}
