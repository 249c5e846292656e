package answers

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func answer(about, written, check string, d Decision, value string) Answer {
	return Answer{Key: Key{about, written, check}, Decision: d, Value: value, From: "here"}
}

func TestWhatIsWrittenIsReadBack(t *testing.T) {
	var s Set
	for _, a := range []Answer{
		answer("name", "Brimstone", "", Replace, "Gonepteryx rhamni"),
		answer("date", "31/32.vi.18", "no-such-day", LeaveOut, ""),
		answer("count", "=1+1, \"two\"", "count-unclear", Keep, ""),
		answer("site", "Café\nby the sluice", "", Replace, "-5 =x"),
	} {
		s.Give(a)
	}
	var first bytes.Buffer
	require.NoError(t, s.Write(&first))
	var again Set
	require.NoError(t, load(strings.NewReader("\uFEFF"+first.String()), "a.csv", again.Remember))
	var second bytes.Buffer
	require.NoError(t, again.Write(&second))
	assert.Equal(t, first.String(), second.String())
	value, found := again.Replacement("site", "Café by  the sluice")
	assert.True(t, found)
	assert.Equal(t, "-5 =x", value)
	_, found = again.Decided("date", "31/32.vi.18", "another-check")
	assert.False(t, found, "a decision is about one doubt")
	decision, _ := again.Decided("count", "=1+1, \"two\"", "count-unclear")
	assert.Equal(t, Keep, decision)
}

func TestGivenCountsForMoreThanRemembered(t *testing.T) {
	var s Set
	s.Remember(answer("name", "Brimstone", "", Replace, "Gonepteryx rhamni"))
	assert.False(t, s.Changed())
	s.Give(answer("name", "Brimstone", "", Replace, "Opisthograptis luteolata"))
	value, _ := s.Replacement("name", "Brimstone")
	assert.Equal(t, "Opisthograptis luteolata", value)
	assert.True(t, s.Changed())
	assert.Empty(t, s.Problems())
}

func TestOfTwoThatDisagreeNeitherCounts(t *testing.T) {
	var s Set
	s.Give(answer("name", "Brimstone", "", Replace, "Gonepteryx rhamni"))
	s.Give(answer("name", "Brimstone", "", Replace, "Opisthograptis luteolata"))
	_, found := s.Replacement("name", "Brimstone")
	assert.False(t, found)
	s.Give(answer("name", "Brimstone", "", Replace, "Gonepteryx rhamni"))
	_, found = s.Replacement("name", "Brimstone")
	assert.False(t, found, "a third does not settle it")
	assert.Len(t, s.Problems(), 2)
}

func TestUnused(t *testing.T) {
	var s Set
	s.Give(answer("name", "a", "", Replace, "b"))
	s.Give(answer("name", "c", "", Replace, "d"))
	s.Remember(answer("name", "e", "", Replace, "f"))
	s.Replacement("name", "a")
	given, remembered := s.Unused()
	require.Len(t, given, 1)
	assert.Equal(t, "c", given[0].Written)
	require.Len(t, remembered, 1)
	assert.Equal(t, 1, s.Used())
}

func TestNoAnswers(t *testing.T) {
	assert.NoError(t, LoadFile(filepath.Join(t.TempDir(), FileName), func(Answer) { t.Error("there is none") }))
	for text, says := range map[string]string{
		"name,Brimstone\n": "line 1",
		"about,written,check,decision,value,note\nname,a,,perhaps,,\n": "line 2",
		"about,written,check,decision,value,note\nname,a,,read as,,\n": "line 2",
		"about,written,check,decision,value,note\nname,a\n":            "line 2",
	} {
		path := filepath.Join(t.TempDir(), FileName)
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		assert.ErrorContains(t, LoadFile(path, func(Answer) {}), says)
	}
}

func TestWhatCannotBeLoaded(t *testing.T) {
	folder := t.TempDir()
	assert.ErrorContains(t, LoadFile(folder, func(Answer) {}), "this is a folder")
	assert.ErrorContains(t, LoadFile(filepath.Join(folder, strings.Repeat("a", 300)), func(Answer) {}), "the answers cannot be opened")
	err := load(strings.NewReader("about,written,check,decision,value,note\nname,a,,keep,,\n\nname,b,,\"keep,,\n"), "a.csv", func(Answer) {})
	assert.ErrorContains(t, err, "line 4", "where the quotation mark is missed")
	assert.Error(t, load(strings.NewReader("about,written,check,decision,value\nname,a,,keep,\n"), "a.csv", func(Answer) {}))
}

