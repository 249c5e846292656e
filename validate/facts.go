package validate

// Facts are what has been read of a record, as numbers, so that no check has
// to read a text again. They travel beside the Occurrence.
type Facts struct {
	// Start and End are the first and last day, counted from 1970-01-01;
	// meaningful where Dated.
	Start, End int32
	Dated      bool
	// Night: the date is a night, from the evening of Start.
	Night bool
	// Latitude and Longitude are the centre in degrees (WGS84), Radius the
	// uncertainty in metres, SquareSize the side of the recorded square in
	// metres (0 for a point); meaningful where Placed.
	Latitude, Longitude float64
	Radius              float32
	SquareSize          int32
	Placed              bool
	// Count is the number of individuals; meaningful where Counted.
	Count   int32
	Counted bool
	// Reference is the recorded square in its grid's own form ("TL48J"); empty
	// for a point and where there is none.
	Reference string
	// Blur is the side in metres of the square to which the record must be
	// blurred before it leaves; 0 where it need not be.
	Blur int32
	// Light: the record was made at a light trap.
	Light bool
	// AtSea: there is no land near the place.
	AtSea bool
	// Specimen: the notebook names a specimen that was kept.
	Specimen bool
	Taxon    TaxonFacts
}

// TaxonFacts are what the taxon list says of the record's taxon.
type TaxonFacts struct {
	// Listed: the name was found on the list.
	Listed bool
	// Flight has a bit set, from bit 0 for January, for each month in which
	// adults fly; 0 where the list does not say.
	Flight uint16
	// Eggs, Larvae and Pupae are the same for the months in which these are
	// found.
	Eggs, Larvae, Pupae uint16
	// Most is the highest count that the list expects, 0 where it does not
	// say.
	Most int32
	// NeedsNote and NeedsSpecimen: not accepted without one.
	NeedsNote, NeedsSpecimen bool
	// Number is the taxon's checklist number where it is a whole one, else 0.
	Number int32
}
