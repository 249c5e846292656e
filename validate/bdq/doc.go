// Package bdq runs the single-record CORE tests of the Biodiversity Data
// Quality (BDQ) standard that need no outside service: 81 tests that each put
// one question to a record's Darwin Core terms and answer with a status, a
// result and a comment.
//
// The tests are those of the Biodiversity Data Quality Interest Group of
// Biodiversity Information Standards (TDWG), draft standard of 2026, CC BY 4.0
// (https://github.com/tdwg/bdq). A test is known by its label and for ever by
// its GUID; [Tests] is the one table of them. There are four types:
//
//   - a validation says COMPLIANT or NOT_COMPLIANT;
//   - an issue says POTENTIAL_ISSUE or NOT_ISSUE;
//   - a measure gives a number;
//   - an amendment proposes a value. Nothing is changed here.
//
// A test that the record does not give what it needs answers with
// INTERNAL_PREREQUISITES_NOT_MET.
//
// # Reading
//
// A term is empty where it has no character that prints; "null" and the like
// are values. Validations of vocabularies take a value exactly as it stands.
// Dates are ISO 8601-1:2019, read strictly. Amendments propose only what the
// value can mean alone: "03/04/2020", a year of two digits, a country named
// "Congo" and a depth without its unit are left as they are.
//
// # Sources
//
// The vocabularies, the country codes, the EPSG codes and the grid of datum
// shifts are files in lists, each of which names its source. Nothing is looked
// up elsewhere, so a bdqval:sourceAuthority other than a test's default is
// not at hand: EXTERNAL_PREREQUISITES_NOT_MET.
//
// Where the standard leaves a choice, or its text and its cases differ:
//
//   - AMENDMENT_OCCURRENCESTATUS_ASSUMEDDEFAULT of a stated status is
//     NOT_AMENDED, AMENDMENT_EVENTDATE_FROM_VERBATIM of a text with nothing of
//     a date in it and AMENDMENT_EVENTDATE_FROM_YEARSTARTDAYOFYEARENDDAYOFYEAR
//     of a year that is none are INTERNAL_PREREQUISITES_NOT_MET, as the cases
//     have it.
//   - The canonical address of a Creative Commons licence, which ends after
//     the version, is COMPLIANT as the notes say, though the expression given
//     for it does not match it.
//   - The labels of the rank and sex vocabularies comply in upper and lower
//     case ("male", "especie").
//   - The largest shift between datums, which
//     AMENDMENT_GEODETICDATUM_ASSUMEDDEFAULT adds to an uncertainty, is taken
//     over the datums used in a square of five degrees.
//   - Verbatim coordinates without a reference system give a latitude and a
//     longitude, and no datum.
//
// # The standard's cases
//
// The standard comes with cases: rows of terms and the response that a test
// must give. Any file of them with the same headings can be run:
//
//	FIELDFARE_BDQ_CASES=cases.csv go test -run TestCases -v ./validate/bdq
//
// Without FIELDFARE_BDQ_CASES the test reads bdq/cases.csv in the folder named
// by FIELDFARE_REFERENCE. It prints how many cases agree for each test. A row
// that the file itself marks as having an issue may differ; each such row is
// printed with its mark.
package bdq
