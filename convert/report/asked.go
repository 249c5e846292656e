package report

import "slices"

// Asked says whether the set meets what the receiving scheme asks for.
type Asked struct {
	Scheme string `json:"scheme,omitempty"`
	// Records is how many records there are, Met how many of them meet
	// everything, HeldOtherwise how many of those are held all the same.
	Records       int           `json:"records"`
	Met           int           `json:"met"`
	HeldOtherwise int           `json:"held_for_other_reasons"`
	Requirements  []Requirement `json:"requirements"`
	// InTheWay are the causes why records are held, most frequent first.
	InTheWay []Cause `json:"in_the_way"`
}

// Requirement is one thing asked for, and how many records meet it.
type Requirement struct {
	Asks string `json:"asks"`
	Met  int    `json:"met"`
}

// Cause is one cause why records are held.
type Cause struct {
	Check string `json:"check"`
	// Says is what one of the cases says.
	Says string `json:"says,omitempty"`
	// Cases is how many different cases there are, Records how many records
	// they concern.
	Cases   int `json:"cases"`
	Records int `json:"records"`
}

// WithoutWords is the same without what single cases say, which may quote what
// is private.
func (a *Asked) WithoutWords() *Asked {
	if a == nil {
		return nil
	}
	told := *a
	told.InTheWay = slices.Clone(a.InTheWay)
	for i := range told.InTheWay {
		told.InTheWay[i].Says = ""
	}
	return &told
}
