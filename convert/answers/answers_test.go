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
