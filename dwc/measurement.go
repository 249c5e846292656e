package dwc

// Measurement is one row of a MeasurementOrFact extension: a measurement of,
// or fact about, the core record it belongs to, or the occurrence that
// OccurrenceID names where the core is an event.
type Measurement struct {
	EventID                   string `dwc:"eventID"`
	OccurrenceID              string `dwc:"occurrenceID"`
	MeasurementID             string `dwc:"measurementID"`
	ParentMeasurementID       string `dwc:"parentMeasurementID"`
	MeasurementType           string `dwc:"measurementType"`
	VerbatimMeasurementType   string `dwc:"verbatimMeasurementType"`
	MeasurementValue          string `dwc:"measurementValue"`
	MeasurementAccuracy       string `dwc:"measurementAccuracy"`
	MeasurementUnit           string `dwc:"measurementUnit"`
	MeasurementDeterminedBy   string `dwc:"measurementDeterminedBy"`
	MeasurementDeterminedDate string `dwc:"measurementDeterminedDate" validate:"omitempty,iso_date"`
	MeasurementMethod         string `dwc:"measurementMethod"`
	MeasurementRemarks        string `dwc:"measurementRemarks"`
}

// RowType returns RowMeasurement.
func (m *Measurement) RowType() string { return RowMeasurement }

// Field returns the text of the i-th term of TermsOf(RowMeasurement). It panics
// where there is none.
func (m *Measurement) Field(i int) *string { return text(m, i) }

// Get returns the value of a term by name, and "" for a term that the record
// does not have.
func (m *Measurement) Get(term string) string { return get(&measurementShape, m, term) }

// Set gives a term, by name, a value. It returns false for a term that the
// record does not have.
func (m *Measurement) Set(term, value string) bool { return set(&measurementShape, m, term, value) }
