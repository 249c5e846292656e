package convert_test

import (
	"archive/zip"
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/answers"
	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// zipped packs parts, each a name and its content.
func zipped(t *testing.T, parts ...string) string {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for i := 0; i < len(parts); i += 2 {
		p, err := w.Create(parts[i])
		require.NoError(t, err)
		_, err = p.Write([]byte(parts[i+1]))
		require.NoError(t, err)
	}
	require.NoError(t, w.Close())
	return b.String()
}

// hostileBook is a workbook of one sheet with the XML given.
func hostileBook(t *testing.T, sheet string) string {
	const main, rel = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`, `http://schemas.openxmlformats.org/officeDocument/2006/relationships`
	rels := func(kind, target string) string {
		return `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="` + rel + "/" + kind + `" Target="` + target + `"/></Relationships>`
	}
	return zipped(t, "[Content_Types].xml", "<Types/>", "_rels/.rels", rels("officeDocument", "xl/workbook.xml"),
		"xl/workbook.xml", `<workbook `+main+` xmlns:r="`+rel+`"><sheets><sheet name="Moths" sheetId="1" r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels", rels("worksheet", "worksheets/sheet1.xml"),
		"xl/worksheets/sheet1.xml", `<worksheet `+main+`>`+sheet+`</worksheet>`)
}

// A notebook that cannot be read, by accident or by design, is refused with a
// sentence, also beside good ones, and the earlier outputs stay as they were.
func TestHostileNotebooksLeaveEarlierOutputs(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	good := write(t, "season.csv", season)
	run(t, convert.Job{Files: []string{good}, Out: out})
	before := contents(t, out)
	require.Len(t, before, 4)
	good2, err := os.ReadFile(good)
	require.NoError(t, err)
	whole := hostileBook(t, `<sheetData><row><c t="str"><v>Date</v></c></row></sheetData>`)
	meta := `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence"><files><location>%</location></files><id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/></core></archive>`
	outside := func(name string) string {
		return zipped(t, "meta.xml", strings.Replace(meta, "%", name, 1), "a.csv", "1,2014-06-12\n")
	}
	for name, c := range map[string]struct{ name, content, want string }{
		"zip bomb":                 {"a.xlsx", hostileBook(t, strings.Repeat(" ", 80<<20)), "unpacks to an enormous one"},
		"deep":                     {"a.xlsx", hostileBook(t, strings.Repeat("<a>", 500_000)), "nested far deeper"},
		"a million columns":        {"a.csv", strings.Repeat("1,", 1_000_000), "1000001 columns"},
		"a cell of many megabytes": {"a.csv", "Date,Species\n12/6/2014," + strings.Repeat("x", 4<<20), "more than 1 MB of text"},
		"the whole sheet merged":   {"a.xlsx", hostileBook(t, `<sheetData><row><c><v>1</v></c></row>`+strings.Repeat("<row/>", 2000)+`</sheetData><mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>`), "merged areas cover more"},
		"cut short":                {"a.xlsx", whole[:len(whole)/2], "cut short or damaged"},
		"renamed":                  {"a.csv", "\x89PNG\r\n\x1a\n", "a picture"},
		"outside the archive":      {"a.zip", outside("../season.csv"), "is not in the archive"},
		"absolute in the archive":  {"a.zip", outside("/etc/passwd"), "is not in the archive"},
		"the same name twice":      {"a.zip", zipped(t, "meta.xml", strings.Replace(meta, "%", "a.csv", 1), "a.csv", "1,2014-06-12\n", "a.csv", "2,2015-06-12\n"), "two files named"},
	} {
		t.Run(name, func(t *testing.T) {
			path := write(t, c.name, c.content)
			_, err := convert.Run(t.Context(), convert.Job{Files: []string{good, path}, Out: out, Today: today})
			var problem *notebook.Problem
			require.ErrorAs(t, err, &problem)
			assert.Contains(t, problem.Error(), c.want)
			assert.True(t, strings.HasSuffix(problem.Error(), "."), problem.Error())
			assert.Equal(t, before, contents(t, out))
			now, err := os.ReadFile(good)
			require.NoError(t, err)
			assert.Equal(t, good2, now, "the notebooks are never changed")
		})
	}
}

// Merged areas that lie across each other, or on themselves, are read: the
// cells of a later one that another has taken keep its text.
func TestMergedAreasAcrossEachOther(t *testing.T) {
	text := func(s string) string { return `<c t="inlineStr"><is><t>` + s + `</t></is></c>` }
	book := hostileBook(t, `<sheetData><row>`+text("Date")+text("Species")+text("Site")+`</row><row>`+text("12/6/2014")+text("Flame")+text("Old Drove")+
		`</row><row><c/>`+text("Drinker")+`<c/></row></sheetData><mergeCells><mergeCell ref="A2:A3"/><mergeCell ref="A3:A2"/><mergeCell ref="C2:C3"/><mergeCell ref="C2:C3"/><mergeCell ref="A3:A4"/></mergeCells>`)
	result := run(t, convert.Job{Files: []string{write(t, "merged.xlsx", book)}})
	assert.Equal(t, 2, result.Summary.Occurrences)
}

// A sheet of nothing but errors is read: every record is held and said to be.
func TestSheetOfErrors(t *testing.T) {
	head := `<row><c t="inlineStr"><is><t>Date</t></is></c><c t="inlineStr"><is><t>Species</t></is></c><c t="inlineStr"><is><t>Count</t></is></c></row>`
	book := hostileBook(t, `<sheetData>`+head+strings.Repeat(`<row><c t="e"><v>#REF!</v></c><c t="e"><v>#N/A</v></c><c t="e"><v>#VALUE!</v></c></row>`, 5000)+`</sheetData>`)
	result := run(t, convert.Job{Files: []string{write(t, "errors.xlsx", book)}})
	assert.Equal(t, 5001, result.Summary.Read)
	assert.Equal(t, 5000, result.Summary.Held)
	assert.Zero(t, result.Summary.Occurrences)
}

// contents are the files of a folder by their names.
func contents(t *testing.T, folder string) map[string]string {
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	out := map[string]string{}
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(folder, e.Name()))
		require.NoError(t, err)
		out[e.Name()] = string(data)
	}
	return out
}

