package dwc

import (
	"archive/zip"
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzZip: whatever the bytes of a file that goes by the name of an archive,
// opening and reading it ends, with rows or with an error for a person.
func FuzzZip(f *testing.F) {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, part := range [][2]string{{"meta.xml", descriptor("")}, {"o.txt", "a1,b,c\n"}, {"../x", "1"}, {"eml.xml", "<eml/>"}} {
		p, err := w.Create(part[0])
		require.NoError(f, err)
		_, err = p.Write([]byte(part[1]))
		require.NoError(f, err)
	}
	require.NoError(f, w.Close())
	f.Add(b.Bytes())
	f.Add(b.Bytes()[:b.Len()/2])
	f.Add([]byte("PK\x05\x06" + string(make([]byte, 18))))
	f.Fuzz(func(t *testing.T, content []byte) {
		path := filepath.Join(t.TempDir(), "a.zip")
		require.NoError(t, os.WriteFile(path, content, 0o600))
		a, err := OpenArchive(path, Limits{Entries: 50, FileBytes: 1 << 20, RecordBytes: 1 << 16, FieldBytes: 1 << 15, Columns: 100, XMLBytes: 1 << 18})
		if err != nil {
			requireExplained(t, err)
			return
		}
		requireExplained(t, a.Validate(func(ArchiveFault) {}))
		require.NoError(t, a.Close())
	})
}
