package dwc

import "strings"

// Namespaces of the recommended terms.
const (
	nsDCElements    = "http://purl.org/dc/elements/1.1/"
	nsDCTerms       = "http://purl.org/dc/terms/"
	nsDarwinCore    = "http://rs.tdwg.org/dwc/terms/"
	nsDarwinCoreIRI = "http://rs.tdwg.org/dwc/iri/"
	nsAudiovisual   = "http://rs.tdwg.org/ac/terms/"
)

// Row types: what one row of a table describes. The first four are classes of
// Darwin Core; the last is the published extension for vernacular names, which
// Darwin Core has no class for.
const (
	RowOccurrence     = nsDarwinCore + "Occurrence"
	RowEvent          = nsDarwinCore + "Event"
	RowMeasurement    = nsDarwinCore + "MeasurementOrFact"
	RowTaxon          = nsDarwinCore + "Taxon"
	RowVernacularName = "http://rs.gbif.org/terms/1.0/VernacularName"
)

// prefixes are the usual short forms of the namespaces, as the Darwin Core
// documents write them.
var prefixes = []struct{ prefix, namespace string }{
	{"dwc:", nsDarwinCore},
	{"dcterms:", nsDCTerms},
	{"dc:", nsDCElements},
	{"dwciri:", nsDarwinCoreIRI},
	{"ac:", nsAudiovisual},
}

// Term is a property: its IRI, and the short name it goes by. The name of a
// recommended term is that of the standard ("eventDate"), with a prefix where
// several terms share it and this one is not the usual choice
// ("dwciri:habitat", "dcterms:language"). The name of any other term is its
// IRI.
type Term struct {
	Name string
	IRI  string
}

// isPreferredName belongs to the vernacular-name extension.
var isPreferredName = Term{Name: "isPreferredName", IRI: "http://rs.gbif.org/terms/1.0/isPreferredName"}

// Known says whether the term is one of the recommended terms of Darwin Core.
func (t Term) Known() bool {
	_, ok := termsByIRI[t.IRI]
	return ok && t != isPreferredName
}

var termsByIRI, termsByName, termsByFoldedIRI, termsByFoldedName = indexTerms()

func indexTerms() (byIRI, byName, byFoldedIRI, byFoldedName map[string]Term) {
	byIRI = make(map[string]Term)
	byName = make(map[string]Term)
	byFoldedIRI = make(map[string]Term)
	byFoldedName = make(map[string]Term)
	for _, run := range recommendedTerms {
		for _, name := range run.names {
			term := Term{Name: name, IRI: run.namespace + name}
			prefixed := prefixFor(run.namespace) + name
			if _, taken := byName[name]; taken || run.namespace == nsDarwinCoreIRI {
				term.Name = prefixed
			}
			byIRI[term.IRI] = term
			byFoldedIRI[foldIRI(term.IRI)] = term
			for _, n := range []string{term.Name, prefixed} {
				byName[n] = term
				byFoldedName[strings.ToLower(n)] = term
			}
		}
	}
	byIRI[isPreferredName.IRI] = isPreferredName
	byName[isPreferredName.Name] = isPreferredName
	byFoldedIRI[foldIRI(isPreferredName.IRI)] = isPreferredName
	byFoldedName[strings.ToLower(isPreferredName.Name)] = isPreferredName
	return
}

func prefixFor(namespace string) string {
	for _, p := range prefixes {
		if p.namespace == namespace {
			return p.prefix
		}
	}
	return ""
}

// foldIRI returns the form in which IRIs that differ only in letter case,
// scheme or outer space are the same.
func foldIRI(iri string) string {
	iri = strings.ToLower(strings.TrimSpace(iri))
	return strings.TrimPrefix(strings.TrimPrefix(iri, "https://"), "http://")
}

// IRI returns the IRI of a term that Lookup finds, from its name with or
// without its namespace's usual prefix ("eventDate", "dwc:eventDate"). It
// returns "" for a name that is none.
func IRI(name string) string {
	return termsByName[name].IRI
}

// Lookup finds a term by its name or its IRI, exactly as the standard spells
// them: one that Darwin Core recommends, or isPreferredName of the extension
// for vernacular names.
func Lookup(nameOrIRI string) (Term, bool) {
	if t, ok := termsByIRI[nameOrIRI]; ok {
		return t, true
	}
	t, ok := termsByName[nameOrIRI]
	return t, ok
}

// Closest finds a term as Lookup does, and where that fails by a spelling that
// differs only in letter case, outer space, or http against https; exact tells
// which it was. Two IRIs that Darwin Core itself used before its present
// choice, dcterms:type and dcterms:language, are read as type and language.
func Closest(nameOrIRI string) (t Term, exact, ok bool) {
	if t, ok := Lookup(nameOrIRI); ok && t.Name != "dcterms:language" {
		return t, true, true
	}
	folded := foldIRI(nameOrIRI)
	switch folded {
	case "purl.org/dc/terms/type", "dcterms:type":
		return termsByName["type"], false, true
	case "purl.org/dc/terms/language", "dcterms:language":
		return termsByName["language"], false, true
	}
	if t, ok := termsByFoldedIRI[folded]; ok {
		return t, false, true
	}
	t, ok = termsByFoldedName[folded]
	return t, false, ok
}

// RecommendedTerms returns every term that Darwin Core recommends, in the order
// of the standard's term list; TermsOf has those of one kind of record.
func RecommendedTerms() []Term {
	var all []Term
	for _, run := range recommendedTerms {
		for _, name := range run.names {
			all = append(all, termsByIRI[run.namespace+name])
		}
	}
	return all
}
