package notebook

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const occurrenceMeta = `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core encoding="UTF-8" fieldsTerminatedBy="\t" linesTerminatedBy="\n" fieldsEnclosedBy="" ignoreHeaderLines="1" rowType="http://rs.tdwg.org/dwc/terms/Occurrence"><files><location>occurrence.txt</location></files><id index="0"/><field index="0" term="http://rs.tdwg.org/dwc/terms/occurrenceID"/><field index="2" term="http://rs.tdwg.org/dwc/terms/scientificName"/><field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/><field default="Tom Achterberg" term="http://rs.tdwg.org/dwc/terms/recordedBy"/></core></archive>`

const occurrences = "id\tdate\tname\n1\t2021-06-12\tNoctua pronuba\n2\t2021-06-13\tAutographa gamma\n"

func TestArchive(t *testing.T) {
	folder := tree(t, map[string]string{"meta.xml": occurrenceMeta, "occurrence.txt": occurrences})
	zipped := packed("meta.xml", occurrenceMeta, "occurrence.txt", occurrences)
	for name, path := range map[string]string{
		"folder":        folder,
		"zip":           write(t, "a.zip", zipped),
		"zip, renamed":  write(t, "a.xlsx", zipped),
		"zip in folder": write(t, "b.zip", packed("set/meta.xml", occurrenceMeta, "set/occurrence.txt", occurrences)),
	} {
		t.Run(name, func(t *testing.T) {
			b := opened(t, path, Options{})
			require.Len(t, b.Sheets(), 1)
			s := b.Sheets()[0]
			assert.Equal(t, "Occurrence", s.Name())
			assert.Equal(t, path, s.File())
			rows := rowsOf(t, s)
			assert.Equal(t, rows, rowsOf(t, s))
			assert.Equal(t, []string{
				"occurrenceID|scientificName|eventDate|recordedBy",
				"1|Noctua pronuba|2021-06-12|Tom Achterberg",
				"2|Autographa gamma|2021-06-13|Tom Achterberg",
			}, texts(rows))
			assert.Equal(t, 3, rows[2].Number)
		})
	}
}

// Plain Darwin Core text is delimited text with the terms as headings.
func TestPlainDarwinCore(t *testing.T) {
	rows, _ := readText(t, "occurrenceID\tscientificName\teventDate\n1\tNoctua pronuba\t2021-06-12\n", Options{})
	assert.Equal(t, []string{"occurrenceID|scientificName|eventDate", "1|Noctua pronuba|2021-06-12"}, rows)
}

func TestArchiveOfEvents(t *testing.T) {
	meta := `<archive xmlns="http://rs.tdwg.org/dwc/text/"><core encoding="UTF-8" fieldsTerminatedBy="," linesTerminatedBy="\n" fieldsEnclosedBy='"' ignoreHeaderLines="1" rowType="http://rs.tdwg.org/dwc/terms/Event"><files><location>event.csv</location></files><id index="0"/><field index="0" term="http://rs.tdwg.org/dwc/terms/eventID"/><field index="1" term="http://rs.tdwg.org/dwc/terms/eventDate"/><field index="2" term="http://rs.tdwg.org/dwc/terms/locality"/></core>` +
		`<extension encoding="UTF-8" fieldsTerminatedBy="," linesTerminatedBy="\n" fieldsEnclosedBy='"' ignoreHeaderLines="1" rowType="http://rs.tdwg.org/dwc/terms/Occurrence"><files><location>occurrence.csv</location></files><coreid index="0"/><field index="1" term="http://rs.tdwg.org/dwc/terms/scientificName"/></extension></archive>`
	b := opened(t, write(t, "a.zip", packed("meta.xml", meta,
		"event.csv", "id,date,place\nn1,2021-06-12,\"Hide, north\"\nn2,2021-06-13,Hide\nn3,2021-06-14,Hide\n",
		"occurrence.csv", "id,name\nn2,Noctua pronuba\nn1,Autographa gamma\nn9,Noctua comes\n")), Options{})
	require.Len(t, b.Sheets(), 1, "the events are read with their occurrences")
	assert.Equal(t, "Occurrence", b.Sheets()[0].Name())
	rows := rowsOf(t, b.Sheets()[0])
	assert.Equal(t, []string{
		"scientificName|eventID|eventDate|locality",
		"Noctua pronuba|n2|2021-06-13|Hide",
		"Autographa gamma|n1|2021-06-12|Hide, north",
		"Noctua comes|n9",
		"|n3|2021-06-14|Hide",
	}, texts(rows), "an event without an occurrence is a visit on which nothing was found")
	assert.Equal(t, "The row belongs to “n9”, which the archive's core does not have.", rows[3].Repaired)
}

func TestArchiveTroubles(t *testing.T) {
	p := failure(t, write(t, "a.zip", packed("meta.xml", occurrenceMeta)), Options{})
	sentences(t, p)
	p = failure(t, write(t, "a.zip", packed("meta.xml", "<archive", "occurrence.txt", occurrences)), Options{})
	sentences(t, p)
	folder := tree(t, map[string]string{"meta.xml": occurrenceMeta, "occurrence.txt": occurrences})
	require.NoError(t, os.Remove(filepath.Join(folder, "occurrence.txt")))
	sentences(t, failure(t, folder, Options{}))
}
