package taxa

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"fieldfare/convert/notebook"
)

// builder makes a list of rows. Accepted taxa are made as they come; synonyms
// and parents, which may point forward, wait for the end.
type builder struct {
	list     *List
	problems []Problem
	strings  words // one copy of words that repeat
	ids      idTable
	synonyms []synonym
	parents  []parentRef // beside list.taxa
	extra    []extraName
	commas   []extraName       // vernacular cells with commas
	seasons  map[string]Months // months by how they are written
	strange  map[string]bool   // columns of months that hold something else

	sheet   string  // of a workbook
	cells   bool    // the list has cells with addresses
	columns []field // what its columns mean, where it has
}

// ref is what an id stands for: an accepted taxon or a synonym.
type ref struct {
	index   int32
	synonym bool
}

type synonym struct {
	text, authorship       string
	acceptedID, acceptedIs string // by id or by name
	line                   int
	vernaculars            []string
}

type parentRef struct{ id, name string }

// extraName is a vernacular name or synonym given on the taxon's own line or
// by an extension.
type extraName struct {
	text  string
	taxon int32
	kind  nameKind
}

func newBuilder(name string) *builder {
	return &builder{list: &List{Name: name}, ids: idTable{refTable: newRefTable(0)}, seasons: map[string]Months{}, strange: map[string]bool{}}
}

// expect makes room for a number of lines.
func (b *builder) expect(lines int) {
	b.ids = idTable{refTable: newRefTable(lines), ids: make([]string, 0, lines), refs: make([]ref, 0, lines)}
	b.list.taxa = make([]Taxon, 0, lines)
	b.parents = make([]parentRef, 0, lines)
	b.extra = make([]extraName, 0, lines)
}

// The columns in which what is wrong with a line may lie.
var (
	inID         = []field{fID, fNameID}
	inName       = []field{fName, fEpithet}
	inVernacular = []field{fVernacular}
	inAccepted   = []field{fAcceptedID, fAccepted, fStatus}
	inParent     = []field{fParentID, fParent}
	inFlight     = []field{fMonths, fFirstMonth}
)

// problem notes what is wrong on a line: in the first of these fields that has
// a column, else with the line as a whole.
func (b *builder) problem(line int, in []field, format string, args ...any) {
	p := Problem{Source: b.list.Name, Sheet: b.sheet, Line: line, Message: fmt.Sprintf(format, args...)}
	for _, f := range in {
		if column := slices.Index(b.columns, f); b.cells && column >= 0 {
			p.Cell = notebook.Ref{Col: column + 1, Row: line}.String()
			break
		}
	}
	b.problems = append(b.problems, p)
}

func (b *builder) intern(s string) string {
	return b.strings.one(s)
}

