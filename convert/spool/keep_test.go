package spool_test

import (
	"bytes"
	"io"
	"slices"
	"strings"
	"testing"

	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func newSpool(t *testing.T) *spool.Spool {
	t.Helper()
	s, err := spool.New(t.TempDir())
	require.NoError(t, err)
	t.Cleanup(func() { s.Close() })
	return s
}

// kept is a spool of three rows on sheets 4 and 5 that share a place, in the
// form in which it is kept, with where its second row begins.
func kept(t *testing.T) (parts, rows []byte, second int64) {
	t.Helper()
	s := newSpool(t)
	place := spool.NewPart(spool.Place, &dwc.Occurrence{}, &dwc.Occurrence{Locality: "Carr Edge", VerbatimCoordinates: "TL451886"}, &validate.Facts{Placed: true, Latitude: 52.5, Reference: "TL451886", Dated: true})
	s.Parts().Keep(place)
	for i, sheet := range []int{4, 4, 5} {
		if i == 1 {
			at, before := s.Mark().At()
			assert.Equal(t, 1, before)
			second = at
		}
		r := spool.Record{Occurrence: dwc.Occurrence{IndividualCount: strings.Repeat("1", 1+100*i)}, Parts: [spool.Kinds]*spool.Part{spool.Place: place}}
		place.Fill(&r.Occurrence)
		place.FillFacts(&r.Facts)
		require.NoError(t, s.Append(spool.Encode(nil, &spool.Row{Sheet: sheet, Number: 10 + i, Records: []spool.Record{r}})))
	}
	var b bytes.Buffer
	require.NoError(t, s.KeepRows(&b))
	assert.EqualValues(t, s.Size(), b.Len())
	return s.KeptParts(), b.Bytes(), second
}

func section(b []byte) *io.SectionReader {
	return io.NewSectionReader(bytes.NewReader(b), 0, int64(len(b)))
}

func TestKeptRowsAreAddedToAnotherSpool(t *testing.T) {
	parts, rows, second := kept(t)
	s := newSpool(t)
	other := spool.NewPart(spool.Place, &dwc.Occurrence{}, &dwc.Occurrence{Locality: "Long Drove"}, &validate.Facts{})
	s.Parts().Keep(other) // so that the kept one gets another number
	k, err := s.OpenKept(parts, section(rows))
	require.NoError(t, err)
	require.NoError(t, k.Add(second, 2, 4, 0, 2))
	require.NoError(t, k.Add(0, 1, 4, 7, 2))
	var got []spool.Row
	require.NoError(t, s.Each(func(b []byte) error {
		var r spool.Row
		require.NoError(t, spool.Decode(b, &r, s.Parts()))
		got = append(got, r)
		return nil
	}))
	require.Len(t, got, 3)
	for i, want := range []struct{ sheet, number, figures int }{{0, 11, 101}, {1, 12, 201}, {7, 10, 1}} {
		assert.Equal(t, want.sheet, got[i].Sheet)
		assert.Equal(t, want.number, got[i].Number)
		assert.Equal(t, "Carr Edge", got[i].Records[0].Occurrence.Locality)
		assert.Equal(t, validate.Facts{Placed: true, Latitude: 52.5, Reference: "TL451886"}, got[i].Records[0].Facts, "the facts of a place, and no others")
		assert.Len(t, got[i].Records[0].Occurrence.IndividualCount, want.figures)
	}
	assert.Equal(t, 2, s.Parts().Len(), "the part is taken in once")
}

// A file that was changed is an error, however it was.
func TestKeptRowsThatWereChanged(t *testing.T) {
	parts, rows, second := kept(t)
	for n := range parts {
		if _, err := newSpool(t).OpenKept(parts[:n], section(rows)); n > 0 {
			assert.Error(t, err, "parts cut off after %d bytes", n)
		}
	}
	_, err := newSpool(t).OpenKept(append(slices.Clone(parts), 0), section(rows))
	assert.Error(t, err, "more than the parts")
	noTerm, noKind := slices.Clone(parts), slices.Clone(parts)
	noKind[1], noTerm[3] = 2*byte(spool.Kinds), byte(len(dwc.Terms()))
	for _, changed := range [][]byte{noKind, noTerm} {
		_, err := newSpool(t).OpenKept(changed, section(rows))
		assert.Error(t, err)
	}

	add := func(rows []byte, at int64, n, first, sheets int) error {
		k, err := newSpool(t).OpenKept(parts, section(rows))
		require.NoError(t, err)
		return k.Add(at, n, first, 0, sheets)
	}
	require.NoError(t, add(rows, 0, 3, 4, 2))
	for n := range rows {
		assert.Error(t, add(rows[:n], 0, 3, 4, 2), "rows cut off after %d bytes", n)
	}
	assert.Error(t, add(rows, -1, 1, 4, 2))
	assert.Error(t, add(rows, int64(len(rows))+1, 0, 4, 2))
	assert.NoError(t, add(rows, int64(len(rows)), 0, 4, 2), "a notebook without rows may stand at the end")
	assert.Error(t, add(rows, second, 3, 4, 2), "more rows than there are")
	assert.Error(t, add(rows, 0, 3, 5, 2), "a row of an earlier sheet")
	assert.Error(t, add(rows, 0, 3, 4, 1), "a row of a later sheet")
	assert.Error(t, add(append([]byte{0xff, 0xff, 0xff, 0xff, 0x7f}, rows...), 0, 1, 4, 2), "longer than the file")
}

func TestAt(t *testing.T) {
	s := newSpool(t)
	var places []int64
	for n := range 3 {
		places = append(places, s.Size())
		require.NoError(t, s.Append(spool.Encode(nil, &spool.Row{Number: n + 1, Skip: strings.Repeat("x", 300*n)})))
	}
	for _, n := range []int{2, 0, 1} {
		b, err := s.At(places[n])
		require.NoError(t, err)
		var r spool.Row
		require.NoError(t, spool.Decode(b, &r, nil))
		assert.Equal(t, n+1, r.Number)
	}
	_, err := s.At(s.Size())
	assert.Error(t, err, "there is no row at the end")
	_, err = s.At(-1)
	assert.Error(t, err)
}

func TestState(t *testing.T) {
	of := func(states ...reading.State) spool.Record {
		var r spool.Record
		for _, s := range states {
			r.Findings = append(r.Findings, reading.Finding{Verdict: reading.Verdict{State: s}})
		}
		return r
	}
	query, held := of(reading.Query), of(reading.Query, reading.Held)
	for _, c := range []struct {
		row  spool.Row
		want reading.State
	}{
		{spool.Row{}, reading.Fair},
		{spool.Row{Records: []spool.Record{{}, query}}, reading.Query},
		{spool.Row{Records: []spool.Record{held, {}}}, reading.Held},
		{spool.Row{Records: []spool.Record{query}, Findings: held.Findings}, reading.Held},
		{spool.Row{Skip: "a total", Findings: held.Findings}, reading.Skipped},
	} {
		assert.Equal(t, c.want, c.row.State())
	}
}

func TestTerms(t *testing.T) {
	var a, b, none spool.Terms
	last := len(dwc.Terms()) - 1
	a.Add(0)
	a.Add(last)
	b.Add(last)
	b.Add(1)
	assert.True(t, a.Has(0) && a.Has(last) && !a.Has(1) && !a.Has(last-1))
	assert.True(t, a.Meets(&b))
	assert.False(t, a.Meets(&none))
	b = spool.Terms{}
	b.Add(0)
	assert.True(t, a.Meets(&b), "those of the first half")
	b = spool.Terms{}
	b.Add(1)
	assert.False(t, a.Meets(&b))
}
