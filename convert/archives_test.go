package convert_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/dwc"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// describedTable is a table of an archive of others, written after the Darwin Core
// text guide: tabs, one line of headings, the id in the first column.
type describedTable struct {
	rowType string
	fields  []string // terms of the columns; "" for one that is not described
	rows    string
	// noID: the first column is described, and there is no id element.
	noID bool
}

// foreign writes an archive of others into a folder; the first table is its
// core.
func foreign(t *testing.T, tables ...describedTable) string {
	t.Helper()
	folder := filepath.Join(t.TempDir(), "theirs")
	require.NoError(t, os.Mkdir(folder, 0o755))
	meta := `<archive xmlns="http://rs.tdwg.org/dwc/text/">`
	for i, table := range tables {
		element, id := "extension", "coreid"
		if i == 0 {
			element, id = "core", "id"
		}
		file := fmt.Sprintf("table%d.txt", i)
		rowType := table.rowType
		if !strings.Contains(rowType, ":") {
			rowType = "http://rs.tdwg.org/dwc/terms/" + rowType
		}
		meta += fmt.Sprintf(`<%s rowType="%s" fieldsTerminatedBy="\t" linesTerminatedBy="\n" fieldsEnclosedBy="" ignoreHeaderLines="1"><files><location>%s</location></files>`, element, rowType, file)
		if !table.noID {
			meta += fmt.Sprintf(`<%s index="0"/>`, id)
		}
		for column, field := range table.fields {
			if field == "" {
				continue
			}
			if !strings.Contains(field, ":") {
				field = dwc.IRI(field)
			}
			meta += fmt.Sprintf(`<field index="%d" term="%s"/>`, column, field)
		}
		meta += "</" + element + ">"
		head := strings.Join(table.fields, "\t")
		require.NoError(t, os.WriteFile(filepath.Join(folder, file), []byte(head+"\n"+table.rows), 0o644))
	}
	require.NoError(t, os.WriteFile(filepath.Join(folder, "meta.xml"), []byte(meta+"</archive>"), 0o644))
	return folder
}

var seenOnce = describedTable{
	rowType: "Occurrence",
	fields:  []string{"occurrenceID", "scientificName", "eventDate", "decimalLatitude", "decimalLongitude", "geodeticDatum", "coordinateUncertaintyInMeters", "recordedBy", "basisOfRecord"},
	rows: "o1\tNoctua pronuba\t2021-06-12\t52.4182\t0.1425\tEPSG:4326\t71\tInes Calloway\tHumanObservation\n" +
		"o2\tXestia c-nigrum\t2021-06-13\t52.42\t0.1501\tEPSG:4326\t71\tTom Achterberg\tHumanObservation\n",
}

