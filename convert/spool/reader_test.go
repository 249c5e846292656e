package spool_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestReaderReadsWhatDecodeDoes: whatever the row before was, and whichever
// parts say a term.
func TestReaderReadsWhatDecodeDoes(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	s, err := spool.New(t.TempDir())
	require.NoError(t, err)
	defer s.Close()
	terms := len(dwc.Terms())
	some := func(into *dwc.Occurrence, n int) {
		for range n {
			*into.Field(random.IntN(12) * (terms / 12)) = strconv.Itoa(random.IntN(3)) // so few that they meet
		}
	}
	var parts [spool.Kinds][]*spool.Part
	for kind := range parts {
		parts[kind] = []*spool.Part{nil}
		for range 4 {
			var o dwc.Occurrence
			some(&o, 5)
			facts := someFacts(random)
			p := spool.NewPart(spool.Kind(kind), &dwc.Occurrence{}, &o, &facts)
			if random.IntN(4) > 0 {
				s.Parts().Keep(p)
			}
			parts[kind] = append(parts[kind], p)
		}
	}
	var written []spool.Row
	for n := range 3000 {
		row := spool.Row{Sheet: n % 3, Number: n}
		for range n % 20 % 7 {
			row.Cells = append(row.Cells, strconv.Itoa(n))
		}
		for range random.IntN(3) {
			var r spool.Record
			for kind := range parts {
				if p := parts[kind][random.IntN(len(parts[kind]))]; p != nil {
					r.Parts[kind] = p
					p.Fill(&r.Occurrence)
					p.FillFacts(&r.Facts)
				}
			}
			if random.IntN(3) == 0 {
				r.Facts = someFacts(random)
			}
			some(&r.Occurrence, random.IntN(3))
			if random.IntN(5) == 0 {
				*r.Occurrence.Field(0) = ""
				r.Findings = []reading.Finding{{About: "date"}}
				r.Measurements = make([]spool.Measurement, 1)
				r.Facts.Counted, r.Facts.Count = true, 3
			}
			row.Records = append(row.Records, r)
		}
		require.NoError(t, s.Append(spool.Encode(nil, &row)))
		written = append(written, row)
	}
	var changed spool.Terms
	for i := range terms / 2 {
		changed.Add(2 * i)
	}
	reader := spool.NewReader(s.Parts())
	var copied spool.Row
	require.NoError(t, s.Each(func(b []byte) error {
		var want spool.Row
		require.NoError(t, spool.Decode(b, &want, s.Parts()))
		got, err := reader.Read(b)
		require.NoError(t, err)
		require.Len(t, got.Records, len(want.Records))
		for i := range want.Records {
			require.Equal(t, want.Records[i], got.Records[i])
			require.Equal(t, written[want.Number].Records[i].Facts, got.Records[i].Facts)
			require.Equal(t, written[want.Number].Records[i].Occurrence, got.Records[i].Occurrence)
		}
		reader.Copy(&copied)
		assert.Equal(t, normal(want), normal(copied))
		for i := range got.Records {
			if random.IntN(2) == 0 {
				for at := range terms / 2 {
					*got.Records[i].Occurrence.Field(2 * at) = "changed"
				}
				reader.Changed(i, &changed)
			}
		}
		return nil
	}))
}

// someFacts have few values, so that they meet.
func someFacts(random *rand.Rand) validate.Facts {
	n := func() int { return random.IntN(2) }
	return validate.Facts{
		Start: int32(n()), End: int32(20_000 + n()), Dated: n() > 0, Night: n() > 0, Latitude: 52.5, Longitude: -0.25 * float64(n()), Radius: 70.75, SquareSize: 100,
		Placed: n() > 0, Count: int32(n()), Counted: n() > 0, Reference: "TL451886"[:8*n()], Blur: int32(2000 * n()), Light: n() > 0, AtSea: n() > 0, Specimen: n() > 0,
		Taxon: validate.TaxonFacts{Listed: n() > 0, Flight: uint16(n() << 5), Eggs: 1, Larvae: 2, Pupae: uint16(n()), Most: 40, NeedsNote: n() > 0, NeedsSpecimen: n() > 0, Number: int32(73 * n())},
	}
}

// TestReaderGoesOnAfterADamagedRow: nothing of it is left.
func TestReaderGoesOnAfterADamagedRow(t *testing.T) {
	row := full()
	encoded := spool.Encode(nil, &row)
	reader := spool.NewReader(nil)
	_, err := reader.Read(encoded[:len(encoded)-1])
	assert.Error(t, err)
	sound := spool.Row{Records: []spool.Record{{Occurrence: dwc.Occurrence{Locality: "Carr Edge"}}}}
	got, err := reader.Read(spool.Encode(nil, &sound))
	require.NoError(t, err)
	assert.Equal(t, sound.Records[0].Occurrence, got.Records[0].Occurrence)
	assert.Empty(t, got.Records[0].Findings)
}
