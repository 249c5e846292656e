// Package taxa matches names as they are written in notebooks to the taxa of
// a checklist. It never picks silently between two: a name is found, or it is
// read with a doubt and somebody is asked to look, or it is held with the
// names that it could be.
//
// Lists come from delimited text, a workbook or a Darwin Core checklist
// archive (Load), from several of them in order of preference (NewIndex), or
// from the binary itself (Starter). An Index is immutable and shared; every
// worker has a Matcher of its own.
//
// What a scientific name looks like, and which spellings are one name,
// follows the codes of nomenclature: the International Code of Zoological
// Nomenclature, 4th edition (ICZN, https://www.iczn.org/the-code/), and the
// International Code of Nomenclature for algae, fungi, and plants (ICN).
package taxa
