package main_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// hostile is a notebook whose texts would be a formula in a workbook or markup
// in a page. The beginnings =, +, - and @ are those that the OWASP page on CSV
// injection names.
const hostile = "Date,Species,Count,Site,Grid ref,Recorder,Remarks\n" +
	"12/6/2021,=1+2,3,@SUM(A1:A9),TL4588,Ines Calloway,x\n" +
	"12/6/2021,+cmd|' /C calc'!A0,3,Reed Bank,TL4588,Ines Calloway,x\n" +
	"13/6/2021,\"=HYPERLINK(\"\"http://x.invalid\"\",\"\"y\"\")\",3,-2+3,TL4588,Ines Calloway,=1\n" +
	"14/6/2021,<script>alert(1)</script>,3,<img src=x onerror=alert(2)>,TL4588,Ines <b>Calloway</b>,x\n" +
	"15/6/2021,Buff-tip,3,</script><script>alert(3)</script>,TL4588,Ines Calloway,<svg onload=alert(4)>\n" +
	"17/6/2021,Buff-tip,2,=2+5,TL4588,Ines Calloway,+x\n"

func TestTextStaysText(t *testing.T) {
	folder := t.TempDir()
	out := filepath.Join(folder, "out")
	notebook := filepath.Join(folder, "<i>season<i>.csv")
	require.NoError(t, os.WriteFile(notebook, []byte(hostile), 0o644))
	r := fieldfare(t, "", "convert", notebook, "--format", "xlsx", "--out", out)
	require.LessOrEqual(t, r.status, 1, r.err)
	seen := noFormulas(t, filepath.Join(out, "queries.xlsx"))
	for _, written := range []string{"=1+2", "+cmd|' /C calc'!A0", "=HYPERLINK("} {
		assert.Contains(t, seen, written, "what was written is shown as it was")
	}
	seen = noFormulas(t, filepath.Join(out, "records.xlsx"))
	for _, written := range []string{"=2+5", "+x", "<svg onload=alert(4)>", "</script><script>"} {
		assert.Contains(t, seen, written)
	}

	page, err := os.ReadFile(filepath.Join(out, "report.html"))
	require.NoError(t, err)
	for _, markup := range []string{"<script>alert", "<img src=x", "<svg onload", "<b>Calloway", "<i>season", "onerror=alert(2)>"} {
		assert.NotContains(t, strings.ToLower(string(page)), strings.ToLower(markup))
	}

	// The next year's set, whose changes are a workbook too.
	require.NoError(t, os.WriteFile(notebook, []byte(strings.ReplaceAll(hostile, "Buff-tip,3", "Buff-tip,4")+"16/6/2021,Buff-tip,1,=1+2,TL4588,@SUM(A1:A9),-2+3\n"), 0o644))
	next, changes := filepath.Join(folder, "next"), filepath.Join(folder, "changes.xlsx")
	require.LessOrEqual(t, fieldfare(t, "", "convert", notebook, "--out", next).status, 1)
	r = fieldfare(t, "", "compare", filepath.Join(out, "submission.zip"), filepath.Join(next, "submission.zip"), "--out", changes)
	require.Zero(t, r.status, r.err)
	assert.Contains(t, noFormulas(t, changes), "=1+2")
}

// noFormulas requires that nothing written in a notebook is a formula of the
// workbook, or one of its links, and returns all its texts.
func noFormulas(t *testing.T, path string) (texts string) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer f.Close()
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		require.NoError(t, err)
		for i, row := range rows {
			for j, text := range row {
				texts += text + "\n"
				cell, err := excelize.CoordinatesToCellName(j+1, i+1)
				require.NoError(t, err)
				formula, err := f.GetCellFormula(sheet, cell)
				require.NoError(t, err)
				assert.Empty(t, formula, "%s %s", sheet, cell)
				_, link, err := f.GetCellHyperLink(sheet, cell)
				require.NoError(t, err)
				assert.NotContains(t, link, "x.invalid")
			}
		}
	}
	return texts
}
