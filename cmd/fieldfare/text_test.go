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
	"15/6/2021,Buff-tip,3,</script><script>alert(3)</script>,TL4588,Ines Calloway,<svg onload=alert(4)>\n"

func TestTextStaysText(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	r := fieldfare(t, "", "convert", write(t, "<i>season<i>.csv", hostile), "--out", out)
	require.LessOrEqual(t, r.status, 1, r.err)

	f, err := excelize.OpenFile(filepath.Join(out, "queries.xlsx"))
	require.NoError(t, err)
	defer f.Close()
	seen := ""
	for _, sheet := range f.GetSheetList() {
		rows, err := f.GetRows(sheet)
		require.NoError(t, err)
		for i, row := range rows {
			for j, text := range row {
				seen += text + "\n"
				cell, err := excelize.CoordinatesToCellName(j+1, i+1)
				require.NoError(t, err)
				formula, err := f.GetCellFormula(sheet, cell)
				require.NoError(t, err)
				for _, written := range []string{"cmd|", "1+2", "HYPERLINK(\"http", "SUM(A1", "-2+3"} {
					assert.NotContains(t, formula, written, "%s %s", sheet, cell)
				}
			}
		}
	}
	for _, written := range []string{"=1+2", "+cmd|' /C calc'!A0", "=HYPERLINK("} {
		assert.Contains(t, seen, written, "what was written is shown as it was")
	}

	page, err := os.ReadFile(filepath.Join(out, "report.html"))
	require.NoError(t, err)
	for _, markup := range []string{"<script>alert", "<img src=x", "<svg onload", "<b>Calloway", "<i>season", "onerror=alert(2)>"} {
		assert.NotContains(t, strings.ToLower(string(page)), strings.ToLower(markup))
	}
}
