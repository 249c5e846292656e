// Package large makes large invented notebooks, to measure speed and memory
// with. A million rows have 9 columns and about 85 MB. The same number of rows
// is always the same file.
package large

import (
	"bufio"
	"fmt"
	"io"
	"math/rand/v2"
	"time"

	"fieldfare/convert/taxa"
)

// Write writes a notebook of so many rows as CSV.
func Write(out io.Writer, rows int) error {
	flying := speciesByMonth()
	r := rand.New(rand.NewPCG(45, 88))
	w := bufio.NewWriter(out)
	fmt.Fprintln(w, "Date,Species,Count,Site,Grid ref,Recorder,Stage,Method,Comments")
	// Every site has its nights. A night has one place for the trap, and each
	// species of the month at most once.
	for n := 0; rows > 0; n++ {
		round, night := n/len(sites)/nights, n/len(sites)%nights
		day := time.Date(1990, 4, 1, 0, 0, 0, 0, time.UTC).AddDate(0, 0, night)
		site, names := sites[n%len(sites)], flying[day.Month()]
		if round > 0 { // the same years once more, in the next parish to the east
			site.name = fmt.Sprint(site.name, " ", round+1)
			site.easting = (site.easting + 4*round) % 100
		}
		square := fmt.Sprintf("TL%02d%d%d%d", site.easting, r.IntN(10), site.northing, r.IntN(10))
		for _, name := range names[:min(len(names), 60, rows)] {
			comment := ""
			if r.IntN(4) == 0 {
				comment = comments[r.IntN(len(comments))]
			}
			fmt.Fprintf(w, "%s,%s,%d,%s,%s,%s,%s,%s,%s\n", day.Format("02/01/2006"), name, 1+r.IntN(9),
				site.name, square, people[n%len(people)], "ad.", "light trap", comment)
			rows--
		}
	}
	return w.Flush()
}

// nights are those of a site, from 1990 to 2025: dates in the future would all
// be held.
const nights = 13_000

var (
	// Each site is a kilometre square, in which the trap stands now here, now there.
	sites = []struct {
		name              string
		easting, northing int
	}{{"Carr Edge", 45, 88}, {"Long Drove", 46, 87}, {"Reedbed", 45, 87}, {"Sluice", 44, 86}}
	people   = []string{"Ines Calloway", "Tom Achterberg", "Maud Pettifer"}
	comments = []string{"worn", "on the wall beside the trap", "fresh", "several more at dusk", "photograph kept"}
)

// speciesByMonth are the species of the starter list that fly in each month
// and are accepted without further proof.
func speciesByMonth() map[time.Month][]string {
	flying := map[time.Month][]string{}
	list := taxa.Starter()
	for i := range list.Len() {
		t := list.Taxon(i)
		if t.Rank != taxa.RankSpecies || t.Order != "Lepidoptera" || t.Flight == 0 || t.NeedsNote || t.NeedsSpecimen {
			continue
		}
		for m := time.January; m <= time.December; m++ {
			if t.Flight.Has(int(m)) {
				flying[m] = append(flying[m], t.ScientificName)
			}
		}
	}
	return flying
}