// TestEndlessFiles: a device or a pipe in the place of a file is told of, not
// read for ever.
func TestEndlessFiles(t *testing.T) {
	const endless = "/dev/zero"
	if _, err := os.Stat(endless); err != nil {
		t.Skip("there is no such device here")
	}
	folder := t.TempDir()
	put := func(name, text string) string {
		path := filepath.Join(folder, name)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		return path
	}
	book := put("season.csv", lastingHead+strings.Join(lastingRows, "\n"))
	out := filepath.Join(folder, "out")
	link := func(name string) string {
		path := filepath.Join(folder, name)
		os.Remove(path)
		require.NoError(t, os.Symlink(endless, path))
		return path
	}
	for name, job := range map[string]convert.Job{
		"a taxon list":        {Taxa: []string{endless}},
		"a past archive":      {Against: endless},
		"answers":             {Answers: []string{link("given.csv")}},
		"a project file":      {Project: link("endless.toml")},
		"taxa of the project": {Project: put("taxa.toml", `lists.taxa = ["/dev/zero"]`)},
		"places":              {Project: put("places.toml", `lists.places = "/dev/zero"`)},
		"people":              {Project: put("people.toml", `lists.people = "/dev/zero"`)},
		"past records":        {Project: put("past.toml", `lists.past = ["/dev/zero"]`)},
		"an area":             {Project: put("area.toml", "[[lists.area]]\nfile = '/dev/zero'\n")},
		"a notebook":          {Files: []string{endless}},
	} {
		if job.Files == nil {
			job.Files = []string{book}
		}
		job.Out = out
		_, err := convert.Run(context.Background(), job)
		assert.ErrorContains(t, err, "not an ordinary file", name)
	}
	require.NoError(t, os.MkdirAll(out, 0o755))
	link("out/" + convert.QueriesFile)
	run(t, convert.Job{Files: []string{book}, Out: out})
	info, err := os.Lstat(filepath.Join(out, convert.QueriesFile))
	require.NoError(t, err)
	assert.True(t, info.Mode().IsRegular(), "the link gave way to the workbook")
	for _, name := range []string{"fieldfare-ledger.tsv", answers.FileName} {
		put("fieldfare.toml", "")
		link(name)
		_, err = convert.Run(context.Background(), convert.Job{Files: []string{book}, Out: out})
		assert.ErrorContains(t, err, name+": it is not an ordinary file")
		require.NoError(t, os.Remove(filepath.Join(folder, name)))
	}
}
