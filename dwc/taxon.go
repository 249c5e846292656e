package dwc

// Taxon is one name of a checklist: accepted, or a synonym of the name that
// AcceptedNameUsageID identifies.
type Taxon struct {
	TaxonID                  string `dwc:"taxonID"`
	ScientificNameID         string `dwc:"scientificNameID"`
	AcceptedNameUsageID      string `dwc:"acceptedNameUsageID"`
	ParentNameUsageID        string `dwc:"parentNameUsageID"`
	OriginalNameUsageID      string `dwc:"originalNameUsageID"`
	NameAccordingToID        string `dwc:"nameAccordingToID"`
	NamePublishedInID        string `dwc:"namePublishedInID"`
	TaxonConceptID           string `dwc:"taxonConceptID"`
	ScientificName           string `dwc:"scientificName"`
	AcceptedNameUsage        string `dwc:"acceptedNameUsage"`
	ParentNameUsage          string `dwc:"parentNameUsage"`
	OriginalNameUsage        string `dwc:"originalNameUsage"`
	NameAccordingTo          string `dwc:"nameAccordingTo"`
	NamePublishedIn          string `dwc:"namePublishedIn"`
	NamePublishedInYear      string `dwc:"namePublishedInYear"`
	HigherClassification     string `dwc:"higherClassification"`
	Kingdom                  string `dwc:"kingdom"`
	Phylum                   string `dwc:"phylum"`
	Class                    string `dwc:"class"`
	Order                    string `dwc:"order"`
	Superfamily              string `dwc:"superfamily"`
	Family                   string `dwc:"family"`
	Subfamily                string `dwc:"subfamily"`
	Tribe                    string `dwc:"tribe"`
	Subtribe                 string `dwc:"subtribe"`
	Genus                    string `dwc:"genus"`
	GenericName              string `dwc:"genericName"`
	Subgenus                 string `dwc:"subgenus"`
	InfragenericEpithet      string `dwc:"infragenericEpithet"`
	SpecificEpithet          string `dwc:"specificEpithet"`
	InfraspecificEpithet     string `dwc:"infraspecificEpithet"`
	CultivarEpithet          string `dwc:"cultivarEpithet"`
	TaxonRank                string `dwc:"taxonRank"`
	VerbatimTaxonRank        string `dwc:"verbatimTaxonRank"`
	ScientificNameAuthorship string `dwc:"scientificNameAuthorship"`
	VernacularName           string `dwc:"vernacularName"`
	NomenclaturalCode        string `dwc:"nomenclaturalCode"`
	TaxonomicStatus          string `dwc:"taxonomicStatus"`
	NomenclaturalStatus      string `dwc:"nomenclaturalStatus"`
	TaxonRemarks             string `dwc:"taxonRemarks"`
}

// RowType returns RowTaxon.
func (t *Taxon) RowType() string { return RowTaxon }

// Field returns the text of the i-th term of TermsOf(RowTaxon). It panics
// where there is none.
func (t *Taxon) Field(i int) *string { return text(t, i) }

// Get returns the value of a term by name, and "" for a term that the record
// does not have.
func (t *Taxon) Get(term string) string { return get(&taxonShape, t, term) }

// Set gives a term, by name, a value. It returns false for a term that the
// record does not have.
func (t *Taxon) Set(term, value string) bool { return set(&taxonShape, t, term, value) }

// VernacularName is one row of the vernacular-name extension of a checklist.
// IsPreferredName is a term of that extension, not of Darwin Core.
type VernacularName struct {
	TaxonID         string `dwc:"taxonID"`
	VernacularName  string `dwc:"vernacularName"`
	Language        string `dwc:"language"`
	CountryCode     string `dwc:"countryCode"`
	Locality        string `dwc:"locality"`
	IsPreferredName string `dwc:"isPreferredName"`
	TaxonRemarks    string `dwc:"taxonRemarks"`
}

// RowType returns RowVernacularName.
func (v *VernacularName) RowType() string { return RowVernacularName }

// Field returns the text of the i-th term of TermsOf(RowVernacularName). It panics
// where there is none.
func (v *VernacularName) Field(i int) *string { return text(v, i) }

// Get returns the value of a term by name, and "" for a term that the record
// does not have.
func (v *VernacularName) Get(term string) string { return get(&vernacularShape, v, term) }

// Set gives a term, by name, a value. It returns false for a term that the
// record does not have.
func (v *VernacularName) Set(term, value string) bool { return set(&vernacularShape, v, term, value) }
