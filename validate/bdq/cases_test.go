package bdq_test

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math/big"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/testdata/need"
	"fieldfare/validate/bdq"
)

// today is the day on which the tests of this package are run, whatever the
// calendar says.
var today = time.Date(2026, time.June, 30, 0, 0, 0, 0, time.UTC)

// TestCases runs the standard's own cases: rows of terms with the response
// that each test must give. FIELDFARE_BDQ_CASES names the file; without it the
// one under FIELDFARE_REFERENCE is read (Biodiversity Data Quality Interest
// Group of TDWG, CC BY 4.0).
func TestCases(t *testing.T) {
	path := os.Getenv("FIELDFARE_BDQ_CASES")
	if path == "" {
		path = need.ReferenceFile(t, "bdq/cases.csv")
	}
	cases := readCases(t, path)
	require.NotEmpty(t, cases, "no case in %s", path)

	type tally struct{ passed, all int }
	byTest := map[string]*tally{}
	known := map[string]bool{}
	for _, test := range bdq.Tests() {
		byTest[test.GUID], known[test.GUID] = &tally{}, true
	}
	var excused []string
	passed := 0
	for _, c := range cases {
		if !known[c.test] {
			t.Errorf("line %s: no test %q (%s)", c.line, c.test, c.label)
			continue
		}
		got := c.run(t)
		count := byTest[c.test]
		count.all++
		difference := c.differs(got)
		if difference == "" {
			count.passed++
			passed++
		}
		switch {
		case c.issue != "":
			agrees := "agrees"
			if difference != "" {
				agrees = "differs: " + difference
			}
			excused = append(excused, fmt.Sprintf("line %s %s: %s; marked: %s", c.line, c.label, agrees, c.issue))
		case difference != "":
			t.Errorf("line %s %s %v: %s; here: %s; expected because: %s", c.line, c.label, c.terms, difference, got.Comment(), c.comment)
		}
	}
	for _, test := range bdq.Tests() {
		if count := byTest[test.GUID]; count.all > 0 {
			t.Logf("%3d of %3d  %s", count.passed, count.all, test.Label)
		}
	}
	t.Logf("%d of %d cases agree", passed, len(cases))
	for _, line := range excused {
		t.Log("marked in the file as having an issue: " + line)
	}
}

// standardCase is one row of a file of cases.
type standardCase struct {
	line, test, label       string
	status, result, comment string
	issue                   string
	terms                   bdq.Map
	parameters              map[string]string
}

func (c standardCase) run(t *testing.T) bdq.Response {
	suite, err := bdq.New(bdq.Settings{Today: today, Parameters: c.parameters})
	require.NoError(t, err, "line %s", c.line)
	response, ok := suite.Run(c.test, c.terms)
	require.True(t, ok)
	return response
}

// differs says how a response differs from the one that the case wants.
func (c standardCase) differs(got bdq.Response) string {
	if string(got.Status) != c.status {
		return fmt.Sprintf("status %s, not %s", got.Status, c.status)
	}
	if !sameResult(c.result, got.ResultText()) {
		return fmt.Sprintf("result %s, not %s", got.ResultText(), c.result)
	}
	return ""
}

// sameResult compares results by what they say: changes by term and value in
// any order, numbers as numbers. NOT_REPORTED says that there is none.
func sameResult(want, got string) bool {
	want = strings.TrimSpace(want)
	if want == "NOT_REPORTED" {
		want = ""
	}
	if want == got {
		return true
	}
	wantChanges, okWant := changes(want)
	gotChanges, okGot := changes(got)
	if !okWant || !okGot {
		return sameValue(want, got)
	}
	if len(wantChanges) != len(gotChanges) {
		return false
	}
	for term, value := range wantChanges {
		other, stated := gotChanges[term]
		if !stated || !sameValue(value, other) {
			return false
		}
	}
	return true
}

func sameValue(a, b string) bool {
	if a == b {
		return true
	}
	x, okX := new(big.Rat).SetString(a)
	y, okY := new(big.Rat).SetString(b)
	return okX && okY && x.Cmp(y) == 0
}

var pair = regexp.MustCompile(`"?([A-Za-z]+:[A-Za-z]+)"?\s*[=:]\s*(?:"([^"]*)"|([^",;|}\s]+))`)

// changes reads what an amendment proposes: a JSON object, or pairs such as
// dwc:month="1" parted by commas, semicolons or bars.
func changes(s string) (map[string]string, bool) {
	out := map[string]string{}
	var object map[string]any
	if json.Unmarshal([]byte(s), &object) == nil && len(object) > 0 {
		for term, value := range object {
			out[strings.TrimSpace(term)] = strings.TrimSpace(fmt.Sprint(value))
		}
		return out, true
	}
	for _, m := range pair.FindAllStringSubmatch(s, -1) {
		out[m[1]] = m[2] + m[3]
	}
	return out, len(out) > 0
}

func TestSameResult(t *testing.T) {
	for _, c := range []struct {
		want, got string
		same      bool
	}{
		{`{"dwc:month":"3","dwc:year":"2007"}`, `{"dwc:year":"2007","dwc:month":"3"}`, true},
		{`{"dwc:month":"3"}`, `{"dwc:year":"2007","dwc:month":"3"}`, false},
		{`{"dwc:month":"3"}`, `{"dwc:day":"3"}`, false},
		{`dwc:month="1"`, `{"dwc:month":"1"}`, true},
		{`dwc:minimumDepthInMeters="18.2880", dwc:maximumDepthInMeters="27.432"`, `{"dwc:minimumDepthInMeters":"18.288","dwc:maximumDepthInMeters":"27.432"}`, true},
		{`{"dwc:eventDate":"2021-10"}`, `{"dwc:eventDate":"2021-11"}`, false},
		{"86400", "86400.0", true},
		{"NOT_REPORTED", "", true},
		{"COMPLIANT", "NOT_COMPLIANT", false},
		{"COMPLIANT", "", false},
	} {
		assert.Equal(t, c.same, sameResult(c.want, c.got), "%s and %s", c.want, c.got)
	}
}

