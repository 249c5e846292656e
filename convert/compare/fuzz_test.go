package compare_test

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/compare"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzSubmissions: whatever two archives hold, they are compared or refused in
// a sentence, and every record of the new one is counted once; an archive
// differs in nothing from itself.
func FuzzSubmissions(f *testing.F) {
	const meta = `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Occurrence" fieldsTerminatedBy=","><files><location>o.csv</location></files><id index="0"/>` +
		`<field index="0" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/><field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/><field index="2" term="http://rs.tdwg.org/dwc/terms/eventID"/></core></archive>`
	f.Add(meta, "1,Noctua pronuba,a\n2,Noctua comes,b\n", "2,Noctua comes,b\n3,=1+1,\n")
	f.Add(meta, "1,a,b\n1,a,c\n", "\"1\",\"a\"\"\",\"\x1b[2J\"\n")
	f.Fuzz(func(t *testing.T, meta, before, after string) {
		if len(meta)+len(before)+len(after) > 1<<15 {
			return
		}
		paths := make([]string, 2)
		for i, content := range []string{before, after} {
			var b bytes.Buffer
			w := zip.NewWriter(&b)
			for name, text := range map[string]string{"meta.xml": meta, "o.csv": content} {
				p, err := w.Create(name)
				require.NoError(t, err)
				_, err = io.WriteString(p, text)
				require.NoError(t, err)
			}
			require.NoError(t, w.Close())
			paths[i] = filepath.Join(t.TempDir(), "a.zip")
			require.NoError(t, os.WriteFile(paths[i], b.Bytes(), 0o600))
		}
		r, err := compare.Submissions(paths[0], paths[1])
		if err != nil {
			assert.NotEmpty(t, err.Error())
			return
		}
		var text, made bytes.Buffer
		require.NoError(t, r.WriteText(&text))
		require.NoError(t, r.WriteJSON(&made))
		assert.True(t, json.Valid(made.Bytes()))
		same, err := compare.Submissions(paths[0], paths[0])
		require.NoError(t, err)
		assert.Empty(t, same.New)
		assert.Empty(t, same.Changed)
		assert.Empty(t, same.Withdrawn)
	})
}
