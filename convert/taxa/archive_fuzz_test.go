package taxa_test

import (
	"archive/zip"
	"bytes"
	"testing"

	"fieldfare/convert/taxa"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// FuzzLoadArchive: whatever a checklist archive holds, it is a list, or refused
// in a sentence.
func FuzzLoadArchive(f *testing.F) {
	const meta = `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core rowType="http://rs.tdwg.org/dwc/terms/Taxon" fieldsTerminatedBy="," ignoreHeaderLines="1"><files><location>t.csv</location></files><id index="0"/>` +
		`<field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/><field index="2" term="http://rs.tdwg.org/dwc/terms/acceptedNameUsageID"/><field index="3" term="http://rs.tdwg.org/dwc/terms/parentNameUsageID"/></core>` +
		`<extension rowType="http://rs.gbif.org/terms/1.0/VernacularName" fieldsTerminatedBy=","><files><location>v.csv</location></files><coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/vernacularName"/></extension></archive>`
	f.Add(meta, "id,name,accepted,parent\n1,Noctua pronuba,,3\n2,Triphaena pronuba,1,\n3,Noctua,,1\n", "1,Large Yellow Underwing\n9,nobody\n")
	f.Add(meta, "id\n1,a,2,\n2,b,1,\n", "")
	f.Fuzz(func(t *testing.T, meta, taxaTable, vernaculars string) {
		if len(meta)+len(taxaTable)+len(vernaculars) > 1<<15 {
			return
		}
		var b bytes.Buffer
		w := zip.NewWriter(&b)
		for name, content := range map[string]string{"meta.xml": meta, "t.csv": taxaTable, "v.csv": vernaculars} {
			p, err := w.Create(name)
			require.NoError(t, err)
			_, err = p.Write([]byte(content))
			require.NoError(t, err)
		}
		require.NoError(t, w.Close())
		l, problems, err := taxa.Load(write(t, "list.zip", b.String()))
		if err != nil {
			assert.NotEmpty(t, err.Error())
			return
		}
		for _, p := range problems {
			assert.NotEmpty(t, p.Message)
		}
		m := taxa.NewIndex(l).NewMatcher()
		for i := range l.Len() {
			m.Match(taxa.Written{Name: l.Taxon(i).ScientificName}, taxa.Context{})
		}
	})
}
