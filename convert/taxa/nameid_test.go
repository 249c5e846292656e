package taxa_test

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"fieldfare/convert/taxa"
	"fieldfare/validate/bdq"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The UUIDs are those of Python 3.11, uuid.uuid5. Every accepted name has an id that the standard's test of scientificNameID
// calls complete (Biodiversity Data Quality Interest Group of TDWG).
func TestNamedID(t *testing.T) {
	for name, c := range map[string]struct{ list, want string }{
		"stated by the list":                 {"taxonID,scientificNameID,scientificName\nx:1,urn:lsid:example.org:names:77,Apamea crenata", "urn:lsid:example.org:names:77"},
		"the list's own taxonID":             {"taxonID,scientificName\ncounty:77,Apamea crenata", "county:77"},
		"a name id alone":                    {"scientificNameID,scientificName\ncounty:78,Apamea crenata", "county:78"},
		"a bare number says not whose it is": {"taxonID,scientificName\n77,Apamea crenata", "urn:uuid:64ffbe65-ddee-52f2-8bee-bd2b60493fa8"},
		"no id at all":                       {"scientificName\nApamea crenata", "urn:uuid:64ffbe65-ddee-52f2-8bee-bd2b60493fa8"},
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "list.csv")
			require.NoError(t, os.WriteFile(path, []byte(c.list), 0o644))
			list, problems, err := taxa.Load(path)
			require.NoError(t, err)
			require.Empty(t, problems)
			assert.Equal(t, c.want, list.Taxon(0).NamedID())
		})
	}
	list := taxa.Starter()
	suite, err := bdq.New(bdq.Settings{Today: time.Date(2026, time.June, 30, 0, 0, 0, 0, time.UTC)})
	require.NoError(t, err)
	for i := range list.Len() {
		r, _ := suite.Run("VALIDATION_SCIENTIFICNAMEID_COMPLETE", bdq.Map{"scientificNameID": list.Taxon(i).NamedID()})
		assert.Equal(t, bdq.Compliant, r.Result)
		assert.NotEmpty(t, list.Taxon(i).Authorship, list.Taxon(i).ScientificName)
	}
}
