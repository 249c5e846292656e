package main_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// program is the built binary that every test here runs.
var program string

func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "fieldfare-test-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	program = filepath.Join(dir, "fieldfare")
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	if said, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "%s\n%v\n", said, err)
		os.Exit(1)
	}
	status := m.Run()
	os.RemoveAll(dir)
	os.Exit(status)
}

// ran is what a run of the program printed and returned.
type ran struct {
	out, err string
	status   int
}

func fieldfare(t *testing.T, stdin string, args ...string) ran {
	t.Helper()
	c := exec.Command(program, args...)
	var out, errs bytes.Buffer
	c.Stdin, c.Stdout, c.Stderr = strings.NewReader(stdin), &out, &errs
	err := c.Run()
	if _, exited := err.(*exec.ExitError); err != nil && !exited {
		require.NoError(t, err)
	}
	return ran{out.String(), errs.String(), c.ProcessState.ExitCode()}
}

func write(t *testing.T, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	return path
}

func TestDemo(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "a first try")
	r := fieldfare(t, "", "demo", folder)
	require.Zero(t, r.status, r.err)
	data, err := os.ReadFile(filepath.Join(folder, "handed-in", "summary.json"))
	require.NoError(t, err)
	var s struct {
		Read        int `json:"rows_read"`
		Fair        int `json:"fair"`
		Query       int `json:"query"`
		Held        int `json:"held"`
		Skipped     int `json:"skipped"`
		Occurrences int `json:"occurrences"`
	}
	require.NoError(t, json.Unmarshal(data, &s))
	assert.GreaterOrEqual(t, s.Read, 500)
	assert.Equal(t, s.Read, s.Fair+s.Query+s.Held+s.Skipped)
	assert.Positive(t, s.Held, "the demonstration has faults to show")
	assert.Greater(t, s.Occurrences, 500)
	again := fieldfare(t, "", "demo", folder)
	assert.Zero(t, again.status, "the demonstration can be run again: %s", again.err)
}

func TestDemoOverwritesNothing(t *testing.T) {
	folder := t.TempDir()
	mine := filepath.Join(folder, "places.csv")
	require.NoError(t, os.WriteFile(mine, []byte("my own places"), 0o644))
	r := fieldfare(t, "", "demo", folder)
	assert.Equal(t, 3, r.status)
	assert.Contains(t, r.err, "places.csv is there already")
	data, err := os.ReadFile(mine)
	require.NoError(t, err)
	assert.Equal(t, "my own places", string(data))
}

func TestHelp(t *testing.T) {
	for _, command := range []string{"convert", "check", "gridref", "explain", "demo"} {
		r := fieldfare(t, "", command, "--help")
		assert.Zero(t, r.status, command)
		assert.Contains(t, r.out, "fieldfare "+command, "an example in the help of "+command)
		assert.Empty(t, r.err)
		assert.Equal(t, r.out, fieldfare(t, "", "help", command).out)
	}
}

// handMade is a workbook as somebody makes it: columns in an order of their
// own, other words in the headings, two sheets, blank rows.
func handMade(t *testing.T) string {
	f := excelize.NewFile()
	defer f.Close()
	rows := map[string][][]any{
		"Sheet1": {
			{"my moths"}, {},
			{"Who", "How many", "What", "Where", "OS ref", "When"},
			{"Ines Calloway", 3, "Heart & Dart", "Tinker's Row", "TF 491 012", time.Date(2021, 6, 12, 0, 0, 0, 0, time.UTC)},
			{},
			{"Ines Calloway", 1, "noctua pronuba", "Tinker's Row", "TF491012", "13/6/21"},
		},
		"Reserve": {
			{"Latin name", "Night", "Locality", "Grid reference", "Recorder", "Number"},
			{}, {"Deilephila elpenor", "14-15 June 2021", "Sallowmere", "TL4588", "Tom Achterberg", "c.5"},
		},
	}
	_, err := f.NewSheet("Reserve")
	require.NoError(t, err)
	for sheet, lines := range rows {
		for i, line := range lines {
			require.NoError(t, f.SetSheetRow(sheet, fmt.Sprintf("A%d", i+1), &line))
		}
	}
	path := filepath.Join(t.TempDir(), "by hand.xlsx")
	require.NoError(t, f.SaveAs(path))
	return path
}

