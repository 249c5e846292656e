package spool_test

import (
	"reflect"
	"strings"
	"testing"

	"fieldfare/convert/notebook"
	"fieldfare/convert/reading"
	"fieldfare/convert/spool"
	"fieldfare/dwc"
	"fieldfare/validate"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// full is a row in which every field differs from its zero value.
func full() spool.Row {
	finding := reading.Finding{
		Verdict: reading.Verdict{State: reading.Held, Code: "name-not-listed", Message: "“?” is on no list.", Candidates: []string{"a", "b"}},
		About:   "name", Written: "?", Cells: []string{"B7", "C7"},
	}
	r := spool.Record{
		Facts: validate.Facts{
			Start: -12000, End: 18790, Dated: true, Night: true,
			Latitude: 52.4183, Longitude: -0.1234, Radius: 70.8, SquareSize: 100, Placed: true,
			Count: 3, Counted: true, Reference: "TL4588", Blur: 2000, Light: true, AtSea: true, Specimen: true,
			Taxon: validate.TaxonFacts{Listed: true, Flight: 0x1ff, NeedsNote: true, NeedsSpecimen: true, Number: 2107, Eggs: 0x2, Larvae: 0x30, Pupae: 0x40, Most: 25},
		},
		Content: [16]byte{1, 2, 3, 255}, Cell: notebook.Ref{Col: 2, Row: 7}, Findings: []reading.Finding{finding}, EmptyVisit: true,
		Measurements: []spool.Measurement{{Measurement: dwc.Measurement{MeasurementType: "forewing length", MeasurementValue: "14.5", MeasurementUnit: "mm", MeasurementMethod: "calipers"}, Event: true}},
	}
	for i := range len(dwc.Terms()) {
		*r.Occurrence.Field(i) = dwc.Terms()[i] + "\t\n\"é🦋"
	}
	return spool.Row{Sheet: 3, Number: 1 << 20, Skip: "total", Cells: []string{"", "x", strings.Repeat("long ", 1000)},
		Records: []spool.Record{r, {}}, Findings: []reading.Finding{finding}}
}

// Whatever is added to a record must be added to full, and so be tested.
func TestFullIsFull(t *testing.T) {
	var look func(v reflect.Value, name string)
	look = func(v reflect.Value, name string) {
		if v.Kind() != reflect.Struct {
			assert.False(t, v.IsZero(), name)
			return
		}
		for i := range v.NumField() {
			look(v.Field(i), name+"."+v.Type().Field(i).Name)
		}
	}
	row := full()
	look(reflect.ValueOf(row.Records[0].Facts), "Facts")
	look(reflect.ValueOf(row.Records[0].Occurrence), "Occurrence")
	look(reflect.ValueOf(row.Records[0].Cell), "Cell")
	look(reflect.ValueOf(row.Records[0].Findings[0]), "Finding")
	row.Records[0].Parts[0], row.Records[0].Own = &spool.Part{}, spool.Terms{1} // other tests have these
	for i := range reflect.TypeFor[spool.Record]().NumField() {
		f := reflect.ValueOf(row.Records[0]).Field(i)
		assert.False(t, f.IsZero(), reflect.TypeFor[spool.Record]().Field(i).Name)
	}
}

func TestRowsComeBackEqual(t *testing.T) {
	s, err := spool.New(t.TempDir())
	require.NoError(t, err)
	defer s.Close()
	want := []spool.Row{full(), {Sheet: 1, Number: 2, Cells: []string{}, Records: []spool.Record{}}, full()}
	for i := range want {
		require.NoError(t, s.Append(spool.Encode(nil, &want[i])))
	}
	for range 2 {
		var got []spool.Row
		require.NoError(t, s.Each(func(b []byte) error {
			var r spool.Row
			require.NoError(t, spool.Decode(b, &r, nil))
			got = append(got, r)
			return nil
		}))
		require.Len(t, got, len(want))
		for i := range want {
			want[i].Records, got[i].Records = append([]spool.Record{}, want[i].Records...), append([]spool.Record{}, got[i].Records...)
			assert.Equal(t, normal(want[i]), normal(got[i]))
		}
	}
}

// normal makes empty and absent lists alike, and leaves out what only a record
// that was read back has.
func normal(r spool.Row) spool.Row {
	for i := range r.Records {
		r.Records[i].Own = spool.Terms{}
	}
	if len(r.Records) == 0 {
		r.Records = nil
	}
	if len(r.Cells) == 0 {
		r.Cells = nil
	}
	return r
}

func TestRewindForgetsWhatFollows(t *testing.T) {
	s, err := spool.New(t.TempDir())
	require.NoError(t, err)
	defer s.Close()
	add := func(n int) {
		require.NoError(t, s.Append(spool.Encode(nil, &spool.Row{Number: n, Skip: strings.Repeat("x", n*100)})))
	}
	add(1)
	mark := s.Mark()
	for n := 2; n < 2000; n++ {
		add(n)
	}
	require.NoError(t, s.Rewind(mark))
	add(7)
	var numbers []int
	require.NoError(t, s.Each(func(b []byte) error {
		var r spool.Row
		require.NoError(t, spool.Decode(b, &r, nil))
		numbers = append(numbers, r.Number)
		return nil
	}))
	assert.Equal(t, []int{1, 7}, numbers)
	assert.Equal(t, 2, s.Rows())
}

func FuzzDecode(f *testing.F) {
	r := full()
	f.Add(spool.Encode(nil, &r))
	f.Fuzz(func(t *testing.T, b []byte) {
		var r, again spool.Row
		if spool.Decode(b, &r, nil) != nil { // without a panic, or memory that b does not justify
			return
		}
		first := spool.Encode(nil, &r)
		require.NoError(t, spool.Decode(first, &again, nil))
		require.Equal(t, first, spool.Encode(nil, &again), "what can be read says the same when it is written and read again")
	})
}
