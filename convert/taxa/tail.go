package taxa

import (
	"strings"
)

// tail is what stands behind a name, understood piece by piece.
type tail struct {
	author    []token
	doubt     string   // "?", "cf.", "possibly": doubt about the name before it
	doubtText string   // the words that the doubt is about, after "cf."
	open      string   // "sp.", "indet."
	agg       string   // "agg.", "s.l."
	strict    string   // "s. str."
	infra     string   // epithet below the species
	marker    string   // what stands before it: "f.", "ssp."; empty for a bare third word
	notes     []string // counts, sexes, circumstances
	second    *outcome // another name for the same thing
	unknown   []token  // not understood
	noteDoubt bool     // a note that throws doubt on the name
	other     *outcome // what a note says that it could be instead
}

// readTail understands the tokens behind a name. base is the kind of name
// before them.
func (r *resolver) readTail(s string, toks []token, base baseKind) tail {
	var t tail
	r.tailInto(&t, s, toks, base, 0)
	return t
}

type baseKind uint8

const (
	baseHigher baseKind = iota
	baseSpecies
	baseVernacular
)

func (r *resolver) tailInto(t *tail, s string, toks []token, base baseKind, depth int) {
	sub := tokenize
	for i := 0; i < len(toks); {
		k := &toks[i]
		// A whole further name, the longest first.
		if n, o := r.secondName(s, toks[i:], base); n > 0 {
			if t.second == nil {
				t.second = &o
			} else if t.second.taxon != o.taxon {
				t.unknown = append(t.unknown, toks[i:i+n]...)
			}
			i += n
			continue
		}
		if (base == baseSpecies || t.second != nil) && len(t.author) == 0 && t.infra == "" && !r.nameInBrackets(k, base) {
			end, text := authorSpan(toks, i, sub)
			if k.kind == groupToken && end > i+1 && !r.plausibleAuthor(toks[i:end], text) {
				end, text = authorSpan(toks[:i+1], i, sub) // "(Hübner) Lesser Yellow Underwing"
			}
			if end > i && r.plausibleAuthor(toks[i:end], text) {
				t.author = text
				i = end
				continue
			}
		}
		switch k.kind {
		case signToken:
			i = r.tailSign(t, s, toks, i, base)
		case groupToken:
			r.tailGroup(t, k, base, depth)
			i++
		case numberToken:
			t.notes = append(t.notes, k.text)
			i++
		default:
			i = r.tailWord(t, s, toks, i, base)
		}
	}
}

func (r *resolver) tailSign(t *tail, s string, toks []token, i int, base baseKind) int {
	k := &toks[i]
	switch k.text {
	case "?":
		if t.doubt == "" {
			t.doubt = "?"
		}
		// "Noctua ?pronuba": the words that the doubt is about
		if j := i + 1; base == baseHigher && t.doubtText == "" && j < len(toks) && toks[j].kind == wordToken && toks[j].lower() && !noteWords[toks[j].key] && openWords[toks[j].key] == "" {
			t.doubtText = toks[j].text
			return j + 1
		}
		return i + 1
	case "♂", "♀", "☿", "⚥", "*", "†", "!", "+", "~", "\"", "'", "=", "^", "°", "#", ".", "&", "<", ">", "•", "✓", "×":
		if k.text != "." && k.text != "\"" && k.text != "=" && k.text != "'" {
			t.notes = append(t.notes, k.text)
		}
		return i + 1
	case ",", ";", ":", "-", "–", "—", "|", "/":
		// What follows is another name for the same, an authorship, or a note.
		if i+1 >= len(toks) {
			return i + 1
		}
		rest := toks[i+1:]
		if n, _ := r.secondName(s, rest, base); n > 0 {
			return i + 1
		}
		if k.text == "," && base == baseSpecies && isYearToken(&rest[0]) {
			return i + 1
		}
		if k.text == "/" {
			t.unknown = append(t.unknown, *k)
			return i + 1
		}
		if end, text := authorSpan(toks, i+1, tokenize); k.text == "," && base == baseSpecies && end > i+1 && r.plausibleAuthor(toks[i+1:end], text) {
			return i + 1
		}
		if suspectName(rest, r.ix) || base == baseHigher && mayBeEpithet(&rest[0]) {
			t.unknown = append(t.unknown, rest...)
			return len(toks)
		}
		r.note(t, s, written(s, rest), rest)
		return len(toks)
	}
	t.unknown = append(t.unknown, *k)
	return i + 1
}

