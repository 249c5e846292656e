// Package validate checks records: one at a time against what a county
// recorder would ask, and then as a set.
//
// # One record
//
// A [RecordChecker] looks at a [dwc.Occurrence] and the [Facts] that have been
// read of it: terms that the standard does not allow, counts and dates that are
// unlikely for the taxon, the stage, the place or the method, remarks that say
// otherwise, and what a receiving scheme [Asks] for.
//
// # A set
//
// A [Set] is shown every record in order ([Set.Observe]), draws its conclusions
// once ([Set.Settle]), and then says what concerns each ([Set.Findings]):
// observations that stand there twice, journeys that nobody makes, counts and
// dates that look like autofill, counts far above a site's own, firsts. An
// [Observer] and a [Sieve] let several goroutines share the work, and change
// nothing in what is found. The set alone may write temporary files.
//
// # Findings
//
// Every finding is a sentence for the recorder, with the code of its check and
// a state: held, query, or fair, which is advice. Nothing in a record is
// changed. [Checks] lists them all: what each asks, its worst state, and the
// source of its figures or that it is common practice.
//
// The packages below hold areas (area), where there is land (land) and the
// single-record tests of the Biodiversity Data Quality standard (bdq).
package validate
