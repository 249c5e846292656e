package lines

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lengths answers a value with its length and, where it has one, its first
// byte.
var lengths = Table{
	Header: []string{"value", "length", "half", "first"},
	Read: func(value string, row *Row) {
		row.Decimal(float64(len(value)), 0)
		if value == "" {
			row.NoNumber()
			row.Text("")
			return
		}
		row.Metres(float64(len(value)) / 2)
		row.Text(value[:1])
	},
	Say: func(dst []byte, value string, row *Row) []byte {
		return fmt.Appendf(dst, "%s has %s", value, row.Field(0))
	},
}

func stream(t *testing.T, in string, format Format) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, lengths.Stream(strings.NewReader(in), &out, format))
	return out.String()
}

func TestOneLineOutForEachLineIn(t *testing.T) {
	for in, want := range map[string]string{
		"":              "",
		"a":             "a has 1\n",
		"a\n":           "a has 1\n",
		"a\r\nbb\r\n":   "a has 1\nbb has 2\n",
		"\n\na\n\n":     " has 0\n has 0\na has 1\n has 0\n",
		"\ufeffa\nb":    "a has 1\nb has 1\n",
		"\xef\xbb":      "\xef\xbb has 2\n",
		" a , \"b\" \n": " a , \"b\"  has 9\n",
	} {
		assert.Equal(t, want, stream(t, in, Text), "%q", in)
	}
}

func TestStreamCSV(t *testing.T) {
	in := "plain\nwith, comma\nwith \"quote\"\n\n lead\n"
	records, err := csv.NewReader(strings.NewReader(stream(t, in, CSV))).ReadAll()
	require.NoError(t, err)
	assert.Equal(t, [][]string{
		{"value", "length", "half", "first"},
		{"plain", "5", "2.5", "p"}, {"with, comma", "11", "5.5", "w"}, {"with \"quote\"", "12", "6", "w"}, {"", "0", "", ""}, {" lead", "5", "2.5", " "},
	}, records)
	assert.Equal(t, "value,length,half,first\n", stream(t, "", CSV), "a header even for nothing")
}

func TestStreamJSON(t *testing.T) {
	out := strings.Split(strings.TrimSuffix(stream(t, "a\"\\\t\u00e9\n\n\xff\n", JSON), "\n"), "\n")
	require.Len(t, out, 3)
	var got struct {
		Value, First string
		Length       int
		Half         *float64
	}
	require.NoError(t, json.Unmarshal([]byte(out[0]), &got))
	assert.Equal(t, "a\"\\\té", got.Value)
	assert.Equal(t, 6, got.Length)
	assert.Equal(t, 3.0, *got.Half)
	require.NoError(t, json.Unmarshal([]byte(out[1]), &got))
	assert.Nil(t, got.Half, "a number that is not known is null")
	require.NoError(t, json.Unmarshal([]byte(out[2]), &got))
	assert.Equal(t, "\ufffd", got.Value)
}

func TestOrderIsKeptOverManyBlocks(t *testing.T) {
	var in, want strings.Builder
	for i := range 200_000 {
		line := strings.Repeat("x", i%40)
		in.WriteString(line + "\n")
		fmt.Fprintf(&want, "%s has %d\n", line, len(line))
	}
	assert.True(t, want.String() == stream(t, in.String(), Text), "the same lines in the same order")
	var out bytes.Buffer
	require.NoError(t, lengths.Stream(iotest.HalfReader(strings.NewReader(in.String())), &out, Text))
	assert.True(t, want.String() == out.String(), "however they come")
}

func TestALineLongerThanABlock(t *testing.T) {
	long := strings.Repeat("y", 3*blockSize)
	assert.Equal(t, fmt.Sprintf("%s has %d\nz has 1\n", long, len(long)), stream(t, long+"\nz\n", Text))
}

// endless gives the same byte for ever.
type endless byte

func (e endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = byte(e)
	}
	return len(p), nil
}

// A stream without line ends, or a quote without its partner, is refused in
// bounded memory.
func TestALineWithoutAnEnd(t *testing.T) {
	var long *TooLong
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	require.ErrorAs(t, lengths.Stream(endless('x'), io.Discard, Text), &long)
	assert.EqualValues(t, 1, long.Line)
	require.ErrorAs(t, lengths.Stream(io.MultiReader(strings.NewReader("a\nb\n"), endless('x')), io.Discard, CSV), &long)
	assert.EqualValues(t, 3, long.Line)
	_, err := lengths.Column(endless('x'), io.Discard, "ref", "new_")
	require.ErrorAs(t, err, &long)
	assert.EqualValues(t, 1, long.Line)
	_, err = lengths.Column(io.MultiReader(strings.NewReader("ref,note\na,b\nc,\"d"), endless('\n')), io.Discard, "ref", "new_")
	require.ErrorAs(t, err, &long)
	assert.EqualValues(t, 3, long.Line)
	assert.ErrorContains(t, err, "line 3 is longer than 16 MB")
	runtime.ReadMemStats(&after)
	assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(4*8*LongestLine))
}

func TestAnswersDoNotWaitForTheEnd(t *testing.T) {
	in, feed := io.Pipe()
	answers, out := io.Pipe()
	go func() {
		lengths.Stream(in, out, Text)
		out.Close()
	}()
	got := make([]byte, 8)
	for range 3 {
		_, err := feed.Write([]byte("a\n"))
		require.NoError(t, err)
		_, err = io.ReadFull(answers, got)
		require.NoError(t, err)
		assert.Equal(t, "a has 1\n", string(got))
	}
	feed.Close()
	_, err := io.ReadFull(answers, got)
	assert.Equal(t, io.EOF, err)
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestErrorsComeBack(t *testing.T) {
	many := strings.Repeat("a line\n", 1_000_000)
	assert.ErrorContains(t, lengths.Stream(strings.NewReader(many), full{}, Text), "no space left")
	broken := io.MultiReader(strings.NewReader("a\n"), iotest.ErrReader(errors.New("torn")))
	assert.ErrorContains(t, lengths.Stream(broken, io.Discard, Text), "torn")
	_, err := lengths.Column(strings.NewReader("a\n"+many), full{}, "a", "x_")
	assert.ErrorContains(t, err, "no space left")
	_, err = ParseFormat("xml")
	assert.ErrorContains(t, err, "xml")
}

func TestDecimals(t *testing.T) {
	for _, tt := range []struct {
		v      float64
		places int
		want   string
	}{
		{0, 7, "0.0000000"}, {-0.00000004, 7, "0.0000000"}, {52.4091617, 7, "52.4091617"}, {-0.1, 7, "-0.1000000"}, {179.99999996, 7, "180.0000000"},
		{1.5, 0, "2"}, {-33.8568, 3, "-33.857"}, {9_999_999.999, 3, "9999999.999"},
	} {
		assert.Equal(t, tt.want, string(appendDecimal(nil, tt.v, tt.places)))
	}
	var row Row
	for _, v := range []float64{545300, 545300.5, 0.125, 0, 709, 71.9} {
		row.Metres(v)
	}
	var got []string
	for i := range 6 {
		got = append(got, string(row.Field(i)))
	}
	assert.Equal(t, []string{"545300", "545300.5", "0.125", "0", "709", "71.9"}, got)
}
