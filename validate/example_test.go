package validate_test

import (
	"fmt"

	"fieldfare/dwc"
	"fieldfare/validate"
)

func ExampleSet() {
	moth := dwc.Occurrence{ScientificName: "Agrotis exclamationis", VernacularName: "Heart and Dart", EventDate: "2021-06-12", Locality: "Sallowmere Reserve",
		DecimalLatitude: "52.4121", DecimalLongitude: "0.1822", RecordedBy: "Ines Calloway", OccurrenceStatus: "present"}
	first, second, other := moth, moth, moth
	first.IndividualCount, second.IndividualCount = "4", "9"
	other.ScientificName, other.VernacularName = "Phalera bucephala", "Buff-tip"
	records := []dwc.Occurrence{first, other, second}

	set := validate.NewSet()
	defer set.Close()
	entries := make([]validate.Entry, len(records))
	for i := range records {
		facts := validate.FactsOf(&records[i])
		entries[i] = validate.Entry{N: i, Row: i + 2, Content: [16]byte{byte(i)}, Occurrence: &records[i], Facts: &facts}
		set.Observe(&entries[i])
	}
	if err := set.Settle(); err != nil {
		fmt.Println(err)
		return
	}
	where := func(_, row int) string { return fmt.Sprintf("row %d", row) }
	for i := range entries {
		for _, finding := range set.Findings(&entries[i], where) {
			fmt.Println(where(0, entries[i].Row), finding.State, finding.Code)
			fmt.Println(finding.Message)
		}
	}
	// Output:
	// row 4 query near-duplicate
	// Heart and Dart is recorded twice on one date at Sallowmere Reserve, here and at row 2, with a count of 4 there and 9 here. If it is one observation, leave one row out; if there were two, answer keep.
}

func ExampleChecks() {
	for _, c := range validate.Checks() {
		if c.When == validate.OfSet && c.Name == "two-places-at-once" {
			fmt.Println(c.Asks, c.State)
			fmt.Println(c.Source)
		}
	}
	// Output:
	// Is a person at places too far apart on one night or day? query
	// common practice, no source: 50 km for a night, 150 km for a day
}
