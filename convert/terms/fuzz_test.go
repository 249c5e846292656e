package terms_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/layout"
	"fieldfare/convert/notebook"
	"fieldfare/convert/terms"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzPage: whatever a page of terms holds, walking over it ends, and every row
// has one outcome.
func FuzzPage(f *testing.F) {
	f.Add("occurrenceID,eventDate,scientificName,individualCount\n1,2021-06-12,Noctua pronuba,3\n,,,\n", "")
	f.Add("eventDate,eventDate,scientificName,Measurement: length (mm)\n2021,2022,x,1|2\n", "eventID")
	f.Add("year,month,day,scientificName,decimalLatitude,decimalLongitude\n2021,6,12,x,52,0\n", "scientificName")
	f.Fuzz(func(t *testing.T, text, chosen string) {
		path := filepath.Join(t.TempDir(), "a.csv")
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
		book, err := notebook.Open(context.Background(), path, notebook.Options{TempDir: t.TempDir()})
		if err != nil {
			return
		}
		defer book.Close()
		sheet := book.Sheets()[0]
		page, err := terms.Open(sheet, terms.Options{Archive: true, Words: func(string) string { return "" }, Entry: layout.Entry{Columns: map[string]string{"A": chosen}}})
		require.NoError(t, err)
		if page == nil {
			return
		}
		rows, outcomes := 0, 0
		require.NoError(t, sheet.Walk(func(*notebook.Row) error { rows++; return nil }))
		require.NoError(t, page.Walk(sheet, func(*layout.Outcome) error { outcomes++; return nil }))
		assert.Equal(t, rows, outcomes)
	})
}
