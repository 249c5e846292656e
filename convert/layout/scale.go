package layout

import "strings"

// scales are the letters of the scales of abundance that botanists use (ACFOR
// and DAFOR, common practice), by the words that head their column.
var scales = map[string]bool{"dafor": true, "dafor scale": true, "dafor score": true, "dafor code": true, "acfor": true, "sacfor": true}

var scaleWords = map[string]string{"d": "dominant", "s": "superabundant", "a": "abundant", "c": "common", "f": "frequent", "o": "occasional", "r": "rare"}

// ofScale writes out the letter of a scale: the O of a column headed DAFOR is
// no nought.
func ofScale(v *Value) {
	low := strings.ToLower(v.Text)
	local := ""
	if rest, ok := strings.CutPrefix(low, "l"); ok && len(rest) == 1 {
		low, local = rest, "locally "
	}
	if word, ok := scaleWords[low]; ok {
		v.Verbatim, v.Text = v.Text, local+word
	}
}
