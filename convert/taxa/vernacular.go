package taxa

import (
	"strings"
	"unicode/utf8"
)

// numberWords and variantWords are words of vernacular names that are written
// in more than one way.
var variantWords = map[string]string{
	"two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10",
	"eleven": "11", "twelve": "12", "thirteen": "13", "fourteen": "14", "fifteen": "15", "sixteen": "16", "seventeen": "17",
	"eighteen": "18", "nineteen": "19", "twenty": "20", "eighty": "80", "gray": "grey", "n": "and", "coloured": "colored", "colour": "color",
	"mould": "mold", "saint": "st",
}

// vernacularWords splits a vernacular name into folded words; hyphens part
// words, apostrophes do not. Words with two usual spellings get one.
func vernacularWords(s string) []string {
	out := make([]string, 0, 4)
	var buf [maxKey]byte
	start := 0
	take := func(end int) {
		if start == end {
			return
		}
		k := string(appendKey(buf[:0], s[start:end]))
		if k == "" {
			return
		}
		if v, ok := variantWords[k]; ok {
			k = v
		} else if len(k) > 6 {
			k = numberApart(k)
		}
		// "twenty-two" is 22, "twenty-four" is 24
		if n := len(out); n > 0 && out[n-1] == "20" && len(k) == 1 && k[0] >= '1' && k[0] <= '9' {
			out[n-1] = "2" + k
			return
		}
		out = append(out, k)
	}
	for i, r := range s {
		switch r {
		case ' ', '-', '/', ',', '.', '+', '\t', '–', '\u00a0', '‐', '‑':
			take(i)
			start = i + utf8.RuneLen(r)
		}
	}
	take(len(s))
	return out
}

// numberApart writes the number in "sevenspot" and "fourspotted" as a figure.
func numberApart(k string) string {
	for _, end := range [...]string{"spot", "spotted", "striped", "dotted", "barred"} {
		if front, ok := strings.CutSuffix(k, end); ok {
			if n, is := variantWords[front]; is && n[0] <= '9' {
				return n + end
			}
		}
	}
	return k
}

// vernacularKey is the key of a vernacular name with usual variants made one
// and the article left out: "The Grey Dagger" and "Gray Dagger" are the same.
func vernacularKey(s string) string { return joinWords(vernacularWords(s)) }

// joinWords is the key of the words, without an article before them.
func joinWords(words []string) string {
	if len(words) > 1 && (words[0] == "the" || words[0] == "a" || words[0] == "an") {
		words = words[1:]
	}
	return strings.Join(words, "")
}

// kindWords end many vernacular names and are left out or added freely:
// "Puss" for Puss Moth, "Large White butterfly".
var kindWords = []string{"moth", "butterfly", "dragonfly", "damselfly", "bumblebee", "bee", "ladybird"}

// singular takes the plural from a word: "characters", "footmen", "ladies",
// "brasses", "beauties". It returns the possible singulars.
func singular(w string) []string {
	switch {
	case len(w) < 2:
		return nil
	case len(w) < 4 && !strings.HasSuffix(w, "s"):
		return nil
	case strings.HasSuffix(w, "men"):
		return []string{w[:len(w)-2] + "an"}
	case strings.HasSuffix(w, "mice"):
		return []string{w[:len(w)-4] + "mouse"}
	case strings.HasSuffix(w, "ies"):
		return []string{w[:len(w)-3] + "y", w[:len(w)-1]}
	case strings.HasSuffix(w, "es"):
		return []string{w[:len(w)-1], w[:len(w)-2]}
	case strings.HasSuffix(w, "s") && !strings.HasSuffix(w, "ss"):
		return []string{w[:len(w)-1]}
	}
	return nil
}

// variant is another key under which a vernacular name may stand. kind is the
// word like moth that was taken away for it, in the singular; empty for none.
type variant struct{ key, kind string }

// vernacularVariants lists other keys of a vernacular name of these words:
// without its plural, without a word like moth.
func vernacularVariants(words []string) []variant {
	var out []variant
	n := len(words)
	front, last := strings.Join(words[:n-1], ""), words[n-1]
	for _, s := range singular(last) {
		out = append(out, variant{front + s, ""})
	}
	if n == 1 {
		return out
	}
	kind := kindOf(last)
	if n > 2 && words[n-2] == "bumble" && kind == "bee" {
		front = strings.Join(words[:n-2], "")
		return append(out, variant{front + "bumblebee", ""}, variant{front + "bee", ""}, variant{front, "bumblebee"})
	}
	if kind == "bee" {
		out = append(out, variant{front + "bumblebee", ""})
	}
	if kind == "bumblebee" {
		out = append(out, variant{front + "bee", ""})
	}
	if kind != "" {
		out = append(out, variant{front, kind})
		for _, s := range singular(words[n-2]) {
			out = append(out, variant{strings.Join(words[:n-2], "") + s, kind})
		}
	}
	return out
}

// kindOf is the singular of a word like moth, or empty.
func kindOf(w string) string {
	for _, s := range append(singular(w), w) {
		for _, k := range kindWords {
			if s == k {
				return k
			}
		}
	}
	return ""
}

// withKindWord lists the keys of a name with a word like moth added.
func withKindWord(words []string) []string {
	base := strings.Join(words, "")
	n := len(words)
	for _, k := range kindWords {
		if words[n-1] == k {
			return nil
		}
	}
	out := make([]string, 0, 2*len(kindWords)+1)
	for _, k := range kindWords {
		out = append(out, base+k)
	}
	out = append(out, base+"hawkmoth")
	for _, s := range singular(words[n-1]) {
		stem := strings.Join(words[:n-1], "") + s
		for _, k := range kindWords {
			out = append(out, stem+k)
		}
	}
	return out
}
