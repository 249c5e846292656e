// Package convert is the main job from end to end: notebooks in, a checked
// Darwin Core submission out.
//
// [Run] in convert.go reads top to bottom: it settles what is known beside the
// notebooks, then makes three passes. What the passes need of dates, names,
// counts and the like is in the packages below this one; here is only the order
// of the work. The files of each step, in that order:
//
// # What a run knows
//
//   - job.go: what the command line asks for.
//   - settings.go: what is known beside the notebooks, loaded by lists.go (taxa,
//     places, people), areas.go (polygons), asks.go (what the scheme wants),
//     answered.go (the recorder's answers), privacy_rules.go and
//     privacy_names.go (what must be blurred).
//   - overwrite.go, alone.go: nothing that is read is written over, and two runs
//     do not change one ledger.
//
// # First pass: reading
//
//   - readall.go: one notebook after the other, sheet by sheet; notnotebooks.go
//     leaves out what only lies beside them.
//   - sheetrun.go: one sheet on its way. It is surveyed with the help of probe.go,
//     and walked; watched.go and lines_of.go tell how far that is.
//   - batch.go: its rows go in batches to the workers, and into the spool.
//   - interpret.go: a worker turns a draft of the layout into records, by one file
//     a question: interpret_how.go, interpret_when.go (with interpret_time.go),
//     interpret_what.go, interpret_where.go (with interpret_site.go,
//     told_place.go, near_site.go, sea.go and country.go), interpret_who.go,
//     interpret_count.go, interpret_rest.go (with sample_size.go) and
//     interpret_mention.go. Pages of Darwin Core terms go through
//     interpret_stated.go as well. interpret_leave.go settles what of it may
//     leave, interpret_check.go makes the checks of one record.
//   - facet.go, memory.go: what a worker has read before is not read again;
//     shape.go: which values of a draft each step reads.
//   - content.go: the fingerprint of what was written, of which ids are made.
//   - carried.go: no text goes down a page from a row that is private.
//   - part.go, part_join.go: this pass by itself, kept in a file.
//
// # Second pass: the set
//
//   - comparing.go: the records are taken in while they are read, or in a pass of
//     its own where what was read has changed since.
//   - comparer.go: what a worker sees of each record, as it is and as it may leave
//     (publish.go).
//   - pass.go: the rows come back from the spool in batches, of which the workers
//     make what does not depend on the order of the rows.
//   - set.go: what is learnt of the records as a set, past.go of earlier ones.
//   - outline.go, coverage.go, measured.go: which columns they need, where, when
//     and of what they are, and what was measured.
//   - remember.go: the ledger, by which records keep their ids.
//
// # Third pass: writing
//
//   - preparer.go: the workers write the rows of which there is nothing to say
//     (archive_text.go), and hand on all others.
//   - write.go: each record gets its id (ids.go, events.go), leaves or not, and is
//     counted (accounts.go, asked.go).
//   - leaving.go: what leaves goes into the archive (archive.go, rowtext.go) and
//     its copies (formats.go, exact.go), with metadata.go; against.go leaves out
//     what was handed in before.
//   - exhibit.go: what the report and the summary may tell.
//   - standard.go: the Biodiversity Data Quality tests.
//   - closing.go: the screen at the end, with causes.go, causewords.go and
//     cautions.go.
package convert

// Version is the version of the program, written into every summary.
const Version = "0.1.0"
