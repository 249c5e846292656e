package bdq

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// Counts are how many records had which answer to one test.
type Counts struct {
	Compliant      int `json:"compliant,omitempty"`
	NotCompliant   int `json:"notCompliant,omitempty"`
	PotentialIssue int `json:"potentialIssue,omitempty"`
	NotIssue       int `json:"notIssue,omitempty"`
	Measured       int `json:"measured,omitempty"`
	Amended        int `json:"amended,omitempty"`
	FilledIn       int `json:"filledIn,omitempty"`
	NotAmended     int `json:"notAmended,omitempty"`
	// InternalUnmet: the record does not hold what the test needs.
	InternalUnmet int `json:"internalPrerequisitesNotMet,omitempty"`
	// ExternalUnmet: the source authority is not at hand.
	ExternalUnmet int `json:"externalPrerequisitesNotMet,omitempty"`
}

func (c *Counts) add(r Response) {
	switch r.Status {
	case Amended:
		c.Amended++
	case FilledIn:
		c.FilledIn++
	case NotAmended:
		c.NotAmended++
	case InternalUnmet:
		c.InternalUnmet++
	case ExternalUnmet:
		c.ExternalUnmet++
	default:
		switch r.Result {
		case Compliant:
			c.Compliant++
		case NotCompliant:
			c.NotCompliant++
		case PotentialIssue:
			c.PotentialIssue++
		case NotIssue:
			c.NotIssue++
		default:
			c.Measured++
		}
	}
}

// Report counts the answers of every test over many records, one record at a
// time. Its size does not depend on how many there are. It is not safe for
// concurrent use.
type Report struct {
	suite   *Suite
	records int
	counts  []Counts
}

// NewReport starts a report of the suite's tests.
func (s *Suite) NewReport() *Report {
	return &Report{suite: s, counts: make([]Counts, len(s.tests))}
}

// Observe runs every test on one record and counts the answers.
func (r *Report) Observe(terms Terms) {
	r.records++
	record := record{terms: terms}
	for i := range r.suite.tests {
		r.counts[i].add(r.suite.run(&r.suite.tests[i], &record))
	}
}

// Records is how many records were observed.
func (r *Report) Records() int { return r.records }

// Row is one test with its counts.
type Row struct {
	Test   *Test
	Counts Counts
}

// Rows are the tests with their counts, in the order of Tests.
func (r *Report) Rows() []Row {
	rows := make([]Row, len(r.counts))
	for i := range rows {
		rows[i] = Row{&r.suite.tests[i], r.counts[i]}
	}
	return rows
}

// Failed are the validations that some record did not comply with.
func (r *Report) Failed() []Row {
	var failed []Row
	for _, row := range r.Rows() {
		if row.Counts.NotCompliant > 0 {
			failed = append(failed, row)
		}
	}
	return failed
}

// MarshalJSON writes the number of records and, for each test, its label,
// identifier, type, dimension, terms and counts.
func (r *Report) MarshalJSON() ([]byte, error) {
	type test struct {
		Label     string   `json:"label"`
		GUID      string   `json:"guid"`
		Type      Type     `json:"type"`
		Dimension string   `json:"dimension"`
		Terms     []string `json:"terms"`
		Counts    Counts   `json:"counts"`
	}
	out := struct {
		Standard string `json:"standard"`
		Records  int    `json:"records"`
		Tests    []test `json:"tests"`
	}{Standard: "TDWG Biodiversity Data Quality, single-record CORE tests", Records: r.records}
	for _, row := range r.Rows() {
		t := row.Test
		out.Tests = append(out.Tests, test{t.Label, t.GUID, t.Type, t.Dimension, t.ActedUpon, row.Counts})
	}
	return json.Marshal(out)
}

// section is one type of test in the plain table, with its columns.
type section struct {
	kind    Type
	title   string
	columns []string
	cells   func(c Counts) []int
}

var sections = []section{
	{Validation, "Validations", []string{"compliant", "not compliant", "prerequisites not met"}, func(c Counts) []int {
		return []int{c.Compliant, c.NotCompliant, c.InternalUnmet + c.ExternalUnmet}
	}},
	{Issue, "Issues", []string{"no issue", "potential issue", "prerequisites not met"}, func(c Counts) []int {
		return []int{c.NotIssue, c.PotentialIssue, c.InternalUnmet + c.ExternalUnmet}
	}},
	{Measure, "Measures", []string{"measured", "prerequisites not met"}, func(c Counts) []int {
		return []int{c.Measured, c.InternalUnmet + c.ExternalUnmet}
	}},
	{Amendment, "Amendments", []string{"nothing proposed", "change proposed", "value proposed", "prerequisites not met"}, func(c Counts) []int {
		return []int{c.NotAmended, c.Amended, c.FilledIn, c.InternalUnmet + c.ExternalUnmet}
	}},
}

// WriteText writes the report as a plain table, one line a test.
func (r *Report) WriteText(w io.Writer) error {
	rows := r.Rows()
	width := 0
	for _, row := range rows {
		width = max(width, len(row.Test.Label))
	}
	var b strings.Builder
	validations := 0
	for _, row := range rows {
		if row.Test.Type == Validation {
			validations++
		}
	}
	fmt.Fprintf(&b, "Biodiversity Data Quality tests (TDWG) of %s\n", plural(r.records, "record"))
	if failed := len(r.Failed()); failed == 0 {
		fmt.Fprintf(&b, "No record fails any of the %d validations that apply to it.\n", validations)
	} else {
		fmt.Fprintf(&b, "%d of the %d validations are failed by some record.\n", failed, validations)
	}
	b.WriteString("\"Prerequisites not met\" counts records that do not state what the test needs.\n")
	for _, s := range sections {
		fmt.Fprintf(&b, "\n%-*s", width, s.title)
		for _, column := range s.columns {
			fmt.Fprintf(&b, "  %s", column)
		}
		b.WriteByte('\n')
		for _, row := range rows {
			if row.Test.Type != s.kind {
				continue
			}
			fmt.Fprintf(&b, "%-*s", width, row.Test.Label)
			for i, n := range s.cells(row.Counts) {
				fmt.Fprintf(&b, "  %*d", len(s.columns[i]), n)
			}
			b.WriteByte('\n')
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