// note keeps words as a note, and sees a doubt in them.
func (r *resolver) note(t *tail, s, text string, toks []token) {
	if n := doubtPhrase(toks); n > 0 && n == len(toks) {
		t.beDoubted(text)
		return
	}
	t.notes = append(t.notes, text)
	for i := range toks {
		if toks[i].sign("?") || toks[i].kind == wordToken && remarkDoubts[toks[i].key] {
			t.noteDoubt = true
		}
	}
	// "could be Light Arches"
	for i := 0; i+1 < len(toks); i++ {
		k := toks[i].key
		if k != "or" && !(i > 0 && k == "be" && remarkDoubts[toks[i-1].key]) {
			continue
		}
		if n, o := r.secondName(s, toks[i+1:], baseVernacular); n > 0 && i+1+n == len(toks) {
			t.other = &o
		}
	}
}

// doubtPhrase is how many of the tokens from the first on say that the name is
// not certain: "not sure", "to be confirmed".
func doubtPhrase(toks []token) int {
	phrase, found := "", 0
	for i := 0; i < len(toks) && i < 4 && toks[i].kind == wordToken; i++ {
		if phrase += toks[i].key; doubtPhrases[phrase] && !(i == 0 && upperFirst(toks[0].text)) {
			found = i + 1
		}
	}
	return found
}

func (t *tail) beDoubted(mark string) {
	if t.doubt == "" {
		t.doubt = "?"
		if w := doubtWords[key(mark)]; w != "" {
			t.doubt = w
		}
	}
}

// tailGroup understands brackets behind a name.
func (r *resolver) tailGroup(t *tail, k *token, base baseKind, depth int) {
	if k.text == "" {
		return
	}
	inner := tokenize(k.text)
	if len(inner) == 0 {
		return
	}
	if depth < 2 {
		var in tail
		r.tailInto(&in, k.text, inner, base, depth+1)
		if len(in.unknown) == 0 && (in.infra == "" || in.marker != "" || base == baseSpecies) {
			t.merge(in)
			return
		}
	}
	if suspectName(inner, r.ix) || base == baseHigher && mayBeEpithet(&inner[0]) {
		t.unknown = append(t.unknown, *k)
		return
	}
	r.note(t, k.text, k.text, inner)
}

func (t *tail) merge(in tail) {
	if len(in.author) > 0 && len(t.author) == 0 {
		t.author = in.author
	}
	for _, f := range [...]struct {
		to   *string
		from string
	}{{&t.doubt, in.doubt}, {&t.doubtText, in.doubtText}, {&t.open, in.open}, {&t.agg, in.agg}, {&t.strict, in.strict}, {&t.infra, in.infra}, {&t.marker, in.marker}} {
		if *f.to == "" {
			*f.to = f.from
		}
	}
	t.notes = append(t.notes, in.notes...)
	if t.second == nil {
		t.second = in.second
	}
	t.noteDoubt = t.noteDoubt || in.noteDoubt
	if t.other == nil {
		t.other = in.other
	}
}

// mayBeEpithet: behind a genus, a word in small letters that is no usual note
// may be the epithet: "Noctua (pronuba)".
func mayBeEpithet(k *token) bool {
	return k.kind == wordToken && k.lower() && len(k.key) > 2 && !noteWords[k.key] && !placeWords[k.key] && !remarkDoubts[k.key] && openWords[k.key] == "" && !hasDigit(k.key)
}

// suspectName: words that look like the name of something rather than a note:
// a capitalised word and a word in lower case that is no note, or words that
// are all words of vernacular names.
func suspectName(toks []token, ix *Index) bool {
	var words []*token
	for i := range toks {
		if toks[i].kind == wordToken {
			words = append(words, &toks[i])
		} else if toks[i].kind == signToken && len(words) > 0 {
			break
		}
	}
	if len(words) == 0 || noteWords[words[0].key] {
		return false
	}
	if len(words) >= 2 && upperFirst(words[0].text) && words[1].lower() && !noteWords[words[1].key] && len(words[1].key) > 3 && !ix.isVernacularWord(words[1].key) {
		if _, genus := ix.genera[words[0].key]; genus || ix.known.genera[words[0].key] || latinLook(words[1].key) {
			return true
		}
	}
	for _, w := range words {
		for _, part := range vernacularWords(w.text) {
			if !upperFirst(w.text) || !ix.isVernacularWord(part) {
				return false
			}
		}
	}
	return true
}

