package convert_test

import (
	"archive/zip"
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/compare"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mark is in every value of the planted records that must not leave.
const mark = "zqx"

const planted = `
[dataset]
title = "Records of the fen"
licence = "CC0"
[lists]
places = "places.csv"
people = "people.csv"
[privacy]
people = ["Quentin Zqxworthy"]
[[privacy.taxon]]
name = "Phalera bucephala"
square_metres = 10000
[[privacy.place]]
name = "The zqx Paddock"
square_metres = 2000
`

var plantedHead = strings.Split("Date,Species,Count,Site,Grid ref,Recorder,Determiner,Method,Effort,Habitat,Weather,Temperature (°C),Forewing (mm),Specimen,Comments,County,Certainty,Record id,"+
	"eventID,parentEventID,locationID,fieldNumber,dynamicProperties,associatedMedia,references,island,municipality,higherGeography,locationRemarks,eventRemarks,taxonRemarks,"+
	"higherClassification,subgenus,behavior,accessRights,institutionCode,collectionCode,datasetName,rightsHolder,recordNumber,catalogNumber,"+
	"verbatimLocality,georeferencedBy,georeferenceSources,fieldNotes,identificationRemarks,preparations,type", ",")

// plant writes so many records: of a sensitive moth, of a private place by its
// name, of one by its square alone, and harmless ones by somebody who is not
// to be named. Shift moves every private place within its square.
func plant(t testing.TB, folder string, n, shift int) string {
	t.Helper()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "fieldfare.toml"), []byte(planted), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "places.csv"), []byte("Name,Also written,Grid reference,Private\nzqx Cottage,zqx garden,TF 4912 0123,yes\nSallowmere Reserve,,TL 45 88,\n"), 0o644))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "people.csv"), []byte("Name,Initials\nInes Calloway,IC\nQuentin Zqxworthy,QZ\n"), 0o644))
	path := filepath.Join(folder, "zqx Cottage book.csv")
	file, err := os.Create(path)
	require.NoError(t, err)
	defer file.Close()
	w := csv.NewWriter(file)
	require.NoError(t, w.Write(plantedHead))
	r := rand.New(rand.NewPCG(8, 8))
	for i := range n {
		secret := func() string { return fmt.Sprintf("%s%d%s", mark, r.IntN(1_000_000), mark) }
		row := make([]string, len(plantedHead))
		for c := range row {
			row[c] = secret()
		}
		set := func(column, value string) {
			for c, h := range plantedHead {
				if h == column {
					row[c] = value
				}
			}
		}
		set("Date", fmt.Sprintf("%d/%d/%d", 1+r.IntN(28), 5+r.IntN(4), 1990+r.IntN(30)))
		set("Count", fmt.Sprint(1+r.IntN(9)))
		set("Species", []string{"Heart and Dart", "Large Yellow Underwing", "Hebrew Character"}[r.IntN(3)])
		set("Recorder", "Ines Calloway")
		set("Temperature (°C)", fmt.Sprint(10+r.IntN(9)))
		set("Forewing (mm)", fmt.Sprint(10+r.IntN(9)))
		switch i % 4 {
		case 0: // somewhere in TL48, but never the same square
			set("Species", "Buff-tip")
			set("Grid ref", fmt.Sprintf("TL4%03d8%03d", (r.IntN(900)+shift)%1000, (r.IntN(900)+shift)%1000))
		case 1: // a part of the private place, whose own square is TF40V
			set("Site", "zqx garden")
			set("Grid ref", fmt.Sprintf("TF49%02d01%02d", (r.IntN(60)+shift)%100, (r.IntN(60)+shift)%100))
		case 2: // close by the private place, by another name
			set("Grid ref", fmt.Sprintf("TF491%d012%d", (r.IntN(6)+shift)%10, (r.IntN(6)+shift)%10))
		case 3:
			for c := range row {
				if strings.Contains(row[c], mark) {
					row[c] = ""
				}
			}
			set("Site", "Sallowmere Reserve")
			set("Grid ref", "TL4588")
			set("Method", "walk") // a blank one would repeat what stands above
			set("Recorder", []string{"Quentin Zqxworthy", "QZ", "Q. Zqxworthy", "Ines Calloway & QZ"}[r.IntN(4)])
			set("Comments", []string{"openly said", "shown by Q. Zqxworthy, openly said", "openly said, QZ's trap; ring 01353 555012", "zqxworthy@example.org openly said"}[r.IntN(4)])
		}
		require.NoError(t, w.Write(row))
	}
	w.Flush()
	require.NoError(t, w.Error())
	return path
}

// streams are all bytes of the output folder that are meant for others, zips
// unpacked, by name.
func streams(t testing.TB, folder string) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		name := e.Name()
		if name == convert.QueriesFile || name == convert.ExactFile {
			continue // the recorder's own
		}
		data, err := os.ReadFile(filepath.Join(folder, name))
		require.NoError(t, err)
		z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
		if err != nil {
			all[name] = data
			continue
		}
		for _, f := range z.File {
			in, err := f.Open()
			require.NoError(t, err)
			text, err := io.ReadAll(in)
			require.NoError(t, err)
			all[name+"/"+f.Name] = text
		}
	}
	return all
}

