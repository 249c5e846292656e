package convert_test

import (
	"archive/zip"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"
	"fieldfare/convert/demo"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/require"
)

// today is the fixed day of all tests here.
var today = when.Date{Year: 2026, Month: 1, Day: 31}

// run converts files with nothing on the machine but the test's own folder.
func run(t testing.TB, job convert.Job) *convert.Result {
	t.Helper()
	if job.Today.IsZero() {
		job.Today = today
	}
	result, err := convert.Run(context.Background(), job)
	require.NoError(t, err)
	return result
}

// write puts a notebook into a new folder and returns its path.
func write(t testing.TB, name, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	return path
}

// table is one table of a submission: its rows as term to value.
func table(t testing.TB, submission, name string) []map[string]string {
	t.Helper()
	z, err := zip.OpenReader(submission)
	require.NoError(t, err)
	defer z.Close()
	f, err := z.Open(name)
	require.NoError(t, err)
	defer f.Close()
	data, err := io.ReadAll(f)
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	head := strings.Split(lines[0], "\t")
	rows := make([]map[string]string, 0, len(lines)-1)
	for _, line := range lines[1:] {
		row := map[string]string{}
		for i, value := range strings.Split(line, "\t") {
			row[head[i]] = value
		}
		rows = append(rows, row)
	}
	return rows
}

// converted runs one notebook, given as text, and returns what was handed in.
func converted(t testing.TB, name, text string) (*convert.Result, []map[string]string) {
	t.Helper()
	out := t.TempDir()
	result := run(t, convert.Job{Files: []string{write(t, name, text)}, Out: out})
	return result, table(t, filepath.Join(out, convert.SubmissionFile), "occurrence.txt")
}

// demoNotebooks writes the demonstration notebooks.
func demoNotebooks(t testing.TB) (folder string, paths []string) {
	t.Helper()
	folder = t.TempDir()
	paths, err := demo.Write(folder)
	require.NoError(t, err)
	return folder, paths
}

// unzip unpacks an archive into a folder.
func unzip(t testing.TB, path, into string) {
	t.Helper()
	z, err := zip.OpenReader(path)
	require.NoError(t, err)
	defer z.Close()
	require.NoError(t, os.CopyFS(filepath.Join(into, "unpacked"), z))
}
