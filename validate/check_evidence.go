package validate

import (
	"fmt"
	"strings"
)

// proofWords say in remarks that a specimen was kept, looked at or pictured.
var proofWords = []string{"specimen", "retained", "dissect", "gen. det", "gen det", "gen. prep", "genit", "voucher", "kept", "preserved", "photo", "pinned", "collected", "vouchered", "slide", "in coll", "barcoded", "dna"}

// noProofWords say that there is none.
var noProofWords = []string{"no specimen", "not retained", "not kept", "no voucher", "no photo"}

// proved tells whether a specimen or other proof of the same weight is
// mentioned anywhere.
func (s *subject) proved() bool {
	o := s.o
	if s.f.Specimen || o.Preparations != "" || o.AssociatedMedia != "" || o.CatalogNumber != "" || o.VerificationStatus != "" ||
		strings.HasPrefix(o.BasisOfRecord, "Preserved") {
		return true
	}
	for _, text := range [...]string{o.OccurrenceRemarks, o.IdentificationRemarks, o.FieldNotes} {
		if text == "" {
			continue
		}
		text = strings.ToLower(text)
		if containsAny(text, proofWords) && !containsAny(text, noProofWords) {
			return true
		}
	}
	return false
}

// checkSpecimen asks for the specimen that a taxon needs: once for the records
// of a year, which one answer can settle.
func checkSpecimen(s *subject) {
	if !s.f.Taxon.NeedsSpecimen || s.o.OccurrenceStatus == "absent" || s.proved() {
		return
	}
	s.query(aboutRecord, written(s.o.ScientificName, "no specimen", s.o.Year), "specimen-needed", fmt.Sprintf(
		"The list accepts %s only with a specimen or proof of the same weight, and none is mentioned. If there was one, answer keep and say so in the remarks from now on; if not, leave out, or name the aggregate in the notebook.", s.name()))
}

// checkNote asks for the description that a taxon needs. Any remark counts,
// and so does a specimen.
func checkNote(s *subject) {
	if !s.f.Taxon.NeedsNote || s.f.Taxon.NeedsSpecimen || s.o.OccurrenceStatus == "absent" {
		return
	}
	if s.o.OccurrenceRemarks != "" || s.o.IdentificationRemarks != "" || s.proved() {
		return
	}
	s.query(aboutRecord, written(s.o.ScientificName, "no note", s.o.Year), "note-needed", fmt.Sprintf(
		"The list accepts %s only with a description, and there is none. If you are certain of it, answer keep and say in the remarks from now on how it was told; if not, leave out.", s.name()))
}
