package convert

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/spool"

	"github.com/stretchr/testify/require"
)

// FuzzPart: whatever the file of a part holds, even with its sum in order, it
// is taken in or found to be damaged.
func FuzzPart(f *testing.F) {
	head, err := json.Marshal(partHead{Settings: "x", Parts: 1, Books: []partBook{{File: "a.csv", Rows: 1, Sheets: []partSheet{{Name: "1"}}}}})
	require.NoError(f, err)
	f.Add(head, []byte{0, 3, 0, 0, 0})
	f.Add([]byte(`{"Parts":-1}`), []byte{})
	f.Add([]byte(`{"Parts":3,"Books":[{"At":-1,"Rows":9}]}`), []byte{2, 1, 1, 0, 0, 0, 0})
	f.Fuzz(func(t *testing.T, head, rest []byte) {
		file := append([]byte(partMark), binary.LittleEndian.AppendUint64(nil, uint64(len(head)))...)
		file = append(append(file, head...), rest...)
		sum := sha256.Sum256(file)
		path := filepath.Join(t.TempDir(), "a.part")
		require.NoError(t, os.WriteFile(path, append(file, sum[:]...), 0o600))
		rows, err := spool.New(t.TempDir())
		require.NoError(t, err)
		defer rows.Close()
		p, err := newOpenPart(path, rows)
		if err != nil {
			require.ErrorContains(t, err, "the part is damaged or was cut off")
			return
		}
		defer p.file.Close()
		for _, b := range p.head.Books {
			if b.Rows > 1000 {
				return // as many as the sum vouches for
			}
			if p.rows.Add(b.At, b.Rows, 0, 0, len(b.Sheets)) != nil {
				return
			}
		}
		require.NoError(t, rows.Each(func(encoded []byte) error {
			var row spool.Row
			return spool.Decode(encoded, &row, rows.Parts())
		}))
	})
}