func TestWorkbookMadeByHand(t *testing.T) {
	out := filepath.Join(t.TempDir(), "out")
	r := fieldfare(t, "", "convert", handMade(t), "--out", out)
	require.Zero(t, r.status, r.err)
	data, err := os.ReadFile(filepath.Join(out, "summary.json"))
	require.NoError(t, err)
	var s map[string]any
	require.NoError(t, json.Unmarshal(data, &s))
	assert.EqualValues(t, 3, s["occurrences"], r.err)
	assert.EqualValues(t, 2, s["fair"], r.err)
	assert.EqualValues(t, 1, s["query"], "a text date among real ones is asked about")
}

func TestErrorsSayWhatToDo(t *testing.T) {
	locked := filepath.Join(t.TempDir(), "locked.xlsx")
	f := excelize.NewFile()
	require.NoError(t, f.SaveAs(locked, excelize.Options{Password: "moth"}))
	f.Close()
	out := filepath.Join(t.TempDir(), "out")
	for name, c := range map[string]struct {
		args   []string
		status int
		says   []string
	}{
		"missing file":       {[]string{"convert", "nowhere.xlsx", "--out", out}, 3, []string{"nowhere.xlsx"}},
		"password":           {[]string{"convert", locked, "--out", out}, 3, []string{"locked.xlsx", "password"}},
		"legacy workbook":    {[]string{"convert", write(t, "old.xls", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"+strings.Repeat("\x00", 4096)), "--out", out}, 3, []string{"old.xls", "xlsx"}},
		"empty file":         {[]string{"convert", write(t, "empty.csv", ""), "--out", out}, 3, []string{"empty.csv"}},
		"junk":               {[]string{"convert", write(t, "junk.xlsx", strings.Repeat("\x00\x01\x02\xff\xfe\x00\x9c", 500)), "--out", out}, 3, []string{"junk.xlsx"}},
		"no output folder":   {[]string{"convert", "x.csv"}, 2, []string{"--out"}},
		"no files":           {[]string{"check"}, 2, []string{"notebook"}},
		"unknown option":     {[]string{"check", "--colour", "x.csv"}, 2, []string{"colour", "--help"}},
		"unknown command":    {[]string{"covnert"}, 2, []string{"covnert"}},
		"wrong day":          {[]string{"check", "x.csv", "--today", "1.1.26"}, 2, []string{"1.1.26", "2026-01-31"}},
		"missing project":    {[]string{"check", handMade(t), "--project", "nowhere.toml"}, 2, []string{"nowhere.toml"}},
		"unknown setting":    {[]string{"check", handMade(t), "--project", write(t, "p.toml", "[dataset]\ntitel = \"x\"\n")}, 2, []string{"line 2", "titel"}},
		"output is a file":   {[]string{"convert", handMade(t), "--out", handMade(t)}, 3, []string{"folder"}},
		"missing taxon list": {[]string{"check", handMade(t), "--taxa", "nowhere.csv"}, 3, []string{"nowhere.csv", "no such file. Check its name, behind --taxa"}},
		"misspelt option":    {[]string{"check", "x.csv", "--taxe", "list.csv"}, 2, []string{"There is no option --taxe; there is --taxa."}},
		"option cut short":   {[]string{"convert", "x.csv", "--out"}, 2, []string{"Behind --out a FOLDER is missing."}},
		"value of an option": {[]string{"gridref", "--size", "small", "TL4588"}, 2, []string{"\"small\" cannot stand behind --size."}},
	} {
		t.Run(name, func(t *testing.T) {
			r := fieldfare(t, "", c.args...)
			assert.Equal(t, c.status, r.status, r.err)
			for _, s := range c.says {
				assert.Contains(t, r.err, s)
			}
			for _, jargon := range []string{"goroutine", "panic", "EOF", "nil", "invalid memory"} {
				assert.NotContains(t, r.err, jargon)
			}
			assert.NoDirExists(t, out)
		})
	}
}

func TestNoDateColumn(t *testing.T) {
	r := fieldfare(t, "", "check", write(t, "odd.csv", "Species,Site\nHeart and Dart,Sallowmere\nBuff-tip,Sallowmere\n"))
	assert.Equal(t, 1, r.status)
	assert.Contains(t, r.err, "date")
}

func TestCheckHandsNothingIn(t *testing.T) {
	path := write(t, "s.csv", "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n")
	r := fieldfare(t, "", "check", path, "--format", "json", "--show-reading")
	assert.Zero(t, r.status, r.err)
	entries, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, entries, 1)
	held := fieldfare(t, "", "check", write(t, "s.csv", "Date,Species,Count,Grid ref,Recorder\n31/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n"))
	assert.Equal(t, 1, held.status)
}

func TestStandardInput(t *testing.T) {
	r := fieldfare(t, "Date,Species,Count,Grid ref,Recorder\n12/6/2021,Heart and Dart,3,TL4588,Ines Calloway\n", "check", "-")
	assert.Zero(t, r.status, r.err)
	assert.Contains(t, r.err, "1 occurrence")
}

func TestExplain(t *testing.T) {
	for _, c := range []struct{ kind, value, csv string }{
		{"date", "12/13.vi.98", "12/13.vi.98,fair,1998-06-12/1998-06-13,"},
		{"count", "12", `12,fair,"{""individualCount"":""12""`},
		{"name", "Heart and Dart", "Heart and Dart,fair,Agrotis exclamationis,"},
	} {
		r := fieldfare(t, "", "explain", c.kind, c.value, "--format", "csv")
		require.Zero(t, r.status, r.err)
		lines := strings.Split(r.out, "\n")
		assert.Equal(t, "value,state,reading,message", strings.TrimSpace(lines[0]))
		assert.True(t, strings.HasPrefix(lines[1], c.csv), lines[1])
	}
	r := fieldfare(t, "12 June 2021\n\n31 June 2021\n", "explain", "date", "--format", "csv")
	assert.Equal(t, 4, strings.Count(r.out, "\n"), "one line out for each line in, and the header")
	assert.Equal(t, fieldfare(t, "", "explain", "date", "3/7/04").out, fieldfare(t, "", "explain", "Dates", "3/7/04").out)
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"explain", "place", "Sallowmere"}, "fieldfare gridref"},
		{[]string{"explain", "colour", "red"}, "write date, count or name"},
		{[]string{"explain", "date", "3/7", "--year", "04"}, "four figures"},
	} {
		r := fieldfare(t, "", c.args...)
		assert.Equal(t, 2, r.status)
		assert.Contains(t, r.err, c.says)
	}
}

