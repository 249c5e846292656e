package layout

// Probe answers what a text looks like. Survey asks it about sample cells
// only, beside its own plain scanners: a Probe that knows the taxon list, the
// places and the people makes the reading of unlabelled columns surer. A nil
// Probe is allowed.
type Probe interface {
	LooksLikeDate(text string) bool
	LooksLikeGridRef(text string) bool
	LooksLikeCount(text string) bool
	// KnownTaxon reports whether the text is a name on the taxon list, of any
	// kind; KnownPlace and KnownPerson likewise for the lists of places and
	// people.
	KnownTaxon(text string) bool
	KnownPlace(text string) bool
	KnownPerson(text string) bool
	// SameTaxon reports whether two names are of one taxon; known is false
	// where either is not on the list.
	SameTaxon(a, b string) (same, known bool)
}

// plain is the Probe of a run without lists.
type plain struct{}

func (plain) LooksLikeDate(string) bool             { return false }
func (plain) LooksLikeGridRef(string) bool          { return false }
func (plain) LooksLikeCount(string) bool            { return false }
func (plain) KnownTaxon(string) bool                { return false }
func (plain) KnownPlace(string) bool                { return false }
func (plain) KnownPerson(string) bool               { return false }
func (plain) SameTaxon(_, _ string) (same, ok bool) { return false, false }
