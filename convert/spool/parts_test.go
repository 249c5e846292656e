package spool_test

import (
	"testing"

	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestPartsAreSharedAndTheRecordsOwnTermsCount: what a record says itself
// counts for more than what a part says, even where it says nothing.
func TestPartsAreSharedAndTheRecordsOwnTermsCount(t *testing.T) {
	s, err := spool.New(t.TempDir())
	require.NoError(t, err)
	defer s.Close()
	place := spool.NewPart(spool.Place, &dwc.Occurrence{}, &dwc.Occurrence{Locality: "Carr Edge", Country: "United Kingdom", VerbatimCoordinates: "TL451886"}, &validate.Facts{})
	taxon := spool.NewPart(spool.Taxon, &dwc.Occurrence{}, &dwc.Occurrence{ScientificName: "Noctua pronuba", Genus: "Noctua"}, &validate.Facts{})
	stray := spool.NewPart(spool.Date, &dwc.Occurrence{}, &dwc.Occurrence{EventDate: "2021-06-12"}, &validate.Facts{})
	s.Parts().Keep(place)
	s.Parts().Keep(taxon)
	record := func(change func(*spool.Record)) spool.Record {
		r := spool.Record{Parts: [spool.Kinds]*spool.Part{spool.Place: place, spool.Taxon: taxon, spool.Date: stray}}
		for _, p := range []*spool.Part{place, taxon, stray} {
			p.Fill(&r.Occurrence)
		}
		change(&r)
		return r
	}
	rows := []spool.Row{{Number: 1, Records: []spool.Record{
		record(func(*spool.Record) {}),
		record(func(r *spool.Record) { r.Occurrence.Locality, r.Occurrence.IndividualCount = "Long Drove", "3" }),
		record(func(r *spool.Record) { r.Occurrence.Country, r.Parts[spool.Taxon] = "", nil }),
	}}}
	require.NoError(t, s.Append(spool.Encode(nil, &rows[0])))
	var got spool.Row
	require.NoError(t, s.Each(func(b []byte) error { return spool.Decode(b, &got, s.Parts()) }))
	require.Len(t, got.Records, 3)
	for i := range got.Records {
		assert.Equal(t, rows[0].Records[i].Occurrence, got.Records[i].Occurrence, i)
		assert.Equal(t, place, got.Records[i].Parts[spool.Place])
		assert.Nil(t, got.Records[i].Parts[spool.Date], "it was not kept")
	}
	own := func(i int, term string) bool {
		at, ok := dwc.TermIndex(term)
		require.True(t, ok)
		return got.Records[i].Own.Has(at)
	}
	assert.False(t, own(0, "locality"))
	assert.True(t, own(0, "eventDate"))
	assert.True(t, own(1, "locality"))
	assert.True(t, own(1, "individualCount"))
	assert.True(t, own(2, "country"), "emptied")
	assert.True(t, own(2, "genus"))

	t.Run("a record of parts that are not there is damaged", func(t *testing.T) {
		assert.Error(t, spool.Decode(spool.Encode(nil, &rows[0]), &got, nil))
	})
}