// TestInterrupt interrupts the program while it works; the earlier outputs
// must be as they were.
func TestInterrupt(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has no signal that a test can send to one program")
	}
	folder := t.TempDir()
	out := filepath.Join(folder, "out")
	require.Zero(t, fieldfare(t, "", "convert", handMade(t), "--out", out).status)
	before, err := os.ReadFile(filepath.Join(out, "submission.zip"))
	require.NoError(t, err)

	var large strings.Builder
	large.WriteString("Date,Species,Count,Grid ref,Recorder\n")
	for i := range 300_000 {
		fmt.Fprintf(&large, "12/6/2021,Heart and Dart,%d,TL4588,Ines Calloway\n", i)
	}
	c := exec.Command(program, "convert", write(t, "large.csv", large.String()), "--out", out)
	var said bytes.Buffer
	c.Stderr = &said
	require.NoError(t, c.Start())
	require.Eventually(t, func() bool { // the run has begun, and listens
		begun, _ := filepath.Glob(filepath.Join(out, ".fieldfare-*"))
		return len(begun) > 0
	}, time.Minute, 10*time.Millisecond)
	require.NoError(t, c.Process.Signal(os.Interrupt))
	require.Error(t, c.Wait())
	assert.Equal(t, 3, c.ProcessState.ExitCode())
	assert.Contains(t, said.String(), "earlier outputs are as they were")
	after, err := os.ReadFile(filepath.Join(out, "submission.zip"))
	require.NoError(t, err)
	assert.True(t, bytes.Equal(before, after))
	entries, err := os.ReadDir(out)
	require.NoError(t, err)
	for _, e := range entries {
		assert.False(t, strings.HasPrefix(e.Name(), "."), "%s is left behind", e.Name())
	}
}
