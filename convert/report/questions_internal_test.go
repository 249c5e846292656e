package report

import (
	"fmt"
	"math/rand/v2"
	"os"
	"testing"

	"fieldfare/convert/reading"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// findings yields findings of few and of many alike, by chance from a seed.
func findings(n int, yield func(f *reading.Finding, at Place)) {
	chance := rand.New(rand.NewPCG(1, 2))
	for i := range n {
		v := reading.QueryOf("doubt", fmt.Sprintf("number %d", i), "a", "b")
		if chance.IntN(3) == 0 {
			v = reading.HeldOf("odd", "held", "c")
		}
		f := reading.Finding{Verdict: v, About: "name", Written: fmt.Sprint(chance.IntN(n / 4))}
		if chance.IntN(5) == 0 {
			f.Written = "often"
		}
		yield(&f, Place{"a.csv", "", fmt.Sprint("B", i)})
	}
}

func all(t *testing.T, q *Questions) (list []Question) {
	t.Helper()
	require.NoError(t, q.Settle())
	for again := range 2 { // it may be asked again
		list = nil
		for question, err := range q.All() {
			require.NoError(t, err)
			list = append(list, *question)
		}
		require.Len(t, list, q.Len(), "%d", again)
	}
	return list
}

// TestQuestionsFromFiles: what goes by way of files comes out as what stays in
// memory, to the letter, and no file is left.
func TestQuestionsFromFiles(t *testing.T) {
	var kept Questions
	findings(20_000, kept.Add)
	want := all(t, &kept)
	require.Greater(t, len(want), 5000)
	for _, most := range []int{1, 10_000, 1 << 20} {
		n := 20_000
		if most == 1 {
			n = 400 // each by itself
		}
		temp := t.TempDir()
		q := &Questions{temp: temp, most: most}
		findings(n, q.Add)
		got := all(t, q)
		if n == 20_000 {
			assert.Equal(t, want, got)
		}
		q.Close()
		left, err := os.ReadDir(temp)
		require.NoError(t, err)
		assert.Empty(t, left)
	}
}

// TestQuestionsWithoutRoom: a file that cannot be written is told of, and
// nothing is lost in silence.
func TestQuestionsWithoutRoom(t *testing.T) {
	q := &Questions{temp: t.TempDir() + "/none", most: 1000}
	findings(100, q.Add)
	assert.Error(t, q.Settle())
}

// TestQuestionsStayInBounds: what is held in memory does not grow with the
// number of questions.
func TestQuestionsStayInBounds(t *testing.T) {
	q := &Questions{temp: t.TempDir(), most: 100_000}
	defer q.Close()
	most := 0
	findings(50_000, func(f *reading.Finding, at Place) {
		q.Add(f, at)
		most = max(most, len(q.byKey))
	})
	assert.Less(t, most, 300, "each takes some 400 bytes")
	require.NoError(t, q.Settle())
	assert.Nil(t, q.list)
}
