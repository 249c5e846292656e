package dwc_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fieldfare/dwc"
)

// Occurrences of an event core say where and when by their event, as the
// Darwin Core text guide's star has it, also where their table has a column
// for it that is empty; what they state themselves stays.
func TestOccurrencesOfEvents(t *testing.T) {
	archive := opened(t, foldered(t, map[string]string{
		"meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/">
<core rowType="http://rs.tdwg.org/dwc/terms/Event" fieldsTerminatedBy=","><files><location>event.csv</location></files>
<id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/>
<field index="2" term="http://rs.tdwg.org/dwc/terms/locality"/></core>
<extension rowType="http://rs.tdwg.org/dwc/terms/Occurrence" fieldsTerminatedBy=","><files><location>occurrence.csv</location></files>
<coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/>
<field index="2" term="http://rs.tdwg.org/dwc/terms/locality"/></extension></archive>`,
		"event.csv":      "night-1,2021-06-12,Sallowmere Reserve\nnight-2,2021-06-19,Tinker's Row\n",
		"occurrence.csv": "night-2,a,Orchard\nnight-1,b,\nnight-3,c,\n",
	}))
	var got [][]string
	require.NoError(t, archive.Occurrences(func(o *dwc.Occurrence, row *dwc.Row) error {
		got = append(got, []string{o.OccurrenceID, o.EventID, o.EventDate, o.Locality})
		assert.Equal(t, len(got), row.Line)
		return nil
	}))
	assert.Equal(t, [][]string{
		{"a", "night-2", "2021-06-19", "Orchard"}, {"b", "night-1", "2021-06-12", "Sallowmere Reserve"}, {"c", "night-3", "", ""},
	}, got)

	enough := errors.New("enough")
	assert.ErrorIs(t, archive.Occurrences(func(*dwc.Occurrence, *dwc.Row) error { return enough }), enough)
}

// A checklist with its records has the names in its core, and several tables
// may hold occurrences.
func TestOccurrencesOfTaxa(t *testing.T) {
	archive := opened(t, foldered(t, map[string]string{
		"meta.xml": `<archive xmlns="http://rs.tdwg.org/dwc/text/">
<core rowType="http://rs.tdwg.org/dwc/terms/Taxon"><files><location>taxon.csv</location></files>
<id index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/></core>
<extension rowType="http://rs.tdwg.org/dwc/terms/Occurrence"><files><location>a.csv</location></files>
<coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/></extension>
<extension rowType="http://rs.tdwg.org/dwc/terms/Occurrence"><files><location>b.csv</location></files>
<coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/><field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/></extension></archive>`,
		"taxon.csv": "t1,Noctua pronuba\nt2,Noctua comes\n",
		"a.csv":     "t2,o1\n",
		"b.csv":     "t1,o2,\nt1,o3,Noctua janthe\n",
	}))
	var got [][]string
	require.NoError(t, archive.Occurrences(func(o *dwc.Occurrence, _ *dwc.Row) error {
		got = append(got, []string{o.OccurrenceID, o.TaxonID, o.ScientificName})
		return nil
	}))
	assert.Equal(t, [][]string{{"o1", "t2", "Noctua comes"}, {"o2", "t1", "Noctua pronuba"}, {"o3", "t1", "Noctua janthe"}}, got)
}

func ExampleInherits() {
	row := dwc.Occurrence{ScientificName: "Noctua pronuba", Locality: "Orchard"}
	fmt.Println(dwc.Inherits("eventDate", row.Get), dwc.Inherits("decimalLatitude", row.Get), dwc.Inherits("fieldNotes", row.Get))
	// Output: true false false
}
