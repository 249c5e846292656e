package ledger

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A line that can be read says the same when it is written and read again.
func FuzzParse(f *testing.F) {
	print := strings.Repeat("0a", 16)
	f.Add("urn:uuid:1\turn:uuid:2\t" + print + "\t1\t" + print + "\tmoths.csv/\t12/6/2021\tHeart and Dart\t3\tTL4588\tInes Calloway\ta\\tb\\\\n\\nc")
	f.Add("urn:uuid:1\t\t" + print + "\tx\t" + print + "\t\t\t\t\t\t\t")
	f.Add("<<<<<<< theirs")
	f.Fuzz(func(t *testing.T, text string) {
		line, ok := parse(text)
		if !ok {
			return
		}
		var b bytes.Buffer
		require.NoError(t, (&Ledger{Lines: []Line{line}}).Write(&b))
		again, ok := parse(strings.TrimSuffix(b.String(), "\n")[len(heading)+1:])
		require.True(t, ok)
		assert.Equal(t, line, again)
	})
}
