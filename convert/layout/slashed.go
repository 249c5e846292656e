package layout

import (
	"regexp"
	"strings"
)

// slashedMarks are the sexes and stages that a heading parts by strokes:
// "M/F/Imm". It is nil where a part is none of them, or there is only one.
func slashedMarks(heading string) []sense {
	if heading = insideOrWhole(heading); strings.Count(heading, "/") == 0 {
		return nil
	}
	var marks []sense
	for part := range strings.SplitSeq(heading, "/") {
		found := false
		for _, s := range vocabulary[normHeading(part)] {
			if s.meaning == Count && (s.sex != "" || s.stage != "") {
				marks, found = append(marks, s), true
				break
			}
		}
		if !found {
			return nil
		}
	}
	return marks
}

// insideOrWhole is what stands in the brackets of a heading, if anything does:
// "M/F" of "Count (M/F)".
func insideOrWhole(heading string) string {
	if in := insideBrackets(heading); in != "" {
		return in
	}
	return heading
}

// figuresBetweenStrokes: 3/1/0, with a dash or nothing for none.
var figuresBetweenStrokes = regexp.MustCompile(`^(?:[0-9]{1,4}|-|–)?(?: ?/ ?(?:[0-9]{1,4}|-|–)?){1,4}$`)

// slashedCounts takes a column headed by several sexes or stages apart: a count
// of each in every cell.
func (b *block) slashedCounts() {
	if b.axis != nil {
		return
	}
	for i := range b.cols {
		c := &b.cols[i]
		marks := slashedMarks(c.heading)
		if marks == nil || c.master != i || c.fixed && c.meaning != Count || c.stats.n == 0 {
			continue
		}
		fit := c.stats.shareWhere(func(t string) bool {
			return figuresBetweenStrokes.MatchString(t) && strings.Count(t, "/") == len(marks)-1
		})
		if fit < 0.8 {
			continue
		}
		c.sense, c.left, c.split, c.marks = sense{meaning: Count}, "", splitMarks, marks
		if c.fixed {
			continue
		}
		c.why, c.weight = "the heading “"+c.heading+"”, a count of each in every cell", weightExact
	}
}

// splitMarked makes a count of each part of "3/1/0" from the value just added.
func (d *Draft) splitMarked(marks []sense) {
	at := len(d.Values) - 1
	whole := d.Values[at]
	parts := strings.Split(whole.Text, "/")
	if len(parts) != len(marks) || !figuresBetweenStrokes.MatchString(whole.Text) {
		return
	}
	if whole.Verbatim == "" {
		whole.Verbatim = whole.Text
	}
	d.Values = d.Values[:at]
	for i, part := range parts {
		if part = trim(part); part == "" || part == "-" || part == "–" {
			continue
		}
		v := whole
		v.Text, v.Sex, v.Stage = part, marks[i].sex, marks[i].stage
		d.Values = append(d.Values, v)
	}
	if len(d.Values) == at {
		d.Values = append(d.Values, whole)
	}
}
