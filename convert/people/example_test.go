package people_test

import (
	"fmt"

	"fieldfare/convert/people"
)

func ExampleList_Read() {
	l, _ := people.NewList([]people.Person{
		{Name: "Ines Calloway", Initials: []string{"IC"}},
		{Name: "Tom Achterberg", Initials: []string{"TA"}},
	})
	for _, written := range []string{"IC & TA", "Calloway, I., det. T. Achterberg", "self", "J & M Surtees", "Ines Caloway"} {
		r := l.Read(written, people.Options{Self: "Ines Calloway"})
		fmt.Printf("%s · %s · %q %q\n", written, r.State, people.Join(r.RecordedBy), people.Join(r.IdentifiedBy))
	}
	// Output:
	// IC & TA · fair · "Ines Calloway | Tom Achterberg" ""
	// Calloway, I., det. T. Achterberg · fair · "Ines Calloway" "Tom Achterberg"
	// self · fair · "Ines Calloway" ""
	// J & M Surtees · fair · "J Surtees | M Surtees" ""
	// Ines Caloway · query · "Ines Calloway" ""
}

func ExampleScrub() {
	clean, found := people.Scrub("TF491012, 12 June: ask Tom, 01632 960123, tom@example.org")
	fmt.Printf("%s\n%q\n", clean, found)
	// Output:
	// TF491012, 12 June: ask Tom
	// ["01632 960123" "tom@example.org"]
}
