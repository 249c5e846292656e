package convert

import (
	"fmt"
	"slices"

	"fieldfare/convert/project"
	"fieldfare/convert/taxa"
	"fieldfare/convert/when"
	"fieldfare/dwc"
	"fieldfare/validate"
)

// settleAsks makes the checks' form of what the scheme asks for. Terms that
// every record is given on its way out are not asked of the notebooks.
func (s *settings) settleAsks() error {
	a := &s.project.Asks
	asks := validate.Asks{
		Scheme: a.Scheme, SquareMetres: int32(a.SquareSize), Days: int32(a.DateDays),
		CountNeeded: a.CountNeeded, ViceCounty: a.ViceCounty,
	}
	for _, written := range a.Ranks {
		rank := taxa.RankOf(written)
		if !taxa.IsRank(rank) {
			s.listProblems = append(s.listProblems, fmt.Sprintf("The project file asks for names of the rank “%s”, which Fieldfare does not know. Check its spelling.", written))
		}
		asks.Ranks = append(asks.Ranks, rank)
	}
	var err error
	if asks.From, asks.HasFrom, err = s.askedDay("from", a.From, false); err != nil {
		return err
	}
	if asks.To, asks.HasTo, err = s.askedDay("to", a.To, true); err != nil {
		return err
	}
	if asks.HasFrom && asks.HasTo && asks.From > asks.To {
		return &project.Error{File: s.project.Path, Problem: fmt.Sprintf("asks.from = %q is later than asks.to = %q, so no record could meet it. Check the two", a.From, a.To)}
	}
	var given dwc.Occurrence
	s.fillDataset(&given)
	for _, term := range a.Terms {
		switch {
		case !slices.Contains(dwc.Terms(), term):
			return &project.Error{File: s.project.Path, Problem: fmt.Sprintf("asks.terms: %q is no Darwin Core term of a record. Write it as the standard does, such as \"individualCount\"", term)}
		case term == "occurrenceID" || term == "eventID" || given.Get(term) != "":
		default:
			asks.Terms = append(asks.Terms, term)
		}
	}
	s.asks = asks
	return nil
}

// askedDay reads an end of the period asked for: a day, a month or a year.
func (s *settings) askedDay(setting, text string, last bool) (day int32, found bool, err error) {
	if text == "" {
		return 0, false, nil
	}
	r := when.Read(text, when.Options{})
	if r.EventDate == "" {
		return 0, false, &project.Error{File: s.project.Path, Problem: fmt.Sprintf("asks.%s = %q is no date. Write it as year-month-day, such as 2010-01-01", setting, text)}
	}
	if last {
		return int32(r.End.Days()), true, nil
	}
	return int32(r.Start.Days()), true, nil
}