func TestAnswersSayWhereTheyWereRead(t *testing.T) {
	var got []Answer
	text := "about,written,check,decision,value,note\nname,a,x,keep,,sure\nname,\"b\nc\",y,leave out,,\nname,d,,read as,e,\n"
	require.NoError(t, load(strings.NewReader(text), filepath.Join("garden", "a.csv"), func(a Answer) { got = append(got, a) }))
	assert.Equal(t, []Answer{
		{Key{"name", "a", "x"}, Keep, "", "sure", "a.csv, line 2"},
		{Key{"name", "b\nc", "y"}, LeaveOut, "", "", "a.csv, line 3"},
		{Key{"name", "d", ""}, Replace, "e", "", "a.csv, line 5"},
	}, got)
}

func TestIsFile(t *testing.T) {
	for text, want := range map[string]bool{
		"about,written,check,decision,value,note\n": true, "\uFEFFabout,written,check": true, "about,written": true,
		"about;written;check\n": false, "name,date\nabout,written\n": false, "": false,
	} {
		path := filepath.Join(t.TempDir(), "a.csv")
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		assert.Equal(t, want, IsFile(path), "%q", text)
	}
	assert.False(t, IsFile(filepath.Join(t.TempDir(), "a.csv")))
}

// Whatever a spreadsheet program makes of a value, it is known again.
func TestPlain(t *testing.T) {
	long := strings.Repeat("é", longest)
	for written, want := range map[string]string{
		"TL 4588": "TL 4588", "~!": "~!", " TL  4588 ": "TL 4588", "by the sluice\r\nnorth": "by the sluice north",
		"a\x00b": "a b", "a\u00a0b": "a b", "\uFEFFa": "a", "a\uFFFF": "a", "a\xff": "a?", "_x0041_": "_ x0041_", "_": "_",
		"": "", " ": "", long: long, long + "e": long, strings.Repeat("a", longest+1): strings.Repeat("a", longest),
	} {
		assert.Equal(t, want, Plain(written), "%q", written)
		assert.Equal(t, want, Plain(want), "%q", written)
	}
}

func TestAnswersGivenTwice(t *testing.T) {
	var s Set
	s.Remember(answer("name", "a", "", Replace, "b"))
	s.Give(answer("name", "a", "ignored", Replace, "b"))
	assert.False(t, s.Changed(), "it is remembered")
	noted := answer("name", "a", "", Replace, "b")
	noted.Note = "as on the card"
	s.Remember(noted)
	assert.True(t, s.Changed(), "its note is new")
	assert.Equal(t, 1, s.Len())
	assert.Equal(t, "as on the card", s.Sorted()[0].Note)
	given, _ := s.Unused()
	assert.Len(t, given, 1, "given in this run too")

	s.Remember(answer("name", "a", "", Replace, "c"))
	assert.Equal(t, []string{"“a” is answered in two ways: “b” (here) and “c” (here). Neither counts; remove one of the two."}, s.Problems())
	assert.Zero(t, s.Len())

	var remembered Set
	remembered.Remember(answer("date", "1/2", "x", Keep, ""))
	remembered.Remember(answer("date", "1/2", "x", LeaveOut, ""))
	assert.Contains(t, remembered.Problems()[0], "“keep” (here) and “leave out” (here)")
	assert.False(t, remembered.Changed())
}

// What was asked for in one run is known in another.
func TestAsked(t *testing.T) {
	var s, again Set
	for _, set := range []*Set{&s, &again} {
		set.Remember(answer("name", "b", "", Replace, "c"))
		set.Remember(answer("date", "1/2", "x", Keep, ""))
		set.Remember(answer("date", "3/4", "x", Keep, ""))
	}
	_, found := s.Replacement("date", "1/2")
	assert.False(t, found, "it is to be kept")
	_, found = s.Decided("name", "b", "")
	assert.False(t, found, "it is to be read otherwise")
	assert.Empty(t, s.Asked())
	s.Replacement("name", " b ")
	s.Decided("date", "1/2", "x")
	assert.Equal(t, []Key{{"date", "1/2", "x"}, {"name", "b", ""}}, s.Asked())
	for _, k := range append(s.Asked(), Key{"name", "nobody's", ""}) {
		again.Ask(k)
	}
	assert.Equal(t, s.Asked(), again.Asked())
	assert.Equal(t, 2, again.Used())
}

// FuzzLoad: whatever is read can be written and read back as it was.
func FuzzLoad(f *testing.F) {
	f.Add("about,written,check,decision,value,note\nname,Brimstone,,read as,Gonepteryx rhamni,\n")
	f.Add("\uFEFFabout,written,check,decision,value,note\ndate,\"31\n32\",no-such-day,leave out,,x\n")
	f.Add("")
	f.Fuzz(func(t *testing.T, text string) {
		var s Set
		if load(strings.NewReader(text), "a.csv", s.Remember) != nil {
			return
		}
		var first, second bytes.Buffer
		require.NoError(t, s.Write(&first))
		var again Set
		require.NoError(t, load(bytes.NewReader(first.Bytes()), "a.csv", again.Remember))
		require.NoError(t, again.Write(&second))
		require.Equal(t, first.String(), second.String())
	})
}
