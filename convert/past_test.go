package convert_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fieldfare/convert"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Past records are known by their place whichever table of their archive says
// it: here the events do, and the occurrences say no more than a name.
func TestPastRecordsOfEvents(t *testing.T) {
	folder := t.TempDir()
	past := filepath.Join(folder, "past")
	require.NoError(t, os.Mkdir(past, 0o755))
	occurrences := new(strings.Builder)
	for i := range 200 {
		fmt.Fprintf(occurrences, "night,past-%d,Agrotis exclamationis\n", i)
	}
	for name, text := range map[string]string{
		"past/meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/">
<core rowType="http://rs.tdwg.org/dwc/terms/Event" fieldsTerminatedBy=","><files><location>event.csv</location></files>
<id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/>
<field index="2" term="http://rs.tdwg.org/dwc/terms/decimalLatitude"/><field index="3" term="http://rs.tdwg.org/dwc/terms/decimalLongitude"/>
<field index="4" term="http://rs.tdwg.org/dwc/terms/coordinateUncertaintyInMeters"/><field index="5" term="http://rs.tdwg.org/dwc/terms/geodeticDatum"/>
<field index="6" term="http://rs.tdwg.org/dwc/terms/locality"/></core>
<extension rowType="http://rs.tdwg.org/dwc/terms/Occurrence" fieldsTerminatedBy=","><files><location>occurrence.csv</location></files>
<coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/>
<field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/></extension></archive>`,
		"past/event.csv":      "night,2019-06-12,52.471,0.147,71,EPSG:4326,Sallowmere Reserve\n",
		"past/occurrence.csv": occurrences.String(),
		"fieldfare.toml":      "[lists]\npast = [\"past\"]\n",
		"season.csv": "Date,Species,Site,Grid ref,Recorder\n" +
			"12/06/2021,Heart and Dart,Sallowmere Reserve,TL4588,Ines Calloway\n" +
			"12/06/2021,Buff-tip,Sallowmere Reserve,TL4588,Ines Calloway\n",
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644))
	}
	result := run(t, convert.Job{Files: []string{filepath.Join(folder, "season.csv")}})
	var asked []string
	for _, q := range result.Questions {
		asked = append(asked, q.Code+": "+q.Written)
	}
	require.Len(t, asked, 1, "the taxon that is known there is not asked about")
	assert.Contains(t, asked[0], "first-for-")
	assert.Contains(t, asked[0], "Buff-tip")
}
