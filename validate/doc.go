// Package validate checks records: one at a time against what a county
// recorder would ask, and then as a set.
package validate
