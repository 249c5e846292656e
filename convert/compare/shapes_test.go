package compare_test

import (
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/compare"
	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// nights writes an archive of events with an occurrence, a visit without one,
// and measurements of both and of the whole night.
func nights(t *testing.T, wing, temperature, remarks string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "nights.zip")
	file, err := os.Create(path)
	require.NoError(t, err)
	defer file.Close()
	w, err := dwc.NewWriter(file, dwc.Table{RowType: dwc.RowEvent, Columns: []string{"eventID", "parentEventID", "eventDate", "locality", "eventRemarks"}},
		dwc.Table{RowType: dwc.RowOccurrence, Columns: []string{"eventID", "occurrenceID", "scientificName", "individualCount", "eventDate", "locality"}},
		dwc.Table{RowType: dwc.RowMeasurement, Columns: []string{"eventID", "occurrenceID", "measurementType", "measurementValue", "measurementMethod"}})
	require.NoError(t, err)
	for _, row := range [][]string{{"season", "", "2021", "Sallowmere Reserve", ""}, {"n1", "season", "2021-06-12", "Sallowmere Reserve", ""}, {"n2", "season", "2021-06-19", "Sallowmere Reserve", remarks}} {
		require.NoError(t, w.WriteRow(0, row))
	}
	require.NoError(t, w.WriteRow(1, []string{"n1", "1", "Agrotis exclamationis", "4", "2021-06-12", "Sallowmere Reserve"}))
	require.NoError(t, w.WriteRow(2, []string{"n1", "1", "forewing", wing, "calipers"}))
	if temperature != "" {
		require.NoError(t, w.WriteRow(2, []string{"n2", "", "temperature", temperature, ""}))
	}
	require.NoError(t, w.Close())
	return path
}

func TestMeasurementsAndVisitsAreCompared(t *testing.T) {
	before := nights(t, "17", "11", "rain")
	same, err := compare.Submissions(before, nights(t, "17", "11", "rain"))
	require.NoError(t, err)
	assert.Equal(t, &compare.Result{New: []compare.Record{}, Changed: []compare.Record{}, Withdrawn: []compare.Record{}, Same: 2}, same)

	r, err := compare.Submissions(before, nights(t, "17.5", "8", "heavy rain"))
	require.NoError(t, err)
	assert.Equal(t, []compare.Record{
		{ID: "1", What: "Agrotis exclamationis", When: "2021-06-12", Where: "Sallowmere Reserve", Changes: []compare.TermChange{{Term: "Measurement: forewing", Old: "17", New: "17.5"}}},
		{EventID: "n2", What: "nothing found", When: "2021-06-19", Where: "Sallowmere Reserve", Changes: []compare.TermChange{
			{Term: "eventRemarks", Old: "rain", New: "heavy rain"}, {Term: "Measurement: temperature", Old: "11", New: "8"},
		}},
	}, r.Changed)
}

// The same records as occurrences alone are the same; only the visit is gone.
func TestShapesAreCompared(t *testing.T) {
	o := moth("1", "Agrotis exclamationis", "4")
	o.EventID, o.EventDate, o.ParentEventID = "n1", "2021-06-12", "season"
	r, err := compare.Submissions(nights(t, "17", "", ""), submission(t, o))
	require.NoError(t, err)
	assert.Empty(t, r.New)
	require.Len(t, r.Changed, 1)
	assert.Equal(t, []compare.TermChange{{Term: "Measurement method: forewing", Old: "calipers"}, {Term: "Measurement: forewing", Old: "17"}}, r.Changed[0].Changes)
	require.Len(t, r.Withdrawn, 1)
	assert.Equal(t, "n2", r.Withdrawn[0].EventID)
}

// Terms of others are compared too, and ids that stand twice are told of.
func TestArchivesOfOthers(t *testing.T) {
	theirs := func(text string) string {
		path := filepath.Join(t.TempDir(), "theirs.csv")
		require.NoError(t, os.WriteFile(path, []byte("occurrenceID,scientificName,lampHours\n"+text), 0o644))
		return path
	}
	r, err := compare.Submissions(theirs("1,Noctua pronuba,4\n2,Noctua comes,\n2,Noctua janthe,\n"), theirs("2,Noctua comes,\n1,Noctua pronuba,5\n1,Noctua fimbriata,\n2,Noctua janthe,\n1,Noctua fimbriata,\n"))
	require.NoError(t, err)
	assert.Equal(t, []string{"2", "1"}, r.Repeated)
	assert.Equal(t, 1, r.Same)
	assert.Empty(t, r.New)
	assert.Empty(t, r.Withdrawn)
	require.Len(t, r.Changed, 1)
	assert.Equal(t, []compare.TermChange{{Term: "lampHours", Old: "4", New: "5"}}, r.Changed[0].Changes)
}

// An archive may number its measurements anew, or hang them under one another:
// that changes nothing of what was measured. Its unit does.
func TestIDsOfMeasurementsAreNotCompared(t *testing.T) {
	o := moth("1", "Agrotis exclamationis", "4")
	wing := dwc.Measurement{MeasurementID: "m1", ParentMeasurementID: "m0", MeasurementType: "forewing", MeasurementValue: "17", MeasurementUnit: "mm"}
	renumbered, converted := wing, wing
	renumbered.MeasurementID, renumbered.ParentMeasurementID = "m2", ""
	converted.MeasurementUnit = "cm"
	assert.Equal(t, compare.NewObservation(&o, []dwc.Measurement{wing}), compare.NewObservation(&o, []dwc.Measurement{renumbered}))
	assert.NotEqual(t, compare.NewObservation(&o, []dwc.Measurement{wing}), compare.NewObservation(&o, []dwc.Measurement{converted}))
}
