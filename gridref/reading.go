package gridref

// Reading is what a text was read as: a square of a grid, or a place given by
// latitude and longitude.
type Reading struct {
	// Square is the square read; its Grid is NoGrid where the text was
	// latitude and longitude.
	Square Square
	// Place is the place read from latitude and longitude, with the
	// uncertainty stated beside it or else derived from the figures given.
	Place Point
	// Pair is the exact position where the text was a full easting and
	// northing, whose Square is the square metre around it; its Grid is
	// NoGrid otherwise.
	Pair Plane
	// Stated is the uncertainty written beside the place ("± 50 m"), in
	// metres; 0 where there was none. Where the place was only called
	// approximate it is three times the uncertainty of the place as written,
	// which takes in the eight squares around it (common practice, no source).
	Stated float64
	// Doubt is why somebody should look; its Code is empty for a fair reading.
	Doubt Doubt
	// Note is something a fair reading should still tell.
	Note string

	osgb36 bool // latitude and longitude were on OSGB36
}

// Doubt says why a reading is likely and not certain.
type Doubt struct {
	// Code is a stable name of what was noticed, one of the constants of this
	// package: [LettersMissing].
	Code string
	// Message is plain sentences: what was found, what it was read as and what
	// would settle it.
	Message string
}

// Fault is the error of every parser here: a text that could not be read.
// [errors.As] finds it.
type Fault struct {
	// Code is a stable name of what is wrong, as in [Doubt].
	Code string
	// Message is plain sentences: what was found and what would settle it.
	Message string
	// Suggestions are possible readings, likeliest first, none of them applied.
	Suggestions []string
}

// Error returns the message.
func (f *Fault) Error() string { return f.Message }

// Codes of doubts and faults.
const (
	Blank          = "no-reference"       // nothing written
	Unreadable     = "not-a-reference"    // no kind of reference was recognised
	OddFigures     = "odd-figures"        // an odd count of figures
	UnevenFigures  = "uneven-figures"     // easting and northing of different lengths
	TooManyFigures = "too-many-figures"   // finer than a metre
	NoSuchSquare   = "no-such-square"     // letters that no grid has
	OpenSea        = "open-sea"           // a 100 km square without land
	Lookalike      = "letter-for-figure"  // O for 0, I or l for 1, and the reverse
	MeantIrish     = "irish-grid-meant"   // only makes sense on the Irish Grid
	LettersMissing = "letters-missing"    // figures without 100 km letters
	PairUnits      = "pair-units"         // eastings and northings not in metres
	PairRounded    = "pair-rounded"       // a full pair in whole kilometres
	PairAmbiguous  = "pair-ambiguous"     // a pair with several readings
	Swapped        = "swapped"            // the two values in the wrong order
	SignLost       = "sign-lost"          // east for west, south for north
	OutOfRange     = "out-of-range"       // degrees, minutes or metres that cannot be
	HalfMissing    = "half-missing"       // one value of two
	Spreadsheet    = "spreadsheet-damage" // scientific notation, a lost leading zero
	StrayDate      = "stray-date"         // a date beside the reference
	DateOnly       = "date-not-reference" // a date where a reference should be
	Postcode       = "postcode"           // a postcode where a reference should be
	OtherWords     = "other-words"        // other words beside the reference
	TwoReferences  = "several-references" // more than one reference
	NoSuchTetrad   = "no-such-tetrad"     // O, or a letter that disagrees
	Doubted        = "marked-doubtful"    // a question mark beside it
	WholeDegrees   = "whole-degrees"      // degrees without decimals or minutes
	Direction      = "direction-unclear"  // N, S, E and W that disagree or lack
	DecimalComma   = "decimal-comma"      // commas that may also separate
	ZoneMissing    = "zone-missing"       // UTM without its zone
	WrongZone      = "zone-disagrees"     // UTM band and northing disagree
	NumericSquare  = "square-in-figures"  // the 100 km square in figures
	LettersLast    = "letters-last"       // the letters behind the figures
	Beside         = "near-or-centre"     // near a reference, or the centre of a place
	OldDatum       = "datum-osgb36"       // latitude and longitude on OSGB36
)

// Geographic reports whether the text was latitude and longitude.
func (r Reading) Geographic() bool { return r.Square.Grid == NoGrid }

// Centre returns the place on WGS84 with its uncertainty, whichever way it was
// written. An uncertainty stated beside a square counts where it is larger.
func (r Reading) Centre() Point {
	if r.Geographic() {
		return r.Place
	}
	p := r.Square.Point()
	p.Uncertainty = max(p.Uncertainty, r.Stated)
	return p
}

func query(r Reading, code, message string) Reading {
	if r.Doubt.Code != "" {
		// The first doubt names the reading; the others add their sentence.
		r.Doubt.Message += " " + message
		return r
	}
	r.Doubt = Doubt{code, message}
	return r
}

func fault(code, message string, suggestions ...string) (Reading, error) {
	return Reading{}, &Fault{code, message, suggestions}
}