// fine matches what gives a square finer than 2 km in TF40 or 10 km in TL48
// away, and the initials of the one who is not to be named.
var fine = regexp.MustCompile(`(?i)TF ?49\d* ?0|TL ?4[0-46-9]\d* ?8\d|TL ?45\d{3,}|\bQZ\b|Zqxworthy|01353 555012`)

// plantedRecords is how many records are planted: FIELDFARE_PRIVACY_RECORDS, in
// full 100000, else fewer.
func plantedRecords(t *testing.T) int {
	text := os.Getenv("FIELDFARE_PRIVACY_RECORDS")
	if text == "" {
		return 2000
	}
	n, err := strconv.Atoi(text)
	require.NoError(t, err)
	return n
}

func TestNothingPrivateLeaves(t *testing.T) {
	records := plantedRecords(t)
	folder := t.TempDir()
	out := filepath.Join(folder, "out")
	path := plant(t, folder, records, 0)
	result := run(t, convert.Job{Files: []string{path}, Out: out, Formats: convert.Formats(), Exact: true})
	require.Greater(t, result.Summary.Occurrences, records*9/10, "nearly all are handed in")
	all := streams(t, out)
	for _, want := range []string{"submission.zip/event.txt", "submission.zip/occurrence.txt", "submission.zip/eml.xml", "records.csv", "records.geojson", "records.xlsx/xl/worksheets/sheet1.xml", convert.SummaryFile, convert.ReportFile} {
		require.Contains(t, all, want)
	}
	for name, data := range all {
		low := bytes.ToLower(data)
		if i := bytes.Index(low, []byte(mark)); i >= 0 {
			t.Errorf("%s: …%s…", name, data[max(0, i-200):min(len(data), i+100)])
		}
		if strings.HasSuffix(name, ".txt") || strings.HasSuffix(name, ".csv") || strings.HasSuffix(name, "json") || strings.HasSuffix(name, "html") {
			if at := fine.FindIndex(data); at != nil {
				t.Errorf("%s: …%s…", name, data[max(0, at[0]-200):min(len(data), at[1]+100)])
			}
		}
	}
	assert.Contains(t, string(all["records.csv"]), "openly said", "what is not private is there")
	inSquares(t, filepath.Join(out, convert.SubmissionFile))

	// The full copy has it all, but for people who are not to be named.
	exact := table(t, filepath.Join(out, convert.ExactFile), "occurrence.txt")
	text, secrets := fmt.Sprint(exact), 0
	secrets = strings.Count(text, mark)
	assert.Greater(t, secrets, records)
	assert.NotContains(t, text, "Zqxworthy")
	assert.NotContains(t, text, "01353 555012")
}

// Moving every private place within its square changes nothing that leaves:
// neither what a later submission adds to an earlier one, nor what it withdraws.
func TestDifferencesTellNothing(t *testing.T) {
	const records = 1000
	folder := t.TempDir()
	out := filepath.Join(folder, "out")
	run(t, convert.Job{Files: []string{plant(t, folder, records, 0)}, Out: out})
	moved := filepath.Join(folder, "moved")
	require.NoError(t, os.Mkdir(moved, 0o755))
	again := plant(t, moved, records, 1)
	run(t, convert.Job{Files: []string{again}, Out: filepath.Join(moved, "out"), Against: filepath.Join(out, convert.SubmissionFile)})
	diff, err := compare.Submissions(filepath.Join(out, convert.SubmissionFile), filepath.Join(moved, "out", convert.SubmissionFile))
	require.NoError(t, err)
	assert.Empty(t, diff.New)
	assert.Empty(t, diff.Changed)
	withdrawn, err := os.ReadFile(filepath.Join(moved, "out", convert.WithdrawnFile))
	require.NoError(t, err)
	assert.Equal(t, 1, bytes.Count(withdrawn, []byte("\n")), "only the headings")
}

// inSquares asserts that every record that is not of the reserve bears the
// coarse square and nothing else of its place, and that exact and blurred
// records share no event.
func inSquares(t *testing.T, submission string) {
	t.Helper()
	exactEvent, blurredEvent := map[string]bool{}, map[string]bool{}
	last := false
	for _, r := range table(t, submission, "occurrence.txt") {
		blurred := r["dataGeneralizations"] != ""
		if last && !blurred {
			t.Fatal("a blurred record stands among the exact ones")
		}
		last = blurred
		if !blurred {
			exactEvent[r["eventID"]] = true
			continue
		}
		blurredEvent[r["eventID"]] = true
		if v := r["verbatimCoordinates"]; v != "TF40V" && v != "TF40" && v != "TL48" && v != "TF40Q" {
			t.Fatalf("%v", r)
		}
		for _, term := range []string{"locality", "verbatimLocality", "occurrenceRemarks", "verbatimEventDate", "habitat", "samplingProtocol", "county", "fieldNotes", "locationID"} {
			if r[term] != "" {
				t.Fatalf("%s: %v", term, r)
			}
		}
	}
	assert.NotEmpty(t, exactEvent)
	assert.NotEmpty(t, blurredEvent)
	for id := range blurredEvent {
		if exactEvent[id] {
			t.Fatalf("the event %s has exact and blurred records", id)
		}
	}
}