// latinLook: an ending that epithets have and English words rarely do.
func latinLook(k string) bool {
	for _, e := range [...]string{"us", "um", "is", "ae", "ii", "ella", "ana", "aria", "ata", "ina", "ita", "osa", "ula", "oides", "ensis", "alis", "aris", "ica", "ola", "illa", "ea", "ia", "ra", "ta", "na", "la", "sa", "i", "ix", "ans", "ens"} {
		if strings.HasSuffix(k, e) && len(k) > len(e)+2 {
			return true
		}
	}
	return false
}

// tailWord reads the word at i of what stands behind a name, and returns where
// the next one is.
func (r *resolver) tailWord(t *tail, s string, toks []token, i int, base baseKind) int {
	k := &toks[i]
	var next *token
	if i+1 < len(toks) {
		next = &toks[i+1]
	}
	if n := doubtPhrase(toks[i:]); n > 0 && doubtWords[k.key] == "" {
		t.beDoubted(written(s, toks[i:i+n]))
		return i + n
	}
	if n := t.sense(k, next); n > 0 {
		return i + n
	}
	switch {
	case aggregateWords[k.key] && !upperFirst(k.text), k.key == "agg", k.key == "aggregate":
		t.agg = "agg."
		return i + 1
	case openWords[k.key] != "" && (base == baseHigher || k.lower() && !latinEpithetFollows(toks, i)):
		if base != baseHigher && base != baseVernacular {
			t.notes = append(t.notes, k.text)
			return i + 1
		}
		if t.open == "" || k.key == "indet" {
			t.open = openWords[k.key]
		}
		return i + 1
	case doubtWords[k.key] != "" && (k.lower() || k.dotted()):
		if t.doubt == "" {
			t.doubt = doubtWords[k.key]
		}
		// "cf. pronuba": the words that the doubt is about
		if j := i + 1; j < len(toks) && toks[j].kind == wordToken && base != baseVernacular && !noteWords[toks[j].key] {
			end := j
			for end < len(toks) && toks[end].kind == wordToken && toks[end].lower() && !noteWords[toks[end].key] {
				end++
			}
			if end > j && t.doubtText == "" {
				t.doubtText = written(s, toks[j:end])
				return end
			}
		}
		return i + 1
	case rankMarkers[k.key] != "" && base != baseHigher && infraFollows(toks, i) && t.infra != "":
		t.notes = append(t.notes, written(s, toks[i:i+2]))
		return i + 2
	case rankMarkers[k.key] != "" && base != baseHigher && infraFollows(toks, i):
		t.marker = k.text
		j := i + 1
		if toks[j].kind == signToken { // f. "carbonaria"
			j++
		}
		t.infra = toks[j].text
		for j++; j < len(toks) && toks[j].kind == signToken && (toks[j].text == "\"" || toks[j].text == "'"); j++ {
		}
		return j
	case countLike(k):
		t.notes = append(t.notes, k.text)
		return i + 1
	case k.key == "near" && base == baseHigher && t.doubtText == "" && next != nil && mayBeEpithet(next) && latinLook(next.key):
		t.doubt, t.doubtText = "nr", next.text
		return i + 2
	case placeWords[k.key] && k.lower() && next != nil:
		// "in kitchen", "at ivy blossom": all of it is a note.
		r.note(t, s, written(s, toks[i:]), toks[i:])
		return len(toks)
	case noteWords[k.key]:
		t.notes = append(t.notes, k.text)
		return i + 1
	case base == baseSpecies && i == 0 && k.lower() && r.baseEpithet == k.key:
		t.infra = k.text
		return i + 1
	case base == baseSpecies && i == 0 && k.lower() && len(k.key) > 3 && latinLook(k.key):
		t.infra = k.text
		return i + 1
	}
	t.unknown = append(t.unknown, *k)
	return i + 1
}

