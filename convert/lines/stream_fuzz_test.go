package lines

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzStream: each line is answered, in order and by one line, with the line
// itself first; blank ones and one without an end too.
func FuzzStream(f *testing.F) {
	for _, s := range []string{"TL4588\n\nTL 45 88\r\n", "\ufeffx", "a\x00\xff\"\n,\n", "\r\n\r", "=1+1\n\x1b[2J\n\u202e"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, in string) {
		var want []string
		if text := strings.TrimPrefix(in, byteOrderMark); text != "" {
			for line := range strings.SplitSeq(strings.TrimSuffix(text, "\n"), "\n") {
				want = append(want, strings.TrimSuffix(line, "\r"))
			}
		}
		var out bytes.Buffer
		require.NoError(t, lengths.Stream(strings.NewReader(in), &out, JSON))
		var got []string
		for line := range strings.Lines(out.String()) {
			var answer map[string]any
			require.NoError(t, json.Unmarshal([]byte(line), &answer), line)
			got = append(got, answer[lengths.Header[0]].(string))
		}
		for i := range want {
			want[i] = strings.ToValidUTF8(want[i], "\ufffd")
		}
		for i := range got {
			got[i] = strings.ToValidUTF8(got[i], "\ufffd")
		}
		if len(want) != len(got) {
			t.Fatalf("%d lines have %d answers", len(want), len(got))
		}
		for i := range want {
			assert.Equal(t, strings.ReplaceAll(want[i], "\ufffd", ""), strings.ReplaceAll(got[i], "\ufffd", ""))
		}
	})
}
