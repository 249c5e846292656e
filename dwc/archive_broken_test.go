package dwc_test

import (
	"archive/zip"
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
)

// readAll opens an archive and reads every table, and returns the first error.
func readAll(path string, limits ...dwc.Limits) error {
	a, err := dwc.OpenArchive(path, limits...)
	if err != nil {
		return err
	}
	defer a.Close()
	for _, table := range a.Tables() {
		for _, err := range table.Rows() {
			if err != nil {
				return err
			}
		}
	}
	_, err = a.Metadata()
	return err
}

func TestBrokenArchivesSayWhereAndWhatToDo(t *testing.T) {
	ok := "a1,Agrotis puta,x\n"
	archive := func(attrs, content, text string) string {
		return zipped(t, map[string]string{"meta.xml": meta(attrs, content), "o.txt": text})
	}
	for name, c := range map[string]struct {
		path string
		want string
	}{
		"no file":             {"no such.zip", "no such.zip: There is no such file or folder."},
		"empty file":          {saved(t, "e.zip", nil), "The file is empty."},
		"cut zip":             {saved(t, "c.zip", eventArchive(t, 3)[:900]), "The zip is damaged or not complete."},
		"picture":             {saved(t, "p.zip", []byte("%PDF-1.7")), "neither a zip nor a text file"},
		"workbook":            {zipped(t, map[string]string{"[Content_Types].xml": "<x/>", "xl/workbook.xml": "<x/>"}), "This is a workbook or a document"},
		"zip in a zip":        {zipped(t, map[string]string{"archive.zip": "PK"}), "There is another zip in here, “archive.zip”"},
		"nothing of use":      {zipped(t, map[string]string{"photo.jpg": "x"}), "neither a meta.xml nor a text file of records. It holds photo.jpg."},
		"empty folder":        {t.TempDir(), "It holds no file."},
		"two archives":        {foldered(t, map[string]string{"a/meta.xml": "x", "b/meta.xml": "x"}), "several archives"},
		"two tables":          {zipped(t, map[string]string{"a.csv": "occurrenceID\n1\n", "b.csv": "eventID\n1\n"}), "several tables in here (a.csv, b.csv) and no meta.xml"},
		"no term":             {saved(t, "n.csv", []byte("colour,size\nbrown,small\n")), "n.csv, line 1: The first line names no term of Darwin Core"},
		"not XML":             {zipped(t, map[string]string{"meta.xml": "<archive>\n<core>\n<files></core>"}), "meta.xml, line 3: The document is not well-formed XML"},
		"two roots":           {zipped(t, map[string]string{"meta.xml": "<archive/><archive/>"}), "not well-formed"},
		"empty XML":           {zipped(t, map[string]string{"meta.xml": ""}), "not well-formed"},
		"ampersand":           {zipped(t, map[string]string{"meta.xml": "<archive>Moths & butterflies</archive>"}), "“&” is written for “&amp;”"},
		"own entity":          {zipped(t, map[string]string{"meta.xml": `<!DOCTYPE a [<!ENTITY x SYSTEM "file:///etc/passwd">]><archive>&x;</archive>`}), "not well-formed"},
		"other XML":           {zipped(t, map[string]string{"meta.xml": "<html/>"}), "The document is <html>, not the <archive>"},
		"no core":             {zipped(t, map[string]string{"meta.xml": "<archive/>"}), "There are 0 <core> elements"},
		"two cores":           {zipped(t, map[string]string{"meta.xml": "<archive><core/><core/></archive>"}), "There are 2 <core> elements"},
		"no files":            {archive("", `<field index="0" term="x"/>`, ok), "No file is named for this table"},
		"empty location":      {archive("", three(" "), ok), "The name of the file is empty"},
		"missing file":        {archive("", three("p.txt"), ok), "The file “p.txt” is not in the archive, which holds meta.xml, o.txt."},
		"on the web":          {archive("", three("https://example.org/o.txt"), ok), "Fetch it, put it beside meta.xml"},
		"outside":             {archive("", three("../o.txt"), ok), "“../o.txt” is not in the archive"},
		"absolute":            {archive("", three("/etc/passwd"), ok), "“/etc/passwd” is not in the archive"},
		"no fields":           {archive("", `<files><location>o.txt</location></files>`, ok), "<field> elements are missing"},
		"no term of a field":  {archive("", `<files><location>o.txt</location></files><field index="0"/>`, ok), "does not say which term"},
		"index no number":     {archive("", `<files><location>o.txt</location></files><field index="two" term="x"/>`, ok), "The index is “two”"},
		"index below zero":    {archive("", `<files><location>o.txt</location></files><field index="-1" term="x"/>`, ok), "The index is “-1”"},
		"index out of reach":  {archive("", `<files><location>o.txt</location></files><field index="999999999" term="x"/>`, ok), "The index is “999999999”"},
		"two ids":             {archive("", three("o.txt")+`<id index="1"/>`, ok), "a second <id>"},
		"header lines":        {archive(`ignoreHeaderLines="one"`, three("o.txt"), ok), "ignoreHeaderLines is “one”"},
		"encoding":            {archive(`encoding="Sallowmere"`, three("o.txt"), ok), "The encoding “Sallowmere” is not known"},
		"no delimiter":        {archive(`fieldsTerminatedBy=""`, three("o.txt"), ok), "fieldsTerminatedBy is empty"},
		"no line end":         {archive(`linesTerminatedBy=""`, three("o.txt"), ok), "linesTerminatedBy is empty"},
		"same delimiter":      {archive(`fieldsTerminatedBy="'" fieldsEnclosedBy="'"`, three("o.txt"), ok), "so that values cannot be told apart"},
		"wrong delimiter":     {archive(`fieldsTerminatedBy="\t"`, three("o.txt"), ok), "o.txt, line 1: The values are said to have tabs between them, but there are commas instead."},
		"not UTF-8":           {archive("", three("o.txt"), ok+ok+"a3,\"two\nlines\",H\xfcbner\n"), "o.txt, line 4: There are characters here that are not UTF-8"},
		"not UTF-8 in line 1": {archive("", three("o.txt"), "a3,H\xfcbner,x\n"), "o.txt, line 1: There are characters here"},
		"open quote":          {archive("", three("o.txt"), ok+"a2,\"two\nlines\",\"small\n"+ok+ok), "o.txt, line 3: A value opens with \" here that is never closed."},
		"metadata":            {zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": ok, "eml.xml": "<html/>"}), "eml.xml, line 1: The document is <html> and has no <dataset>"},
	} {
		t.Run(name, func(t *testing.T) {
			err := readAll(c.path)
			var known *dwc.ReadError
			require.ErrorAs(t, err, &known)
			assert.Contains(t, err.Error(), c.want)
			assert.NotEmpty(t, known.File)
		})
	}
}

func TestMissingFileIsKnownAsSuch(t *testing.T) {
	_, err := dwc.OpenArchive(filepath.Join(t.TempDir(), "none"))
	assert.ErrorIs(t, err, fs.ErrNotExist)
}

// entry is one file of a zip made by hand.
type entry struct {
	name, content string
	mode          fs.FileMode
}

func craftedZip(t testing.TB, entries ...entry) string {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, e := range entries {
		h := &zip.FileHeader{Name: e.name, Method: zip.Deflate}
		if e.mode != 0 {
			h.SetMode(e.mode)
		}
		w, err := z.CreateHeader(h)
		require.NoError(t, err)
		_, err = w.Write([]byte(e.content))
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return saved(t, "crafted.zip", b.Bytes())
}

func TestTricksWithNamesAreRefused(t *testing.T) {
	descriptor := entry{name: "meta.xml", content: meta("", three("o.txt"))}
	for want, e := range map[string]entry{
		"“../o.txt”, which points to a place outside":       {name: "../o.txt"},
		"“a/../../o.txt”, which points":                     {name: "a/../../o.txt"},
		"“/o.txt”, which points":                            {name: "/o.txt"},
		"“C:/o.txt”, which points":                          {name: `C:\o.txt`},
		"“../b/o.txt”, which points":                        {name: `..\b\o.txt`},
		"“o.txt” in the zip is a link":                      {name: "o.txt", content: "/etc/passwd", mode: fs.ModeSymlink | 0o777},
		"two files named “meta.xml”":                        {name: "meta.xml", content: "x"},
		"two files named “meta.xml”, and it cannot be told": {name: "./meta.xml", content: "x"},
	} {
		err := readAll(craftedZip(t, descriptor, e))
		assert.ErrorContains(t, err, want)
	}
	// A folder does not lead out of itself either.
	outside := saved(t, "secret.txt", []byte("a1,b,c\n"))
	dir := foldered(t, map[string]string{"meta.xml": meta("", three("o.txt"))})
	require.NoError(t, os.Symlink(outside, filepath.Join(dir, "o.txt")))
	assert.ErrorContains(t, readAll(dir), "a link to a place outside the folder")
}

func TestFilesBeneathBackslashes(t *testing.T) {
	a := opened(t, craftedZip(t, entry{name: `top\meta.xml`, content: meta("", three(`data\o.txt`))}, entry{name: `top\data\o.txt`, content: "a1,b,c\n"}))
	assert.Equal(t, [][]string{{"a1", "b", "c"}}, values(t, a.Core))
}

func TestLockedOrOddlyPackedZip(t *testing.T) {
	path := zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": "a1,b,c\n"})
	sound, err := os.ReadFile(path)
	require.NoError(t, err)
	directory := bytes.Index(sound, []byte("PK\x01\x02"))
	// Byte 8 of an entry in the central directory holds its flags, byte 10 its
	// method (PKWARE APPNOTE 4.3.12).
	locked := bytes.Clone(sound)
	locked[directory+8] |= 1
	assert.ErrorContains(t, readAll(saved(t, "l.zip", locked)), "locked with a password")
	odd := bytes.Clone(sound)
	odd[directory+10] = 97
	assert.ErrorContains(t, readAll(saved(t, "o.zip", odd)), "packed in a way that cannot be read here")
	bent := bytes.Clone(sound)
	bent[directory+16] ^= 0xff // of the checksum
	assert.ErrorContains(t, readAll(saved(t, "b.zip", bent)), "damaged")
}

func TestLimits(t *testing.T) {
	big := "a1," + strings.Repeat("x", 100_000) + ",y\n"
	archive := func(text string) string {
		return zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": text})
	}
	deep := strings.Repeat("<a>", 70) + strings.Repeat("</a>", 70)
	for name, c := range map[string]struct {
		path   string
		limits dwc.Limits
		want   string
	}{
		"field":          {archive(big), dwc.Limits{FieldBytes: 50_000}, "A value in the row that begins here is longer than 48 KiB"},
		"record":         {archive(big), dwc.Limits{RecordBytes: 50_000}, "A row that begins here is longer than 48 KiB"},
		"open quote":     {archive("a1,\"" + strings.Repeat("x\n", 1<<20)), dwc.Limits{RecordBytes: 1 << 20}, "Perhaps a quotation mark that opens a value is never closed."},
		"columns":        {archive(strings.Repeat("x,", 100)), dwc.Limits{Columns: 50}, "more than 50 values"},
		"columns quoted": {archive(strings.Repeat(`"x",`, 100)), dwc.Limits{Columns: 50}, "more than 50 values"},
		"file":           {archive(strings.Repeat(big, 100)), dwc.Limits{FileBytes: 1 << 20}, "The file is larger than 1 MiB"},
		"unpacking":      {archive(strings.Repeat("a1,"+strings.Repeat("x", 1000)+",c\n", 70<<10)), dwc.Limits{Ratio: 100}, "grows to more than 100 times its size"},
		"entries":        {archive("x"), dwc.Limits{Entries: 1}, "more than 1 files"},
		"folder":         {foldered(t, map[string]string{"a": "", "b": ""}), dwc.Limits{Entries: 1}, "more than 1 files"},
		"deep XML":       {zipped(t, map[string]string{"meta.xml": deep}), dwc.Limits{}, "More than 64 elements are within each other"},
		"deep EML":       {zipped(t, map[string]string{"meta.xml": meta("", three("o.txt")), "o.txt": "a,b,c\n", "eml.xml": deep}), dwc.Limits{}, "More than 64 elements"},
		"many elements":  {zipped(t, map[string]string{"meta.xml": "<archive>" + strings.Repeat("<a b=''/>", 100)}), dwc.Limits{XMLBytes: 1000}, "more elements than any such document needs"},
		"large XML":      {zipped(t, map[string]string{"meta.xml": "<archive>" + strings.Repeat(" ", 2000)}), dwc.Limits{XMLBytes: 1000}, "The document is larger than 1000 bytes"},
		"field elements": {archive("x"), dwc.Limits{Columns: 2}, "more than 2 fields"},
	} {
		t.Run(name, func(t *testing.T) {
			assert.ErrorContains(t, readAll(c.path, c.limits), c.want)
		})
	}
	assert.NoError(t, readAll(archive(big)))
}
