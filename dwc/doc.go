// Package dwc reads, checks and writes Darwin Core: the terms, the records
// made of them, archives of such records, and the metadata that goes with a
// dataset. It can be imported by itself.
//
// It implements, and its tests check it against,
//
//   - the Darwin Core term list and quick reference (https://dwc.tdwg.org/terms/),
//   - the Darwin Core text guide (https://dwc.tdwg.org/text/) for archives,
//   - Ecological Metadata Language 2.2.0 (https://eml.ecoinformatics.org/) for
//     metadata.
//
// # Records
//
// [Occurrence], [Event], [Measurement], [Taxon] and [VernacularName] are
// structs of text, one field a term; an empty field says nothing. Each can be
// reached by field, by the name of the term (Get, Set), or by place in
// [TermsOf] (Field), which is as quick as the field itself. [Check] says which
// values of an Occurrence break what the standard says of its terms: dates
// after ISO 8601-1, languages after RFC 5646, countries after ISO 3166-1,
// numbers within their range. The same rules are validate tags for
// validator/v10 ([RegisterRules]).
//
// # Writing archives
//
// [NewWriter] starts an archive with a core of any of these but vernacular
// names, and any extensions; [Used] finds the columns that are needed. Rows are
// streamed, and the same rows give the same bytes. [Dataset] is the metadata;
// its Missing names what is still to be said. [ValidateArchive] looks through
// what came of it.
//
// # Reading archives
//
// [OpenArchive] reads a zip or a folder with a descriptor, at its top or in one
// folder below it, or one text file with terms for headings, zipped or not.
// Of the descriptor it understands all attributes of the text guide with their
// defaults; the escapes \t, \n, \r, \f, \0, \\, \" and \' in them; files in
// any encoding that the web or IANA has a name for; a delimiter, an enclosing
// mark and a line end of any length; several files a table; and columns that
// have only a default. Where the guide leaves it open, delimited text is read
// after RFC 4180: an enclosed value may hold delimiters and line breaks, and a
// mark in it is doubled.
//
// A value that begins with the enclosing mark but goes on after a closing one
// is not enclosed: its marks are text. "\r\n" ends a row where "\n" is stated.
// Blank lines are no rows. Letter case, and https for http, do not matter in
// IRIs; that, and whatever else is not as it should be, is noted. Columns of
// unknown terms are kept under their IRIs, and columns that nothing describes
// under their headings.
//
// Reading is bounded by [Limits] and never leaves the archive: nothing is
// unpacked to disk or fetched from elsewhere, no name or link leads out, and
// XML is read without external entities. What cannot be read is a [*ReadError]
// with the file and the line, which errors.As finds.
package dwc
