package when

import "fieldfare/convert/reading"

// Explain says in one or more plain sentences how the date was understood, or
// why it was not.
func (r Reading) Explain() string {
	switch {
	case r.State == reading.Held, r.Code != "":
		return r.Message
	}
	understood := "The " + ordinal(r.Start.Day) + " of " + monthNames[max(r.Start.Month, 1)-1] + " " + r.Start.String()[:4] + "."
	switch {
	case r.Night && r.End.Days()-r.Start.Days() == 1:
		understood = "The night of " + nightWords(r.Start, r.End) + "."
	case r.Start != r.End:
		understood = "From " + r.Start.Words() + " to " + r.End.Words() + "."
	}
	switch {
	case r.Time != "" && r.EndTime != "":
		understood = understood[:len(understood)-1] + ", " + r.Time + " to " + r.EndTime + "."
	case r.Time != "":
		understood = understood[:len(understood)-1] + ", " + r.Time + "."
	}
	if r.Message != "" {
		return understood + " " + r.Message
	}
	return understood
}
