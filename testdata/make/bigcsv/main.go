// Command bigcsv writes a large invented notebook to standard output, to
// measure speed and memory with: bigcsv ROWS. A million rows have 9 columns
// and about 85 MB. The same number of rows is always the same file.
package main

import (
	"bufio"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"strconv"
	"time"

	"fieldfare/convert/taxa"
)

func main() {
	log.SetFlags(0)
	if len(os.Args) != 2 {
		log.Fatal("usage: bigcsv ROWS")
	}
	rows, err := strconv.Atoi(os.Args[1])
	if err != nil {
		log.Fatalf("%q is no number of rows", os.Args[1])
	}
	names := speciesNames()
	r := rand.New(rand.NewPCG(45, 88))
	w := bufio.NewWriter(os.Stdout)
	defer w.Flush()
	fmt.Fprintln(w, "Date,Species,Count,Site,Grid ref,Recorder,Stage,Method,Comments")
	day := time.Date(1990, 4, 1, 0, 0, 0, 0, time.UTC)
	site := sites[0]
	for i := range rows {
		if i%60 == 0 {
			day = day.AddDate(0, 0, 1)
			if day.Year() == 2025 {
				day = day.AddDate(-35, 0, 0)
			}
			site = sites[r.IntN(len(sites))]
		}
		comment := ""
		if r.IntN(4) == 0 {
			comment = comments[r.IntN(len(comments))]
		}
		fmt.Fprintf(w, "%s,%s,%d,%s,TL%02d%01d%02d%01d,%s,%s,%s,%s\n", day.Format("02/01/2006"), names[r.IntN(len(names))], 1+r.IntN(40),
			site, 40+r.IntN(10), r.IntN(10), 80+r.IntN(10), r.IntN(10), people[i/60%len(people)], "ad.", "light trap", comment)
	}
}

var (
	sites    = []string{"Carr Edge", "Long Drove", "Reedbed", "Sluice"}
	people   = []string{"Ines Calloway", "Tom Achterberg", "Maud Pettifer"}
	comments = []string{"worn", "on the wall beside the trap", "fresh", "several more at dusk", "photograph kept"}
)

// speciesNames are the species of the starter list.
func speciesNames() []string {
	var names []string
	list := taxa.Starter()
	for i := range list.Len() {
		if t := list.Taxon(i); t.Rank == taxa.RankSpecies && t.Order == "Lepidoptera" {
			names = append(names, t.ScientificName)
		}
	}
	return names
}
