package project

import (
	"reflect"
	"testing"

	"fieldfare/convert/notebook"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLimitsReachTheNotebook(t *testing.T) {
	p, err := load(t, "[limits]\ncell_bytes = 1\nrow_bytes = 2\ncolumns = 3\nrows = 4\nsheets = 5\nunzipped_bytes = 6\n"+
		"ratio = 7\nstring_bytes = 8\nmerges = 9\nspread_cells = 10\ninput_bytes = 11\n")
	require.NoError(t, err)
	want := notebook.Limits{CellBytes: 1, RowBytes: 2, Columns: 3, Rows: 4, Sheets: 5, UnzippedBytes: 6, Ratio: 7,
		StringBytes: 8, Merges: 9, SpreadCells: 10, InputBytes: 11}
	assert.Equal(t, want, p.Limits.Notebook())
	assert.Equal(t, reflect.TypeFor[notebook.Limits]().NumField(), reflect.TypeFor[Limits]().NumField(), "every limit can be set")
}

func TestNoLimitsAreTheUsualOnes(t *testing.T) {
	p, err := load(t, "")
	require.NoError(t, err)
	assert.Zero(t, p.Limits.Notebook())
}

func TestBadLimits(t *testing.T) {
	for _, c := range []struct{ line, says string }{
		{"rows = -1", "limits.rows = -1: write a number above 0"},
		{`rows = "many"`, "line 2: \"limits.rows\" has a value of the wrong kind"},
		{"lines = 5", "line 2: \"limits.lines\" is not a setting"},
		{"unzipped_bytes = 99999999999999999999", "line 2: this line cannot be read"},
	} {
		_, err := load(t, "[limits]\n"+c.line+"\n")
		assert.ErrorContains(t, err, c.says, c.line)
	}
}
