package tally_test

import (
	"fmt"
	"strings"

	"fieldfare/convert/tally"
)

func ExampleRead() {
	for _, written := range []string{"12", "2m 1f", "3 (1f)", "c.20 larvae", "2 mines", "several", "1 (dead)", "✓", "0", "12 (counted 15?)", "2021"} {
		r := tally.Read(written, tally.Options{})
		fmt.Println(strings.TrimSpace(fmt.Sprint(written, " · ", r.State, " ", r.JSON())))
	}
	// Output:
	// 12 · fair {"individualCount":"12","occurrenceStatus":"present"}
	// 2m 1f · fair [{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"}]
	// 3 (1f) · fair [{"individualCount":"1","sex":"female","occurrenceStatus":"present"},{"individualCount":"2","occurrenceStatus":"present"}]
	// c.20 larvae · fair {"organismQuantity":"c.20","organismQuantityType":"individuals","lifeStage":"larva","occurrenceStatus":"present"}
	// 2 mines · fair {"organismQuantity":"2","organismQuantityType":"mines","lifeStage":"larva","occurrenceStatus":"present","occurrenceRemarks":"mines"}
	// several · fair {"organismQuantity":"several","organismQuantityType":"individuals","occurrenceStatus":"present"}
	// 1 (dead) · fair {"individualCount":"1","vitality":"dead","occurrenceStatus":"present"}
	// ✓ · fair {"occurrenceStatus":"present"}
	// 0 · skipped
	// 12 (counted 15?) · query {"individualCount":"12","occurrenceStatus":"present","occurrenceRemarks":"counted 15?"}
	// 2021 · held
}

func ExampleRead_absence() {
	r := tally.Read("nil", tally.Options{ZeroIsAbsence: true})
	fmt.Println(r.State, r.JSON())
	// Output: fair {"individualCount":"0","occurrenceStatus":"absent"}
}

func ExampleReadSex() {
	fmt.Println(tally.ReadSex("♀").JSON(), tally.ReadSex("2 m, 1 f").JSON())
	// Output: {"sex":"female","occurrenceStatus":"present"} [{"individualCount":"2","sex":"male","occurrenceStatus":"present"},{"individualCount":"1","sex":"female","occurrenceStatus":"present"}]
}
