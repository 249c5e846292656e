package bdq_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fieldfare/validate/bdq"
)

// allTerms are the information elements of all tests, by local name.
func allTerms() []string {
	var names []string
	seen := map[string]bool{}
	for _, test := range bdq.Tests() {
		for _, list := range [][]string{test.ActedUpon, test.Consulted} {
			for _, term := range list {
				_, name, _ := strings.Cut(term, ":")
				if !seen[name] {
					seen[name] = true
					names = append(names, name)
				}
			}
		}
	}
	return names
}

// checkLegal runs every test on a record and requires of each answer what the
// standard requires of its type, and of each proposal that it changes
// something and that the test is content with it.
func checkLegal(t *testing.T, suite *bdq.Suite, record bdq.Map) {
	for test, got := range suite.RunAll(record) {
		legal := false
		switch got.Status {
		case bdq.HasResult:
			switch test.Type {
			case bdq.Validation:
				legal = got.Result == bdq.Compliant || got.Result == bdq.NotCompliant
			case bdq.Issue:
				legal = got.Result == bdq.PotentialIssue || got.Result == bdq.NotIssue
			case bdq.Measure:
				legal = got.Result != "" && strings.Trim(got.Result, "0123456789.") == ""
			}
		case bdq.InternalUnmet, bdq.ExternalUnmet:
			legal = got.Result == ""
		case bdq.NotAmended:
			legal = test.Type == bdq.Amendment && len(got.Changes) == 0
		case bdq.Amended, bdq.FilledIn:
			legal = test.Type == bdq.Amendment && len(got.Changes) > 0
		}
		require.True(t, legal, "%s of %q: %s %s", test.Label, record, got.Status, got.ResultText())
		require.NotEmpty(t, got.Comment(), test.Label)
		if len(got.Changes) == 0 {
			continue
		}
		changed := bdq.Map{}
		for term, value := range record {
			changed[term] = value
		}
		for _, c := range got.Changes {
			require.Contains(t, strings.Join(test.ActedUpon, " "), c.Term, test.Label)
			_, name, _ := strings.Cut(c.Term, ":")
			require.NotEqual(t, record[name], c.Value, test.Label)
			changed[name] = c.Value
		}
		again, _ := suite.Run(test.GUID, changed)
		require.Empty(t, again.Changes, "%s of %q proposes %s and then %s", test.Label, record, got.ResultText(), again.ResultText())
		if validation := strings.Replace(test.Label, "AMENDMENT_", "VALIDATION_", 1); strings.HasSuffix(test.Label, "_STANDARDIZED") {
			after, ok := suite.Run(strings.TrimSuffix(validation, "IZED"), changed)
			require.True(t, ok, test.Label)
			require.Equal(t, bdq.Compliant, after.Result, "%s of %q proposes %s", test.Label, record, got.ResultText())
		}
	}
}

// FuzzTerms puts any values into any terms.
func FuzzTerms(f *testing.F) {
	f.Add(uint8(0), "2021-28-10", uint8(1), "52.5")
	f.Add(uint8(20), "41 05 54S 121d 05' 34\"W", uint8(7), "10-15 ftm")
	f.Add(uint8(33), "urn:lsid:ipni.org:names:68749-2", uint8(60), "Hakea decurrens ssp. physocarpa W.R.Barker")
	f.Add(uint8(12), "366", uint8(13), "1981-12-30/1982-01-03")
	f.Add(uint8(44), "CC BY-NC 4.0", uint8(45), "Human obs")
	f.Add(uint8(3), "\x00\u00a0", uint8(4), "WGS84 (EPSG:4326)")
	suite, err := bdq.New(bdq.Settings{Today: today})
	require.NoError(f, err)
	names := allTerms()
	f.Fuzz(func(t *testing.T, first uint8, a string, second uint8, b string) {
		checkLegal(t, suite, bdq.Map{names[int(first)%len(names)]: a, names[int(second)%len(names)]: b})
		// The same value in every term reaches every test.
		all := bdq.Map{}
		for _, name := range names {
			all[name] = a
		}
		checkLegal(t, suite, all)
	})
}
