package taxa

import (
	"fmt"
	"strings"

	"fieldfare/convert/reading"
)

// Codes of verdicts. They are stable.
const (
	CodeNoName       = "name-missing"         // held: the cell names nothing
	CodeNotListed    = "name-not-listed"      // held: no name on the list is it or close to it
	CodeMisspelt     = "name-misspelt"        // query: one close name was taken; held: close names, none taken
	CodeAmbiguous    = "name-ambiguous"       // held: the name stands for several taxa
	CodeAbbreviated  = "genus-abbreviated"    // held: the short genus fits several
	CodeSynonym      = "synonym"              // fair: a synonym was resolved
	CodeAlsoSynonym  = "name-also-synonym"    // query: an accepted name that is a synonym elsewhere too
	CodeNumber       = "number-disagrees"     // query: number and name stand for different taxa
	CodeNumberZeros  = "number-zeros-lost"    // query: a number alone that the list has only with zeros more
	CodeNumberListed = "number-not-listed"    // query: the name is read, the number is not on the list
	CodeNames        = "names-disagree"       // held: two names for different taxa
	CodeOtherName    = "other-name-unread"    // query: one of two names is read, the other is not on the list
	CodeAuthor       = "authorship-disagrees" // query: another author than on the list
	CodeLeft         = "words-left"           // query: words behind the name were not understood
	CodeNoteDoubt    = "doubt-in-note"        // query: a note throws doubt on the name
	CodeGroup        = "group-disagrees"      // query: the taxon is not of the page's group
	CodeInfra        = "form-not-listed"      // fair: read as the species, its form kept in the remarks
	CodeAggregate    = "aggregate-assumed"    // query: an aggregate that probably covers what is named
	CodeHybrid       = "hybrid-not-listed"    // query: read as the lowest taxon of both parents
	CodeListError    = "list-error"           // held: the list names it without saying for which taxon
	CodeShortened    = "name-shortened"       // query: words cut short were written out
)

const heldState = reading.Held

// outcome is a reading before what the context says of the candidates.
type outcome struct {
	verdict   reading.Verdict
	taxon     int32 // none where nothing is applied
	name      int32 // the matched name, or none
	cands     []int32
	qualifier string
	remarks   []string
	rest      []string
	spelling  bool     // the candidates are there by their spelling
	named     []string // the names given together, of a pair
}

func (o *outcome) state() reading.State { return o.verdict.State }

func (o *outcome) and(v reading.Verdict) { o.verdict = o.verdict.And(v) }

func (o *outcome) remark(format string, args ...any) {
	o.remarks = append(o.remarks, fmt.Sprintf(format, args...))
}

func held(code, format string, args ...any) outcome {
	return outcome{verdict: reading.HeldOf(code, fmt.Sprintf(format, args...)), taxon: none, name: none}
}

func query(code, format string, args ...any) reading.Verdict {
	return reading.QueryOf(code, fmt.Sprintf(format, args...))
}

func fair(code, format string, args ...any) reading.Verdict {
	return reading.Verdict{Code: code, Message: fmt.Sprintf(format, args...)}
}

// quoted puts what was written in quotes.
func quoted(s string) string { return "“" + strings.TrimSpace(s) + "”" }

// orList joins with commas and a last "or".
func orList(items []string) string {
	switch len(items) {
	case 0:
		return ""
	case 1:
		return items[0]
	}
	return strings.Join(items[:len(items)-1], ", ") + " or " + items[len(items)-1]
}