// TestReadCases: a file of cases in another order of columns, with a byte order
// mark, short rows and values that do not print.
func TestReadCases(t *testing.T) {
	path := filepath.Join(t.TempDir(), "cases.csv")
	text := "\ufeffLabel,dwc:country,GUID,Response.status,Response.result,bdqval:sourceAuthority,other\r\n" +
		"VALIDATION_COUNTRY_NOTEMPTY,[non-printing characters],,RUN_HAS_RESULT,NOT_COMPLIANT\r\n" +
		"x,\x00 \xff,6CE2B2B4-6AFE-4D13-82A0-390D31ADE01C , RUN_HAS_RESULT,COMPLIANT,here,there,anywhere\r\n,,\r\n"
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	cases := readCases(t, path)
	require.Len(t, cases, 2)
	for _, c := range cases {
		assert.Equal(t, "6ce2b2b4-6afe-4d13-82a0-390d31ade01c", c.test)
		assert.Empty(t, c.differs(c.run(t)))
	}
	assert.Equal(t, "here", cases[1].parameters["sourceAuthority"])
}

// placeholder is how a file of cases writes a value that has nothing but
// characters that do not print.
var placeholder = regexp.MustCompile(`(?i)\[\s*(?:non|un)[- ]?prin\w*\s+char\w*\s*\]`)

const nonPrinting = "\x00\x02\x07\b\t\n\v\f\r\x1b\x1f "

// readCases takes columns by their heading, in any order, and does not mind
// quotes, short rows, a byte order mark or columns that it does not know.
func readCases(t *testing.T, path string) []standardCase {
	data, err := os.ReadFile(path)
	if errors.Is(err, os.ErrNotExist) && !filepath.IsAbs(path) {
		data, err = os.ReadFile(filepath.Join("..", "..", path)) // from the module's folder
	}
	require.NoError(t, err)
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if !utf8.Valid(data) {
		data = bytes.ToValidUTF8(data, []byte("\uFFFD"))
	}
	reader := csv.NewReader(bytes.NewReader(data))
	reader.LazyQuotes = true
	reader.FieldsPerRecord = -1
	header, err := reader.Read()
	require.NoError(t, err)
	guids := map[string]string{}
	for _, test := range bdq.Tests() {
		guids[test.Label] = test.GUID
	}
	var cases []standardCase
	for {
		row, err := reader.Read()
		if errors.Is(err, io.EOF) {
			return cases
		}
		require.NoError(t, err)
		c := standardCase{terms: bdq.Map{}, parameters: map[string]string{}}
		for i, value := range row {
			if i >= len(header) {
				break
			}
			name := strings.TrimSpace(header[i])
			tidy := strings.TrimSpace(value)
			switch name {
			case "LineNumber":
				c.line = tidy
			case "GUID":
				c.test = strings.ToLower(tidy)
			case "Label":
				c.label = tidy
			case "Response.status":
				c.status = tidy
			case "Response.result":
				c.result = tidy
			case "Response.comment":
				c.comment = tidy
			case "IssuesWithThisRow":
				c.issue = tidy
			default:
				prefix, term, qualified := strings.Cut(name, ":")
				if !qualified {
					continue
				}
				value = placeholder.ReplaceAllLiteralString(value, nonPrinting)
				if prefix == "bdqval" || prefix == "bdq" {
					c.parameters[term] = value
				} else if value != "" {
					c.terms[term] = value
				}
			}
		}
		if c.test == "" {
			c.test = guids[c.label]
		}
		if c.test != "" || c.status != "" {
			cases = append(cases, c)
		}
	}
}

// TestTable compares the table of tests with the standard's own list.
func TestTable(t *testing.T) {
	file, err := os.Open(need.ReferenceFile(t, "bdq/tests.csv"))
	require.NoError(t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	column := map[string]int{}
	for i, name := range rows[0] {
		column[strings.TrimPrefix(name, "\ufeff")] = i
	}
	tests := map[string]bdq.Test{}
	for _, test := range bdq.Tests() {
		tests[test.GUID] = test
	}
	assert.Len(t, tests, len(rows)-1)
	for _, row := range rows[1:] {
		at := func(name string) string { return strings.TrimSpace(row[column[name]]) }
		test, ok := tests[at("term_localName")]
		if !assert.True(t, ok, at("Label")) {
			continue
		}
		assert.Equal(t, at("Label"), test.Label)
		assert.Equal(t, at("Type"), string(test.Type), test.Label)
		assert.Equal(t, at("Dimension"), test.Dimension, test.Label)
		assert.Equal(t, at("InformationElement:ActedUpon"), strings.Join(test.ActedUpon, ","), test.Label)
		assert.Equal(t, at("InformationElement:Consulted"), strings.Join(test.Consulted, ","), test.Label)
		assert.Equal(t, at("Parameters"), strings.Join(test.Parameters, ","), test.Label)
		external := strings.Contains(at("ExpectedResponse"), "EXTERNAL_PREREQUISITES_NOT_MET")
		assert.Equal(t, external, test.Authority != "", test.Label)
	}
}
