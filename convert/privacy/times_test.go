package privacy_test

import (
	"testing"

	"fieldfare/convert/privacy"
	"fieldfare/convert/spool"
	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
)

// TestTimesStayAtHome: the hour at which a garden's trap was lit is that of no
// blurred record, so that it links the garden with no other record.
func TestTimesStayAtHome(t *testing.T) {
	for date, want := range map[string]string{
		"2021-06-12":                          "2021-06-12",
		"2021-06-12/2021-06-13":               "2021-06-12/2021-06-13",
		"2021-06-12T21:40":                    "2021-06-12",
		"2021-06-12T21:40Z/2021-06-13T04:10Z": "2021-06-12/2021-06-13",
		"2021-06-12T21:40:00+01:00/2021-06-12T23:10:00+01:00": "2021-06-12",
		"2021-06-12T21:40/23:10":                              "2021-06-12",
		"2021-06-12T21:40-01:00/23:10-01:00":                  "2021-06-12",
	} {
		r := spool.Record{Occurrence: dwc.Occurrence{EventDate: date, EventTime: "21:40/23:15", ScientificName: "Phalera bucephala"}}
		r.Facts.Blur = 2000
		var o dwc.Occurrence
		privacy.Blur(&o, &r)
		assert.Equal(t, want, o.EventDate, date)
		assert.Empty(t, o.EventTime)
		assert.Contains(t, o.InformationWithheld, "time of day")
	}
}