// sense reads the words that say in which sense a name is meant: s.l., sensu
// stricto. It returns how many there are.
func (t *tail) sense(k, next *token) int {
	following := ""
	if next != nil {
		following = next.key
	}
	switch k.key {
	case "s", "sensu":
		short := k.key == "s"
		switch {
		case following == "lato", short && (following == "l" || following == "lat"):
			t.agg = "s.l."
			return 2
		case following == "stricto", short && (following == "s" || following == "str"):
			t.strict = "s. str."
			return 2
		}
	case "sl":
		if k.lower() {
			t.agg = "s.l."
			return 1
		}
	case "ss":
		if k.lower() {
			t.strict = "s. str."
			return 1
		}
	case "sstr":
		t.strict = "s. str."
		return 1
	}
	return 0
}

func latinEpithetFollows(toks []token, i int) bool {
	return i+1 < len(toks) && toks[i+1].kind == wordToken && latinLook(toks[i+1].key) && !noteWords[toks[i+1].key]
}

// infraFollows: a marker like "f." with an epithet behind it, not "f." for a
// female.
func infraFollows(toks []token, i int) bool {
	k := &toks[i]
	j := i + 1
	if j < len(toks) && toks[j].kind == signToken && (toks[j].text == "\"" || toks[j].text == "'") {
		j++
	}
	if j >= len(toks) || toks[j].kind != wordToken || len(toks[j].key) < 4 || noteWords[toks[j].key] || hasDigit(toks[j].text) {
		return false
	}
	if upperFirst(toks[j].text) && (k.key == "m" || k.key == "f" || k.key == "v") && j == i+1 {
		return false
	}
	return true
}

// countLike: "3", "2m", "x5", "c20", "1f".
func countLike(k *token) bool {
	if !hasDigit(k.text) {
		return false
	}
	switch strings.Trim(k.key, "0123456789") {
	case "", "m", "f", "x", "c", "ca", "ex", "exx", "male", "females", "males", "female", "q", "w", "st", "nd", "rd", "th", "mf", "fm":
		return true
	}
	return false
}

// secondName finds another name at the start of toks: the longest exact one.
func (r *resolver) secondName(s string, toks []token, base baseKind) (int, outcome) {
	if len(toks) == 0 || toks[0].kind != wordToken {
		return 0, outcome{}
	}
	limit := 0
	for limit < len(toks) && limit < 10 && (toks[limit].kind == wordToken || toks[limit].sign("&")) {
		limit++
	}
	for n := limit; n > 0; n-- {
		// One word alone is a name only with a capital, and not where it could
		// be an author or an epithet.
		if n == 1 && (!upperFirst(toks[0].text) || base == baseHigher || noteWords[toks[0].key]) {
			break
		}
		if n == 1 && len(toks) > 1 && toks[1].kind == wordToken && toks[1].lower() && !noteWords[toks[1].key] && doubtWords[toks[1].key] == "" && openWords[toks[1].key] == "" {
			break // a genus, and an epithet that is not on the list
		}
		o, ok := r.exactTokens(s, toks[:n])
		if !ok && n == 2 {
			o, ok = r.abbreviated(s, toks[:2])
		}
		if ok && o.taxon != none && o.state() < heldState {
			return n, o
		}
	}
	return 0, outcome{}
}

// nameInBrackets: the brackets hold a whole name that is on the list, and not
// an author who is called like some other taxon ("(Miller)").
func (r *resolver) nameInBrackets(k *token, base baseKind) bool {
	if k.kind != groupToken {
		return false
	}
	inner := tokenize(k.text)
	n, o := r.secondName(k.text, inner, base)
	if n == 0 || n < len(inner) && inner[n].kind == wordToken && upperFirst(inner[n].text) {
		return false
	}
	return n > 1 || !r.ix.isAuthor(inner[0].key) || key(r.ix.taxa[o.taxon].SpecificEpithet()) == r.baseEpithet
}

// plausibleAuthor: has a year, a sign of several authors, a bracket, a usual
// short form, or the words stand nowhere else in names.
func (r *resolver) plausibleAuthor(span, text []token) bool {
	if len(text) == 0 {
		return false
	}
	for i := range text {
		if isYearToken(&text[i]) || text[i].sign("&") {
			return true
		}
	}
	if authorForms[text[0].key] != "" && text[0].dotted() {
		return true
	}
	for i := range text {
		k := &text[i]
		if k.kind == wordToken && (r.ix.hasVernacularWord(k.text) || noteWords[k.key] && !k.dotted()) && (i > 0 || authorForms[k.key] == "") {
			return false
		}
	}
	return span[0].kind == groupToken || text[0].dotted() || authorForms[text[0].key] != "" || r.ix.isAuthor(text[0].key)
}
