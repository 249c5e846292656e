package lines

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func column(t *testing.T, in, name string) (string, int64) {
	t.Helper()
	var out bytes.Buffer
	wide, err := lengths.Column(strings.NewReader(in), &out, name, "new_")
	require.NoError(t, err)
	return out.String(), wide
}

func TestColumnKeepsEverything(t *testing.T) {
	for _, tt := range []struct{ about, in, want string }{
		{"plain", "a,ref\n1,xy\n", "a,ref,length,half,first\n1,xy,2,1,x\n"},
		{"quotes as they were", "\"a\", \"b\" ,ref\n\"1\",\"say \"\"so\"\"\",\"x,y\"\n", "\"a\", \"b\" ,ref,length,half,first\n\"1\",\"say \"\"so\"\"\",\"x,y\",3,1.5,x\n"},
		{"a cell over two lines", "ref,note\nxy,\"one\ntwo\"\nz,3\n", "ref,note,length,half,first\nxy,\"one\ntwo\",2,1,x\nz,3,1,0.5,z\n"},
		{"line ends of Windows, byte order mark", "\ufeffref,b\r\nxy,1\r\n", "\ufeffref,b,length,half,first\r\nxy,1,2,1,x\r\n"},
		{"no end to the last line", "ref\nxy", "ref,length,half,first\nxy,2,1,x"},
		{"short rows are filled up", "a,b,ref,d\n1\n1,2,xy\n", "a,b,ref,d,length,half,first\n1,,,,0,,\n1,2,xy,,2,1,x\n"},
		{"blank lines stay", "ref,b\n\nxy,1\n\n", "ref,b,length,half,first\n\nxy,1,2,1,x\n\n"},
		{"semicolons", "a;ref\n1,5;xy\n", "a;ref;length;half;first\n1,5;xy;2;1;x\n"},
		{"tabs", "a\tref\n1\tx,y\n", "a\tref\tlength\thalf\tfirst\n1\tx,y\t3\t1.5\tx\n"},
		{"a name that is taken", "ref,first\nxy,1\n", "ref,first,length,half,new_first\nxy,1,2,1,x\n"},
		{"any case and spacing", " REF ,b\nxy,1\n", " REF ,b,length,half,first\nxy,1,2,1,x\n"},
		{"a quote inside a cell", "ref,b\n5\" pot,1\nxy,2\n", "ref,b,length,half,first\n5\" pot,1,6,3,5\nxy,2,2,1,x\n"},
		{"a heading over two lines", "\"my\nref\",b\nxy,1\n", "\"my\nref\",b,length,half,first\nxy,1,2,1,x\n"},
		{"headings only", "ref,b\n", "ref,b,length,half,first\n"},
		{"a quote never closed", "ref,b\n\"xy,1\nz,2\n", "ref,b,length,half,first\n\"xy,1\nz,2,,8,4,x\n"},
	} {
		name := "ref"
		if strings.Contains(tt.in, "my\nref") {
			name = "my ref"
		}
		got, wide := column(t, tt.in, name)
		assert.Equal(t, tt.want, got, tt.about)
		assert.Zero(t, wide, tt.about)
	}
}

func TestWideRowsAreCounted(t *testing.T) {
	got, wide := column(t, "ref,b\nxy,1,extra\nz,2\n", "ref")
	assert.Equal(t, "ref,b,length,half,first\nxy,1,extra,2,1,x\nz,2,1,0.5,z\n", got)
	assert.EqualValues(t, 1, wide)
}

func TestNoSuchColumn(t *testing.T) {
	var missing *NoColumn
	_, err := lengths.Column(strings.NewReader("a,b\n"), new(bytes.Buffer), "ref", "new_")
	require.ErrorAs(t, err, &missing)
	assert.Equal(t, []string{"a", "b"}, missing.Headings)
	_, err = lengths.Column(strings.NewReader(""), new(bytes.Buffer), "ref", "new_")
	require.ErrorAs(t, err, &missing)
}

func TestColumnOverManyBlocks(t *testing.T) {
	var in strings.Builder
	in.WriteString("n,ref,note\n")
	for i := range 100_000 {
		in.WriteString("1," + strings.Repeat("x", i%9) + ",\"a note\nof two \"\"lines\"\"\"\n")
	}
	got, _ := column(t, in.String(), "ref")
	records, err := csv.NewReader(strings.NewReader(got)).ReadAll()
	require.NoError(t, err)
	require.Len(t, records, 100_001)
	for i, r := range records[1:] {
		require.Equal(t, string(rune('0'+i%9)), r[3])
	}
	var out bytes.Buffer
	_, err = lengths.Column(iotest.DataErrReader(iotest.HalfReader(strings.NewReader(in.String()))), &out, "ref", "new_")
	require.NoError(t, err)
	assert.True(t, got == out.String(), "however it comes")
}

// What was there is still there, and every record got its cells.
func FuzzColumn(f *testing.F) {
	for _, s := range []string{"ref\n", "a,ref\n1,2\n", "ref\n\"a\nb\",c\n", "ref;b\r\n\"\"\"\";1", "\ufeffref\nx", "ref\n\"", "ref,\"\n\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		var out bytes.Buffer
		if _, err := lengths.Column(strings.NewReader(in), &out, "ref", "new_"); err != nil {
			return
		}
		// The output holds the input in order, with only insertions.
		rest := out.Bytes()
		for i := range len(in) {
			at := bytes.IndexByte(rest, in[i])
			if at < 0 {
				t.Fatalf("%q became %q: a byte is lost", in, out.String())
			}
			rest = rest[at+1:]
		}
	})
}