// Measurements keep what is said of them, and come through the copies for
// people as they were.
func TestMeasurementsAreKeptWhole(t *testing.T) {
	first := foreign(t, seenOnce, describedTable{
		rowType: "MeasurementOrFact",
		fields:  []string{"", "measurementType", "measurementValue", "measurementUnit", "measurementAccuracy", "measurementDeterminedDate", "measurementMethod", "measurementDeterminedBy", "measurementRemarks", "measurementID"},
		rows: "o1\tforewing length\t24\tmm\t0.5\t2021-06-14\tcalipers | by eye\tTom Achterberg\tleft wing\tM1\n" +
			"o1\tforewing length\t24.5\tmm\t\t\t\t\tright wing\tM2\n" +
			"o2\tworn (0-5)\t3\t\t\t\t\t\t\tM3\n" +
			"o9\tforewing length\t31\tmm\t\t\t\t\t\tM9\n" +
			"o2\tforewing length\t\tmm\t\t\t\t\t\tM10\n",
	})
	out := t.TempDir()
	result := run(t, convert.Job{Files: []string{first}, Out: out, Formats: convert.Formats()})
	assert.Equal(t, map[string]int{"headings": 2, "measurements of no record here, or without a kind or a value": 2}, result.Summary.Skips)
	assert.Contains(t, result.Notes[0], "2 rows")
	want := []map[string]string{
		{"occurrenceID": "o1", "measurementID": "M1", "measurementType": "forewing length", "measurementValue": "24", "measurementUnit": "mm", "measurementAccuracy": "0.5", "measurementDeterminedDate": "2021-06-14", "measurementMethod": "calipers | by eye", "measurementDeterminedBy": "Tom Achterberg", "measurementRemarks": "left wing"},
		{"occurrenceID": "o1", "measurementID": "M2", "measurementType": "forewing length", "measurementValue": "24.5", "measurementUnit": "mm", "measurementAccuracy": "", "measurementDeterminedDate": "", "measurementMethod": "", "measurementDeterminedBy": "", "measurementRemarks": "right wing"},
		{"occurrenceID": "o2", "measurementID": "M3", "measurementType": "worn (0-5)", "measurementValue": "3", "measurementUnit": "", "measurementAccuracy": "", "measurementDeterminedDate": "", "measurementMethod": "", "measurementDeterminedBy": "", "measurementRemarks": ""},
	}
	assert.Equal(t, want, table(t, filepath.Join(out, convert.SubmissionFile), "measurementorfact.txt"))
	for _, copied := range []string{convert.SubmissionFile, "records.csv", "records.xlsx", "records.geojson"} {
		again := t.TempDir()
		run(t, convert.Job{Files: []string{filepath.Join(out, copied)}, Out: again})
		assert.Equal(t, want, table(t, filepath.Join(again, convert.SubmissionFile), "measurementorfact.txt"), copied)
	}
}

// Tables of an archive that have no records are accounted for, row by row.
func TestTablesWithoutRecordsAreAccountedFor(t *testing.T) {
	result := run(t, convert.Job{Out: t.TempDir(), Files: []string{foreign(t, seenOnce,
		describedTable{rowType: "http://rs.gbif.org/terms/1.0/Multimedia", fields: []string{"", "http://purl.org/dc/terms/identifier"}, rows: "o1\thttps://example.org/underside.jpg\n"},
		describedTable{rowType: "Identification", fields: []string{"", "scientificName", "identifiedBy"}, rows: "o2\tXestia triangulum\tTom Achterberg\no2\tXestia c-nigrum\tInes Calloway\n"},
		describedTable{rowType: "ResourceRelationship", fields: []string{"", "http://rs.tdwg.org/dwc/terms/relatedResourceID"}, rows: "o1\to2\n"},
		describedTable{rowType: "http://sallowmere.example/terms/LampCheck", fields: []string{"", "http://sallowmere.example/terms/bulb"}, rows: "o1\tnew\n"},
	)}})
	s := &result.Summary
	assert.Equal(t, []int{2, 0, 0}, []int{s.Fair, s.Query, s.Held})
	assert.Equal(t, map[string]int{
		"headings": 5, "pictures and sounds": 1, "identifications beside the record's own": 2, "relations between records": 1, "a table of another kind": 1,
	}, s.Skips)
	assert.Equal(t, s.Read, s.Fair+s.Query+s.Held+s.Skipped)
	assert.Len(t, result.Notes, 4)
	assert.Equal(t, 2, s.Occurrences)
}

