package validate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fieldfare/dwc"
	"fieldfare/validate"
)

// TestCheckerRemembersNothingOfARecord: the same is found in a record whatever
// was checked before, by a checker that remembers the words of its texts.
func TestCheckerRemembersNothingOfARecord(t *testing.T) {
	var records []dwc.Occurrence
	for _, remark := range []string{"", "at sugar", "dead on the path", "dead nettle", "released", "by day", "by day, the next day", "possibly a second brood", "could be another", strings.Repeat("worn ", 60) + "dead"} {
		for _, o := range []dwc.Occurrence{{}, {Vitality: "dead"}, {BasisOfRecord: "LivingSpecimen"}, {OccurrenceStatus: "absent"}, {VerbatimEventDate: "afternoon of 3 May"}, {FieldNotes: remark}} {
			o.OccurrenceRemarks, o.SamplingProtocol = remark, "light trap"
			records = append(records, o)
		}
	}
	asked := &validate.Asks{CountNeeded: true, Scheme: "The atlas"}
	var again validate.RecordChecker
	found := 0
	for range 2 {
		for i := range records {
			for _, light := range []bool{true, false} {
				for _, asks := range []*validate.Asks{nil, asked, {}} {
					f := validate.Facts{Light: light}
					want := new(validate.RecordChecker).Check(&records[i], &f, asks)
					assert.Equal(t, want, again.Check(&records[i], &f, asks), "%+v", records[i].OccurrenceRemarks)
					found += len(want)
				}
			}
		}
	}
	assert.NotZero(t, found)
}
