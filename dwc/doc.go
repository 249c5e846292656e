// Package dwc is Darwin Core as Fieldfare needs it: the terms, the Occurrence
// and Event records made of them, archives of such records, and the metadata
// that goes with a dataset.
//
// It implements the Darwin Core quick reference (https://dwc.tdwg.org/terms/),
// the Darwin Core text guide (https://dwc.tdwg.org/text/) and, for dataset
// metadata, Ecological Metadata Language 2.2.0 (https://eml.ecoinformatics.org/).
package dwc
