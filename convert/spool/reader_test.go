package spool_test

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"

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
			p := spool.NewPart(spool.Kind(kind), &dwc.Occurrence{}, &o)
			if random.IntN(4) > 0 {
				s.Parts().Keep(p)
			}
			parts[kind] = append(parts[kind], p)
		}
	}
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
				}
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
		}
		reader.Copy(&copied)
		assert.Equal(t, normal(want), normal(copied))
		return nil
	}))
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
