package report_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert/report"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzReadAnswers: whatever comes back as a questions page saved as text is
// read as answers and problems, or refused in a sentence; each answer is one
// that the plain file can hold.
func FuzzReadAnswers(f *testing.F) {
	head := strings.Join(report.QuestionHeadings, ",")
	f.Add(head + "\nheld,name,Mothling,m,Noctua pronuba,yes,,1,here,name-unknown\n")
	f.Add(head + "\nheld,date,31/6/21,m,,\"30 June\n2021\",note,1,here,no-such-date\nquery,record,x,m,,leave out,,2,,duplicate\n")
	f.Add("about,written,check,decision,value,note\nname,a,,read as,b,\n")
	f.Add(strings.ReplaceAll(head, ",", ";") + "\n;;;;;;;;;\n")
	f.Fuzz(func(t *testing.T, text string) {
		path := filepath.Join(t.TempDir(), "answers.csv")
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		given, err := report.ReadAnswers(context.Background(), path)
		if err != nil {
			assert.NotEmpty(t, err.Error())
			return
		}
		for _, a := range given.Answers {
			assert.NotEmpty(t, a.Decision)
			assert.NotEmpty(t, a.From)
			assert.Equal(t, a.Decision == "read as", a.Value != "")
		}
		for _, p := range given.Problems {
			assert.Contains(t, p, "answers.csv")
		}
	})
}
