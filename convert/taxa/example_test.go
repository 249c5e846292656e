package taxa_test

import (
	"fmt"

	"fieldfare/convert/taxa"
)

func ExampleMatcher_Match() {
	m := taxa.NewIndex(taxa.Starter()).NewMatcher()
	for _, name := range []string{"Heart & Dart", "Hyloicus pinastri", "Grey/Dark Dagger", "Noctua cf. comes", "Peacock"} {
		r := m.Match(taxa.Written{Name: name}, taxa.Context{})
		fmt.Printf("%s: %s", name, r.State)
		if r.Taxon != nil {
			fmt.Printf(", %s", r.Taxon.FullName())
		}
		if r.Qualifier != "" {
			fmt.Printf(", qualified %q", r.Qualifier)
		}
		fmt.Println()
	}
	// Output:
	// Heart & Dart: fair, Agrotis exclamationis (Linnaeus, 1758)
	// Hyloicus pinastri: fair, Sphinx pinastri Linnaeus, 1758
	// Grey/Dark Dagger: fair, Acronicta psi/tridens (Linnaeus, 1758)/(Denis & Schiffermüller, 1775)
	// Noctua cf. comes: fair, Noctua, qualified "cf. comes"
	// Peacock: held
}
