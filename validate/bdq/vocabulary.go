package bdq

import (
	"embed"
	"strings"
	"sync"
)

//go:embed lists
var lists embed.FS

// list reads the lines of an embedded list, parted at tabs, without comments.
func list(name string) [][]string {
	data, err := lists.ReadFile("lists/" + name)
	if err != nil { // the lists are part of the program
		panic(err)
	}
	var rows [][]string
	for line := range strings.Lines(string(data)) {
		if line = strings.TrimRight(line, "\r\n"); line != "" && line[0] != '#' {
			rows = append(rows, append(strings.Split(line, "\t"), "", "", ""))
		}
	}
	return rows
}

// vocabulary is a controlled vocabulary: its values, the labels under which a
// value is known as well, and the words that mean it.
type vocabulary struct {
	values   map[string]bool
	labels   map[string]bool   // folded; upper and lower case do not matter
	meanings map[string]string // key of a value, label or word -> value
	compound map[string][]string
	order    []string
}

func loadVocabulary(name string) *vocabulary {
	v := &vocabulary{
		values: map[string]bool{}, labels: map[string]bool{},
		meanings: map[string]string{}, compound: map[string][]string{},
	}
	for _, row := range list(name) {
		value := row[0]
		v.values[value] = true
		v.order = append(v.order, value)
		v.compound[value] = words(value)
		v.meanings[key(value)] = value
		for text := range strings.SplitSeq(row[1], "|") {
			if text != "" {
				v.labels[strings.ToLower(text)] = true
				v.labels[strings.ToLower(value)] = true
				v.meanings[key(text)] = value
			}
		}
	}
	for _, row := range list(name) {
		for text := range strings.SplitSeq(row[2], "|") {
			if _, taken := v.meanings[key(text)]; text != "" && !taken {
				v.meanings[key(text)] = row[0]
			}
		}
	}
	return v
}

// has says whether the text is a value or one of its labels, exactly as it
// stands: white space or an invisible character beside it makes it another.
func (v *vocabulary) has(s string) bool {
	return v.values[s] || len(v.labels) > 0 && v.labels[strings.ToLower(s)]
}

// interpret finds the one value that a text means: a value in other writing or
// under its IRI, a label or a word that means it, a value each of whose words
// is shortened ("Human obs"), or one word of a value that no other value has.
func (v *vocabulary) interpret(s string) (string, bool) {
	s = trim(s)
	if len(s) > 100 {
		return "", false
	}
	if at := strings.LastIndexAny(s, "/#:"); at >= 0 { // an IRI or a prefixed name
		if name := s[at+1:]; v.values[name] {
			return name, true
		}
	}
	k := key(s)
	if value, ok := v.meanings[k]; ok {
		return value, true
	}
	given := words(s)
	if len(k) < 3 {
		return "", false
	}
	if value, ok := v.only(func(parts []string) bool { return shortened(given, parts) }); ok {
		return value, true
	}
	if len(given) != 1 || len(k) < 4 {
		return "", false
	}
	if value, ok := v.only(func(parts []string) bool { return begun(k, parts) }); ok {
		return value, true
	}
	return v.only(func(parts []string) bool {
		for _, part := range parts {
			if part == k {
				return len(parts) > 1
			}
		}
		return false
	})
}

func (v *vocabulary) only(match func(parts []string) bool) (value string, ok bool) {
	for _, candidate := range v.order {
		if match(v.compound[candidate]) {
			if ok {
				return "", false
			}
			value, ok = candidate, true
		}
	}
	return value, ok
}

// shortened says whether each given word is a beginning, of three letters or
// more, of the part at its place.
func shortened(given, parts []string) bool {
	if len(given) != len(parts) {
		return false
	}
	for i, word := range given {
		if len(word) < 3 || !strings.HasPrefix(parts[i], word) {
			return false
		}
	}
	return true
}

// begun says whether a word is a beginning of parts written together, all but
// the last of them whole, and of that three letters or more ("preservedspec").
func begun(word string, parts []string) bool {
	last := len(parts) - 1
	rest, ok := strings.CutPrefix(word, strings.Join(parts[:max(last, 0)], ""))
	return ok && last > 0 && len(rest) >= 3 && strings.HasPrefix(parts[last], rest)
}

// The vocabularies are read from their lists when first asked for.
var (
	dcmiTypes              = lazy("dcmi_type.tsv")
	basesOfRecord          = lazy("basis_of_record.tsv")
	occurrenceStatuses     = lazy("occurrence_status.tsv")
	establishmentMeans     = lazy("establishment_means.tsv")
	degreesOfEstablishment = lazy("degree_of_establishment.tsv")
	pathways               = lazy("pathway.tsv")
	sexes                  = lazy("sex.tsv")
	taxonRanks             = lazy("taxon_rank.tsv")
)

func lazy(name string) func() *vocabulary {
	return sync.OnceValue(func() *vocabulary { return loadVocabulary(name) })
}
