// Package notebook opens what a recorder keeps (workbooks, delimited text,
// Darwin Core Archives) and yields its cells with their addresses. It decides
// nothing about what a cell means.
//
// # What is read
//
// The kind of a file is told by its content, whatever its name ends in:
//
//   - Office Open XML workbooks (.xlsx, .xlsm, .xltx), ECMA-376. Excelize reads
//     the styles and writes numbers and dates as their formats show them; the
//     sheets and the shared texts are streamed by this package, since a cell's
//     type, style and shown value are all wanted in one pass.
//   - Workbooks of Excel 5 to 2003 (.xls), [MS-XLS] in the compound file of
//     [MS-CFB], whose numbers and dates are shown by the same means.
//   - OpenDocument spreadsheets (.ods, .fods), OpenDocument 1.3.
//   - Text with values between commas, tabs, semicolons or bars, or lined up
//     with spaces, in UTF-8, UTF-16, Windows-1252 or Mac Roman, with any line
//     ends. Encoding and delimiter are guessed from the content and noted;
//     Options overrides them. See records for how quotes are read.
//   - Darwin Core Archives (a zip or a folder with meta.xml), by way of package
//     dwc. Plain Darwin Core text is delimited text with term names as headings.
//   - Zips of notebooks, and web pages with tables, which are often named .xls.
//
// Workbooks of Excel 4 and before, .xlsb and Numbers documents, workbooks with a password
// and files that are no notebook are refused with a Problem that says how to
// save them so that they can be read.
//
// # What is kept
//
// A cell keeps its text as a person sees it and, where that says less, its
// stored value; dates and times come as ISO 8601 whatever their format. A
// formula stands for its stored value; one that was never worked out is an
// Error cell with its formula, not an empty cell. Merged areas are spread,
// comments and threads of comments put on their cells; hidden rows, columns
// and sheets and struck-through text are read and marked.
//
// # Bounds
//
// Everything is streamed: memory does not grow with the rows of a file. Limits
// bounds what a damaged or hostile file may ask for. A file that changes
// while it is read ends the walk with an error, as does the end of the
// context.
package notebook
