// Package bdq runs the single-record CORE tests of the Biodiversity Data
// Quality (BDQ) standard of TDWG that need no outside service: 81 tests that
// each ask one question of a record's Darwin Core terms and answer with a
// status, a result and a comment.
package bdq