// Where an archive's core are taxa or events, its occurrences say the rest by
// their core row, also where they have an empty column of their own for it.
func TestOccurrencesTakeFromTheirCore(t *testing.T) {
	event := describedTable{
		rowType: "Event",
		fields:  []string{"", "eventDate", "decimalLatitude", "decimalLongitude", "locality", "geodeticDatum", "coordinateUncertaintyInMeters", "samplingProtocol", "parentEventID"},
		rows: "n1\t2021-06-12\t52.4182\t0.1425\tSallowmere Reserve\tEPSG:4326\t71\tactinic trap\tseason\n" +
			"n2\t2021-06-19\t52.4182\t0.1425\tSallowmere Reserve\tEPSG:4326\t71\tactinic trap\tseason\n" +
			"n3\t2021-06-26\t52.4182\t0.1425\tSallowmere Reserve\tEPSG:4326\t71\tactinic trap\tseason\n" +
			"season\t2021\t\t\tSallowmere Reserve\t\t\t\t\n",
	}
	result := run(t, convert.Job{Out: t.TempDir(), Files: []string{foreign(t, event,
		describedTable{rowType: "Occurrence", fields: []string{"", "occurrenceID", "scientificName", "recordedBy", "eventDate"}, rows: "n1\to1\tNoctua pronuba\tInes Calloway\t\nn1\to2\tNoctua comes\tInes Calloway\t2021-06-13\n"},
		describedTable{rowType: "Occurrence", fields: []string{"", "occurrenceID", "scientificName", "recordedBy"}, rows: "n2\to3\tNoctua janthe\tInes Calloway\n"},
		describedTable{rowType: "http://rs.iobis.org/obis/terms/ExtendedMeasurementOrFact", fields: []string{"", "occurrenceID", "measurementType", "measurementValue"}, rows: "n1\to2\tforewing\t17\nn3\t\ttemperature\t11\nseason\t\tnights\t3\n"},
	)}})
	s := &result.Summary
	assert.Equal(t, []int{3, 3 + 1}, []int{s.Occurrences, s.Events}, "two nights, an empty one, and the season")
	assert.Equal(t, 1, s.Skips["events that others are parts of, which a submission has of its own making"])
	assert.Equal(t, 1, s.Skips["measurements of no record here, or without a kind or a value"])

	out := t.TempDir()
	run(t, convert.Job{Out: out, Files: []string{foreign(t,
		describedTable{rowType: "Taxon", fields: []string{"", "scientificName"}, rows: "t1\tNoctua pronuba\nt2\tNoctua comes\n"},
		describedTable{rowType: "Occurrence", fields: slices.Concat([]string{"", "occurrenceID"}, seenOnce.fields[2:]), rows: "t2\to1\t2021-06-12\t52.4182\t0.1425\tEPSG:4326\t71\tInes Calloway\tHumanObservation\n"},
	)}})
	rows := table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt")
	require.Len(t, rows, 1)
	assert.Equal(t, []string{"o1", "Noctua comes"}, []string{rows[0]["occurrenceID"], rows[0]["scientificName"]})
}

// The id of an occurrence may stand in the id column alone.
func TestIDOfTheCoreIsTheRecords(t *testing.T) {
	bare := seenOnce
	bare.fields = slices.Clone(bare.fields)
	bare.fields[0] = ""
	out := t.TempDir()
	run(t, convert.Job{Out: out, Files: []string{foreign(t, bare)}})
	rows := table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt")
	require.Len(t, rows, 2)
	assert.Equal(t, "o1", rows[0]["occurrenceID"])
}

// A checklist is no notebook; its names are not held for want of a date.
func TestChecklistHasNoRecords(t *testing.T) {
	result := run(t, convert.Job{Out: t.TempDir(), Files: []string{foreign(t, describedTable{rowType: "Taxon", fields: []string{"taxonID", "scientificName"}, rows: "t1\tNoctua pronuba\n"})}})
	assert.Zero(t, result.Summary.Held)
	assert.Contains(t, result.Notes[0], "--taxa")
}

// Terms of Darwin Core that a record has no place for are kept; those of
// others, and what stands twice, are left with a reason.
func TestFurtherTermsOfAnArchive(t *testing.T) {
	wide := seenOnce
	wide.fields = append(slices.Clone(wide.fields), "reproductiveCondition", "http://sallowmere.example/terms/lampHours", "recordedBy")
	wide.rows = strings.ReplaceAll(wide.rows, "HumanObservation\n", "HumanObservation\tgravid\t4\tSomebody Else\n")
	out := t.TempDir()
	result := run(t, convert.Job{Out: out, Files: []string{foreign(t, wide)}})
	rows := table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt")
	assert.Equal(t, `"{""reproductiveCondition"":""gravid""}"`, rows[0]["dynamicProperties"])
	assert.Equal(t, "Ines Calloway", rows[0]["recordedBy"])
	assert.Equal(t, map[string]int{"column not understood": 2, "term stated in another column": 2}, result.Summary.Cells.Left)
}
