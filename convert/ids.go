package convert

import (
	"strconv"
	"strings"

	"fieldfare/convert/compare"
	"fieldfare/convert/identity"
	"fieldfare/convert/privacy"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/google/uuid"
)

// identities gives records their ids and sees to it that none repeats. An id
// of the notebook's own wins; then that under which the record was handed in
// before; else it is made from what the record says.
type identities struct {
	maker  identity.Maker
	ledger *ledgerRun
	own    *validate.Repeats // the notebooks' own ids
	// blurred tells of blurred records that look alike.
	blurred *validate.Repeats
}

func newIdentities(datasetID string, set *setView) *identities {
	return &identities{maker: identity.NewMaker(datasetID), ledger: set.ledger, own: &set.ownIDs, blurred: &set.blurred}
}

// ownID is the notebook's own id of a record. One that is to be blurred keeps
// it only where it is a UUID, since any other could tell the place.
func ownID(r *spool.Record) string {
	own := r.Occurrence.OccurrenceID
	if own == "" || r.Facts.Blur > 0 && !isUUID(own) {
		return ""
	}
	return own
}

func isUUID(id string) bool {
	id = strings.TrimPrefix(strings.ToLower(id), "urn:uuid:")
	_, err := uuid.Parse(id)
	return err == nil && len(id) == 36
}

// id returns the id of the n-th record, given as it may leave, and whether it
// is one that an earlier record has already.
func (m *identities) id(n int, r *spool.Record, o *dwc.Occurrence, ordinal int) (id string, repeated bool) {
	if own := ownID(r); own != "" {
		mark := compare.IDMark(own)
		return own, m.own.Next((*[16]byte)(&mark)) > 1
	}
	if id, found := m.ledger.id(n, r, ordinal); found {
		return id, false
	}
	content := r.Content
	if r.Facts.Blur > 0 {
		// Made from what leaves alone: an id made from the exact place could
		// be found by trying places.
		content = blurredContent(o)
		ordinal = m.blurred.Next(&content)
	}
	id = m.maker.ID(content, ordinal)
	for again := 2; m.taken(id); again++ {
		id = m.maker.ID(identity.Content([]string{"again", string(content[:]), strconv.Itoa(again)}), ordinal)
	}
	return id, false
}

// taken tells whether an id is another record's: one of a notebook's own, or
// one under which something else was handed in before.
func (m *identities) taken(id string) bool {
	if m.own.Empty() && m.ledger == nil {
		return false
	}
	mark := compare.IDMark(id)
	return m.own.Has((*[16]byte)(&mark)) || m.ledger.knows(id)
}

// blurredContent is the fingerprint of a blurred record: of what leaves, but
// for what holds for the dataset as a whole or comes from the taxon list, so
// that neither changes an id.
func blurredContent(o *dwc.Occurrence) [16]byte {
	bare := *o
	for _, term := range privacy.ListTerms {
		if term != "scientificName" {
			bare.Set(term, "")
		}
	}
	for _, term := range []string{"type", "license", "rightsHolder", "datasetName", "datasetID", "institutionCode", "collectionCode", "language", "occurrenceID", "eventID", "parentEventID"} {
		bare.Set(term, "")
	}
	parts := []string{"blurred"}
	for i, term := range dwc.Terms() {
		if value := *bare.Field(i); value != "" {
			parts = append(parts, term, value)
		}
	}
	return identity.Content(parts)
}
