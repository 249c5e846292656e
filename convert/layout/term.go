package layout

// MeaningOf returns the meaning that covers a Darwin Core term, given by its
// name; Term where none does.
func MeaningOf(term string) Meaning {
	if m, ok := termMeanings[term]; ok {
		return m
	}
	return Term
}
