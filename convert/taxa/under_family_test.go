package taxa_test

import (
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A list as people type it: families in capitals on lines of their own, marks
// behind the names of hard ones.
func TestFamiliesOnLinesOfTheirOwn(t *testing.T) {
	read := func(text string) map[string]*taxa.Taxon {
		path := filepath.Join(t.TempDir(), "fen list.csv")
		require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
		list, _, err := taxa.Load(path)
		require.NoError(t, err)
		found := map[string]*taxa.Taxon{}
		m := taxa.NewIndex(list).NewMatcher()
		for _, name := range []string{"Ghost Moth", "Peach Blossom", "Goat Moth", "Buff-tip"} {
			found[name] = m.Match(taxa.Written{Name: name}, taxa.Context{}).Taxon
		}
		return found
	}
	typed := read("Fen moths,,\n,,\nNo.,English name,Latin name and author\n,,HEPIALIDAE\n1,Ghost Moth,\"Hepialus humuli (Linnaeus, 1758)\"\n,,\n,,DREPANIDAE\n2,Peach Blossom *,\"Thyatira batis (Linnaeus, 1758)\"\n")
	require.NotNil(t, typed["Ghost Moth"])
	require.NotNil(t, typed["Peach Blossom"])
	assert.Equal(t, "Hepialidae", typed["Ghost Moth"].Family)
	assert.Equal(t, "Drepanidae", typed["Peach Blossom"].Family)
	assert.Equal(t, "Peach Blossom", typed["Peach Blossom"].Vernacular)

	// A family that is one of the taxa of a flat list heads nothing, and a column
	// for families counts for more.
	flat := read("English name,Latin name\nGoat Moth,Cossus cossus\nFlame moths,Noctuidae\nBuff-tip,Phalera bucephala\n")
	assert.Empty(t, flat["Buff-tip"].Family)
	stated := read("English name,Latin name,Family\n,NOTODONTIDAE,\nGoat Moth,Cossus cossus,Cossidae\nBuff-tip,Phalera bucephala,\n")
	assert.Equal(t, "Cossidae", stated["Goat Moth"].Family)
	assert.Empty(t, stated["Buff-tip"].Family)
}