// add takes one line of the list.
func (b *builder) add(r *row) {
	v := &r.values
	if v[fID] == "" {
		v[fID] = v[fNameID] // of a list that names its taxa by it
	}
	text := r.name()
	if text == "" {
		if len(r.vernaculars) > 0 {
			b.problem(r.line, inVernacular, "“%s” has no scientific name on this line, so nothing can be read as it.", r.vernaculars[0])
		}
		return
	}
	n := splitName(capitalised(text))
	authorship := v[fAuthor]
	if authorship == "" {
		authorship = n.authorship
	}
	if y := v[fYear]; y != "" && authorship != "" && !strings.Contains(authorship, y) {
		authorship = strings.TrimSuffix(authorship, ")") + ", " + y + map[bool]string{true: ")"}[strings.HasSuffix(authorship, ")")]
	}
	if b.isSynonym(r, n.canonical) {
		if id := v[fID]; id != "" {
			b.claim(id, ref{int32(len(b.synonyms)), true}, r.line)
		}
		b.synonyms = append(b.synonyms, synonym{
			text: n.canonical, authorship: b.intern(authorship),
			acceptedID: v[fAcceptedID], acceptedIs: v[fAccepted],
			line: r.line, vernaculars: r.vernaculars,
		})
		return
	}
	t := Taxon{
		ID: v[fID], NameID: v[fNameID], ScientificName: n.canonical, Authorship: b.intern(authorship),
		Number: v[fNumber], Group: b.intern(v[fGroup]), List: b.list.Name, Line: r.line, parent: none,
		Lineage: Lineage{
			Kingdom: b.rankName(v[fKingdom]), Phylum: b.rankName(v[fPhylum]), Class: b.rankName(v[fClass]), Order: b.rankName(v[fOrder]),
			Superfamily: b.rankName(v[fSuperfamily]), Family: b.rankName(v[fFamily]), Subfamily: b.rankName(v[fSubfamily]),
			Tribe: b.rankName(v[fTribe]), Genus: b.rankName(v[fGenus]), Subgenus: b.intern(v[fSubgenus]),
		},
	}
	t.Rank = b.intern(RankOf(v[fRank]))
	if t.Rank == "" || n.aggregate && t.Rank == RankSpecies {
		t.Rank = rankFromName(n, &t.Lineage)
	}
	if t.Genus == "" && (n.epithet != "" || t.Rank == RankGenus) {
		t.Genus = b.intern(n.genus)
	}
	if t.Subgenus == "" {
		t.Subgenus = b.intern(n.subgenus)
	}
	t.Code = codeOf(v[fCode], t.Kingdom)
	if t.Code == "" && strings.HasSuffix(t.Family, "idae") {
		t.Code = "ICZN" // Article 29.2: only names of animal families end so
	}
	b.months(r, &t)
	b.most(r, &t)
	b.needs(r, &t)
	index := int32(len(b.list.taxa))
	if t.ID != "" {
		b.claim(t.ID, ref{index, false}, r.line)
	}
	for _, name := range r.vernaculars {
		b.vernacular(&t, index, name)
	}
	for _, name := range r.synonyms {
		if s := splitName(capitalised(name)); s.canonical != "" {
			b.extra = append(b.extra, extraName{s.canonical, index, synonymName})
		}
	}
	b.list.taxa = append(b.list.taxa, t)
	b.parents = append(b.parents, parentRef{v[fParentID], v[fParent]})
}

// name is the scientific name on a line: whole, of genus and epithet, or else
// the accepted name that stands there; empty where there is none.
func (r *row) name() string {
	v := &r.values
	text := v[fName]
	if text == "" && v[fGenus] != "" && v[fEpithet] != "" {
		text = v[fGenus] + " " + strings.TrimSpace(v[fEpithet]+" "+v[fInfra])
	} else if v[fGenus] != "" && startsLower(text) && !strings.ContainsRune(text, ' ') {
		// A "species" column of epithets beside a genus column.
		text = v[fGenus] + " " + text
	}
	return cmp.Or(text, v[fAccepted])
}

// footnoteMarks stand at the end of a name on a printed list and are no part of
// it: "Peach Blossom *".
const footnoteMarks = " *†‡§#"

// vernacular takes a vernacular name of a taxon as a list writes it: another
// name may stand behind it in brackets; commas are left for the end of the
// list, when it is known what they mean.
func (b *builder) vernacular(t *Taxon, index int32, name string) {
	name = strings.TrimSpace(strings.Trim(name, footnoteMarks))
	if k := key(name); k == "" || nothingWords[k] {
		return
	}
	if strings.Contains(name, "/") && t.Rank != RankAggregate {
		for part := range strings.SplitSeq(name, "/") {
			b.vernacular(t, index, strings.TrimSpace(part))
		}
		return
	}
	if strings.Contains(name, ", ") {
		b.commas = append(b.commas, extraName{name, index, vernacularName})
		return
	}
	if open := strings.IndexByte(name, '('); open > 1 && strings.HasSuffix(name, ")") {
		if inside := name[open+1 : len(name)-1]; upperFirst(inside) && !strings.HasPrefix(strings.ToLower(inside), "agg") {
			b.extra = append(b.extra, extraName{tidy(inside), index, vernacularName})
			name = strings.TrimSpace(name[:open])
		}
	}
	if t.Vernacular == "" {
		t.Vernacular = name
	}
	b.extra = append(b.extra, extraName{name, index, vernacularName})
}

