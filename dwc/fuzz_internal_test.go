package dwc

import (
	"errors"
	"io"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// memorySource is an archive in memory, which is quick enough to try many.
type memorySource map[string]string

func (m memorySource) names() []string { return slices.Sorted(maps.Keys(m)) }
func (m memorySource) close() error    { return nil }
func (m memorySource) open(name string) (io.ReadCloser, error) {
	content, ok := m[name]
	if !ok {
		return nil, fs.ErrNotExist
	}
	return io.NopCloser(strings.NewReader(content)), nil
}

func readMemory(m memorySource) error {
	limits := Limits{RecordBytes: 1 << 16, FieldBytes: 1 << 15, Columns: 100}.withDefaults()
	a := &Archive{source: m, limits: limits}
	if err := a.open("archive"); err != nil {
		return err
	}
	return a.Validate(func(ArchiveFault) {})
}

// requireExplained checks that an error is one for a person to read.
func requireExplained(t *testing.T, err error) {
	var known *ReadError
	if err != nil {
		require.True(t, errors.As(err, &known), "%T", err)
		assert.NotEmpty(t, known.Message)
	}
}

func descriptor(attrs string) string {
	return `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence" ` + attrs + `>
	<files><location>o.txt</location></files><id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate" default="x"/></core>
	<extension rowType="http://rs.tdwg.org/dwc/terms/MeasurementOrFact"><files><location>o.txt</location></files><coreid index="1"/>
	<field index="0" term="http://rs.tdwg.org/dwc/terms/measurementValue"/></extension></archive>`
}

// Whatever a descriptor and a table hold, reading ends, with rows or with an
// error for a person to read.
func FuzzOpenArchive(f *testing.F) {
	f.Add(descriptor(""), "a1,b,c\n")
	f.Add(descriptor(`fieldsTerminatedBy="\t" fieldsEnclosedBy="'" linesTerminatedBy="\r\n" ignoreHeaderLines="1" encoding="UTF-16"`), "'a1'\tb\t'c\r\n'")
	f.Add(descriptor(`encoding="windows-1252" fieldsTerminatedBy="||"`), "a||\"b\"\"||c")
	f.Add("<archive>", "\"")
	f.Add(descriptor(`linesTerminatedBy="aa" fieldsTerminatedBy="a"`), "aaa\"aa\"aaaa")
	f.Add(descriptor(`dateFormat="D/M/YYYY" encoding="utf-16be"`), "\xff\xfea")
	f.Fuzz(func(t *testing.T, descriptor, table string) {
		requireExplained(t, readMemory(memorySource{"meta.xml": descriptor, "o.txt": table, "eml.xml": descriptor}))
	})
}

// Whatever a file without a descriptor holds, reading ends.
func FuzzSimpleFile(f *testing.F) {
	f.Add("occurrenceID,scientificName\na1,\"Agrotis\nputa\"\n")
	f.Add("\xff\xfeo\x00")
	f.Add("eventID;x\r1;H\xfcbner\r")
	f.Add("taxonID|http://example.org/x\n1|2|3")
	f.Fuzz(func(t *testing.T, content string) {
		requireExplained(t, readMemory(memorySource{"r.csv": content}))
	})
}

// byteReader gives one byte at a time, so that everything lies across the end
// of what has been read.
type byteReader struct{ r io.Reader }

func (b byteReader) Read(p []byte) (int, error) { return b.r.Read(p[:min(1, len(p))]) }

// records reads delimited text whole.
func records(in io.Reader, d dialect) (rows [][]string, err error) {
	r := newDelimitedReader(in, "f", d, true, Limits{}.withDefaults())
	for {
		row, err := r.next(nil)
		if errors.Is(err, io.EOF) {
			return rows, nil
		}
		if err != nil {
			return rows, err
		}
		rows = append(rows, row)
	}
}

// Whatever the text and the dialect, it does not matter in which pieces the
// text arrives.
func FuzzDelimitedInPieces(f *testing.F) {
	f.Add("a,\"b\"\"c\"\r\n\"d\ne\",f", ",", `"`, "\n")
	f.Add("a||'b'||c#\nd", "||", "'", "#\n")
	f.Add("aaa\"aa\"aaaa", "a", `"`, "aa")
	f.Add("\"\"x,\"y", ",", `"`, "\r\n")
	f.Fuzz(func(t *testing.T, text, delimiter, quote, terminator string) {
		if delimiter == "" || terminator == "" || delimiter == quote || delimiter == terminator {
			return // refused when the descriptor is read
		}
		d := dialect{delimiter, quote, terminator}
		whole, err := records(strings.NewReader(text), d)
		pieces, err2 := records(byteReader{strings.NewReader(text)}, d)
		assert.Equal(t, whole, pieces)
		assert.Equal(t, err, err2)
	})
}

// Whatever two values hold, a row of them reads back.
func FuzzRoundTrip(f *testing.F) {
	for _, v := range []string{"", "\t", "\n", "\r", "\r\n", `"`, `""`, `x"`, `"x`, `\`, " ", "\u00a0", "\ufeff", "\x00", "🦋", "Hübner", "plain text", "a\tb", "eight by", "\x1f"} {
		f.Add(v, "x"+v)
	}
	f.Fuzz(func(t *testing.T, a, b string) {
		if !utf8.ValidString(a) || !utf8.ValidString(b) {
			return
		}
		var text strings.Builder
		w, err := newTableWriter(Table{RowType: RowOccurrence, Columns: []string{"occurrenceID", "habitat", "locality"}}, "occurrenceID")
		require.NoError(t, err)
		w.out = &text
		for _, row := range [][]string{{a, b, a}, {"1", "", b}, {b, a, ""}} {
			require.NoError(t, w.row(row))
		}
		require.NoError(t, w.flush())
		got, err := records(strings.NewReader(text.String()), dialect{"\t", `"`, "\n"})
		require.NoError(t, err)
		assert.Equal(t, [][]string{{a, b, a}, {"1", "", b}, {b, a, ""}}, got)
	})
}
