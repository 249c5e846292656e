package ledger_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/convert/ledger"
)

func handedIn(id, event, source string, print byte, ordinal int) ledger.Line {
	l := line("12/6/2021", "Heart and Dart", "3", "TL4588", "Ines Calloway", "MV")
	l.OccurrenceID, l.EventID, l.Source, l.Visit = id, event, source, id == ""
	l.Content = ledger.Content{Print: [16]byte{print}, Ordinal: ordinal}
	l.Event = [16]byte{15: print}
	return l
}

func written(t *testing.T, lines ...ledger.Line) string {
	var b bytes.Buffer
	require.NoError(t, (&ledger.Ledger{Lines: slices.Clone(lines)}).Write(&b))
	return b.String()
}

func loaded(t *testing.T, text string) (*ledger.Ledger, error) {
	path := filepath.Join(t.TempDir(), ledger.FileName)
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	return ledger.Load(path)
}

func TestWhatIsRememberedIsReadBack(t *testing.T) {
	odd := handedIn("urn:a", "urn:night", "walks.csv", 1, 2)
	odd.Place, odd.Rest = "by the sluice\tat the\\tgate\r\n", `a backslash \ and \n written out`
	lines := []ledger.Line{handedIn("urn:b", "", "moths.csv", 2, 0), odd, handedIn("", "urn:night", "moths.csv", 3, 0)}
	text := written(t, lines...)
	assert.Equal(t, text, written(t, lines[2], lines[0], lines[1]), "in whatever order they come")
	assert.Equal(t, len(lines)+1, strings.Count(text, "\n"), "one line a record")

	l, err := loaded(t, text)
	require.NoError(t, err)
	assert.Equal(t, []ledger.Line{lines[2], odd, lines[0]}, l.Lines, "by id; a visit has none")

	l, err = ledger.Load(filepath.Join(t.TempDir(), ledger.FileName))
	require.NoError(t, err, "no ledger yet")
	assert.Empty(t, l.Lines)
}

// Every part of a line may decide its place, so that two ledgers of the same
// records are the same file.
func TestOrderOfLines(t *testing.T) {
	for _, pair := range [][2]ledger.Line{
		{handedIn("urn:a", "", "z", 9, 9), handedIn("urn:b", "", "a", 1, 1)},
		{handedIn("urn:a", "", "z", 1, 9), handedIn("urn:a", "", "a", 2, 1)},
		{handedIn("urn:a", "", "z", 1, 1), handedIn("urn:a", "", "a", 1, 2)},
		{handedIn("urn:a", "urn:z", "a", 1, 1), handedIn("urn:a", "urn:a", "z", 1, 1)},
		{handedIn("urn:a", "urn:a", "a", 1, 1), handedIn("urn:a", "urn:b", "a", 1, 1)},
	} {
		straight := written(t, pair[0], pair[1])
		assert.Equal(t, straight, written(t, pair[1], pair[0]))
		first, second := strings.SplitN(written(t, pair[0]), "\n", 2)[1], strings.SplitN(written(t, pair[1]), "\n", 2)[1]
		assert.True(t, strings.HasSuffix(straight, first+second), straight)
	}
}

// Two copies may be merged line by line, by hand or by a program.
func TestMergedLedgers(t *testing.T) {
	a, b := handedIn("urn:a", "", "moths.csv", 1, 0), handedIn("urn:b", "", "moths.csv", 2, 0)
	second := handedIn("urn:b", "", "moths.csv", 2, 1)
	l, err := loaded(t, written(t, b, a)+"\n"+written(t, a, second))
	require.NoError(t, err)
	assert.Equal(t, []ledger.Line{a, b, second}, l.Lines)
}

func TestLedgersThatCannotBeUsed(t *testing.T) {
	good := written(t, handedIn("urn:a", "urn:night", "moths.csv", 1, 0))
	heading, one, _ := strings.Cut(good, "\n")
	values := strings.Split(strings.TrimSuffix(one, "\n"), "\t")
	with := func(i int, value string) string {
		changed := slices.Clone(values)
		changed[i] = value
		return heading + "\n" + strings.Join(changed, "\t") + "\n"
	}
	for name, c := range map[string]struct{ text, says string }{
		"no heading":      {one, "line 1: this is no ledger of Fieldfare"},
		"another file":    {"about,written\n", "line 1: this is no ledger"},
		"a merge mark":    {good + "<<<<<<< theirs\n", "line 3: the line is damaged"},
		"a value less":    {heading + "\n" + strings.Join(values[:11], "\t") + "\n", "line 2: the line is damaged"},
		"no id":           {strings.Replace(with(0, ""), "urn:night", "", 1), "line 2: the line is damaged"},
		"content no hex":  {with(2, "xyz"), "line 2: the line is damaged"},
		"content short":   {with(2, "0102"), "line 2: the line is damaged"},
		"content long":    {with(2, values[2]+"00"), "line 2: the line is damaged"},
		"no ordinal":      {with(3, "first"), "line 2: the line is damaged"},
		"event truncated": {with(4, values[4][:30]), "line 2: the line is damaged"},
		"endless line":    {heading + "\n" + strings.Repeat("x", 1<<24+1), "cannot be read to its end"},
	} {
		_, err := loaded(t, c.text)
		assert.ErrorContains(t, err, c.says, name)
	}
	_, err := ledger.Load(t.TempDir())
	assert.ErrorContains(t, err, "cannot be read", "a folder of its name")
	l, err := loaded(t, with(0, ""))
	require.NoError(t, err)
	assert.True(t, l.Lines[0].Visit, "a visit needs the id of its event alone")
}

func TestGone(t *testing.T) {
	lines := []ledger.Line{
		handedIn("urn:a", "", "2020.csv", 1, 0), handedIn("urn:b", "", "2020.csv", 2, 0),
		handedIn("urn:c", "", "2020.csv", 3, 0), handedIn("urn:d", "", "2020.csv", 4, 0),
		handedIn("urn:e", "", "walks.csv", 5, 0),
	}
	for name, c := range map[string]struct {
		stands map[byte]string // the sources in which contents stand now
		read   string
		gone   []string
		source string
	}{
		"read again, two rows changed":          {map[byte]string{1: "2020.csv", 2: "2020.csv"}, "2020.csv", []string{"urn:c", "urn:d"}, "2020.csv"},
		"read again, nothing of it left":        {nil, "2020.csv", []string{"urn:a", "urn:b", "urn:c", "urn:d"}, "2020.csv"},
		"not read":                              {nil, "other.csv", nil, ""},
		"most of it under another name":         {map[byte]string{1: "moths.csv", 2: "moths.csv", 3: "moths.csv"}, "moths.csv", []string{"urn:d"}, "moths.csv"},
		"half of it under another name":         {map[byte]string{1: "moths.csv", 2: "moths.csv"}, "moths.csv", nil, ""},
		"most of it, but parted into notebooks": {map[byte]string{1: "moths.csv", 2: "moths.csv", 3: "rest.csv"}, "moths.csv", nil, ""},
	} {
		present := func(content ledger.Content) (string, bool) {
			source, found := c.stands[content.Print[0]]
			return source, found
		}
		var ids []string
		l := &ledger.Ledger{Lines: slices.Clone(lines)}
		for _, g := range l.Gone(present, func(source string) bool { return source == c.read }) {
			ids = append(ids, g.OccurrenceID)
			assert.Equal(t, c.source, g.Source, name)
		}
		assert.Equal(t, c.gone, ids, name)
		assert.Equal(t, lines, l.Lines, name)
	}
}