// settleCommas reads vernacular cells with commas: of a list that puts the
// last word first ("Carpet, Garden", "Carpet, Green") the names turned round,
// of others several names.
func (b *builder) settleCommas() {
	firsts := map[string]int32{}
	inverted := false
	for _, c := range b.commas {
		front, _, _ := strings.Cut(c.text, ", ")
		other, seen := firsts[key(front)]
		inverted = inverted || seen && other != c.taxon
		firsts[key(front)] = c.taxon
	}
	for _, c := range b.commas {
		names := strings.Split(c.text, ", ")
		if inverted && len(names) == 2 {
			names = []string{names[1] + " " + names[0]}
		}
		t := &b.list.taxa[c.taxon]
		for _, name := range names {
			if name = tidy(strings.Trim(name, " ,")); key(name) == "" {
				continue
			}
			if t.Vernacular == "" {
				t.Vernacular = name
			}
			b.extra = append(b.extra, extraName{name, c.taxon, vernacularName})
		}
	}
}

// rankName tidies a name in a classification: "NOCTUIDAE" is Noctuidae.
func (b *builder) rankName(s string) string {
	if s == "" {
		return ""
	}
	if startsLower(s) || allCapitals(s) {
		s = capitalised(s)
	}
	return b.intern(s)
}

func (b *builder) claim(id string, r ref, line int) {
	if !b.ids.add(id, r) {
		b.problem(line, inID, "The id “%s” stands on more than one line; the first line is used wherever it is pointed to.", id)
	}
}

// isSynonym: the line points to another name as the accepted one, or says
// that it is not accepted itself.
func (b *builder) isSynonym(r *row, canonical string) bool {
	v := &r.values
	if a := v[fAcceptedID]; a != "" {
		return a != v[fID]
	}
	if a := v[fAccepted]; a != "" && v[fName] != "" {
		if isYesOrNo(a) {
			v[fAccepted] = ""
			return !yes(strings.ToLower(a))
		}
		return key(splitName(capitalised(a)).canonical) != key(canonical)
	}
	if v[fStatus] == "" || v[fStatus] == "accepted" {
		return false
	}
	status := strings.ToLower(v[fStatus])
	if _, of, found := strings.Cut(status, "synonym of "); found {
		v[fAccepted] = strings.TrimSpace(v[fStatus][len(v[fStatus])-len(of):])
		return true
	}
	for _, w := range [...]string{"synonym", "misapplied", "invalid", "unaccepted", "not accepted", "junior", "obsolete", "superseded", "homonym", "unavailable", "nomen nudum", "misspelling"} {
		if strings.Contains(status, w) {
			return true
		}
	}
	return status == "s" || status == "syn" || status == "syn."
}

// isYesOrNo: the cell of a column that answers a question.
func isYesOrNo(s string) bool {
	switch strings.ToLower(s) {
	case "yes", "no", "y", "n", "true", "false":
		return true
	}
	return false
}

// capitalised gives a name the capitals of the codes where a list has none
// ("noctua pronuba") or nothing else ("NOCTUA PRONUBA").
func capitalised(s string) string {
	if len(s) > 2 && allCapitals(s) {
		s = strings.ToLower(s)
	}
	if startsLower(s) && !strings.HasPrefix(s, "x ") {
		words := strings.SplitN(s, " ", 2)
		first := []rune(words[0])
		words[0] = strings.ToUpper(string(first[:1])) + string(first[1:])
		return strings.Join(words, " ")
	}
	return s
}

// allCapitals: no letter of s is small.
func allCapitals(s string) bool {
	return !strings.ContainsFunc(s, unicode.IsLower)
}

// codeOf is the nomenclatural code: as the list says, else as the kingdom has
// it.
func codeOf(code, kingdom string) string {
	switch c := strings.ToUpper(strings.TrimSpace(code)); c {
	case "":
	case "ICBN", "ICNAFP", "BOTANICAL":
		return "ICN"
	case "ZOOLOGICAL":
		return "ICZN"
	default:
		return c
	}
	switch kingdom {
	case "Animalia", "Metazoa":
		return "ICZN"
	case "Plantae", "Fungi", "Viridiplantae":
		return "ICN"
	}
	return ""
}

func (b *builder) months(r *row, t *Taxon) {
	v := &r.values
	t.Flight = r.months
	text := v[fMonths]
	if v[fFirstMonth] != "" && v[fLastMonth] != "" {
		text = v[fFirstMonth] + " - " + v[fLastMonth]
	}
	t.Flight |= b.season(r, t, inFlight, flightMonths, text)
	t.Eggs = b.season(r, t, []field{fEggMonths}, "months of eggs", v[fEggMonths])
	t.Larvae = b.season(r, t, []field{fLarvaMonths}, "months of larvae", v[fLarvaMonths])
	t.Pupae = b.season(r, t, []field{fPupaMonths}, "months of pupae", v[fPupaMonths])
}

const flightMonths = "flight months"

// season reads the months of a stage. A column of young stages that holds
// something else, such as what they feed on, is told of once.
func (b *builder) season(r *row, t *Taxon, in []field, what, text string) Months {
	if text == "" || text == "-" || text == "?" {
		return 0
	}
	m, ok := b.seasons[text]
	if !ok {
		m, ok = ParseMonths(text)
		b.seasons[text] = m
	}
	if !ok || m == 0 {
		if what != flightMonths && b.strange[what] {
			return 0
		}
		b.strange[what] = true
		b.problem(r.line, in, "The %s of %s, “%s”, could not be read; write them like “5-9” or “May to September”. No season is checked for it.", what, t.ScientificName, text)
		return 0
	}
	return m
}

// most reads the highest count to be expected.
func (b *builder) most(r *row, t *Taxon) {
	text := r.values[fMost]
	if text == "" || text == "-" || text == "?" {
		return
	}
	n, err := strconv.Atoi(strings.ReplaceAll(text, ",", ""))
	if err != nil || n < 1 || n > 1<<30 {
		b.problem(r.line, []field{fMost}, "The highest count of %s, “%s”, is no whole number above 0; its counts are not compared with it.", t.ScientificName, text)
		return
	}
	t.Most = n
}

func (b *builder) needs(r *row, t *Taxon) {
	v := &r.values
	metres, ok := squareOf(v[fSensitive])
	if !ok {
		metres = 10000
		b.problem(r.line, []field{fSensitive}, "%s is marked “%s” as sensitive, without the square it may be shown in; it is shown to 10 km until the list says, for example, “2 km”.", t.ScientificName, v[fSensitive])
	}
	t.SensitiveTo = metres
	if v[fNeeds] == "" && v[fNeedsNote] == "" && v[fNeedsSpecimen] == "" {
		return
	}
	needs := strings.ToLower(v[fNeeds])
	for _, w := range [...]string{"specimen", "voucher", "dissect", "gen"} {
		t.NeedsSpecimen = t.NeedsSpecimen || strings.Contains(needs, w)
	}
	for _, w := range [...]string{"note", "descri", "photo", "detail"} {
		t.NeedsNote = t.NeedsNote || strings.Contains(needs, w)
	}
	t.NeedsNote = t.NeedsNote || yes(v[fNeedsNote])
	t.NeedsSpecimen = t.NeedsSpecimen || yes(v[fNeedsSpecimen])
}
