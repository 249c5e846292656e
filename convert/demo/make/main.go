// Command make writes the demonstration notebooks into ../notebooks. All of
// it is invented: Sallowmere Reserve and the garden at Tinker's Row do not
// exist, nor do their recorders. The faults in it are the usual ones.
package main

import (
	"bytes"
	"fmt"
	"log"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"time"

	"golang.org/x/text/encoding/charmap"
)

const folder = "notebooks"

func main() {
	log.SetFlags(0)
	if err := os.MkdirAll(folder, 0o755); err != nil {
		log.Fatal(err)
	}
	for _, write := range []func(*rand.Rand) error{gardenBook, gardenNights, reserveList, oldNotebook, butterflyWalks, lists} {
		// Each notebook has its own sequence, so that changing one leaves the
		// others as they were.
		if err := write(rand.New(rand.NewPCG(52, 1998))); err != nil {
			log.Fatal(err)
		}
	}
}

// night is one trap night and what came to light.
type night struct {
	date  time.Time
	catch []catch
}

type catch struct {
	species species
	count   int
}

// nights makes a season of trap nights, about one a week.
func nights(r *rand.Rand, year, from, to, most int) []night {
	var list []night
	day := time.Date(year, time.Month(from), 3+r.IntN(5), 0, 0, 0, 0, time.UTC)
	for int(day.Month()) <= to && day.Year() == year {
		n := night{date: day}
		for _, s := range lightTrap {
			if !s.flies(int(day.Month())) || r.IntN(10) < 5 || len(n.catch) >= most {
				continue
			}
			n.catch = append(n.catch, catch{s, 1 + r.IntN(s.most)*r.IntN(3)/2})
		}
		if len(n.catch) > 0 {
			list = append(list, n)
		}
		day = day.AddDate(0, 0, 6+r.IntN(5))
	}
	return list
}

func save(name, text string) error {
	return os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644)
}

// reserveList is the reserve's own list for 2018, kept in a spreadsheet
// program that wrote semicolons and the old Windows character set.
func reserveList(r *rand.Rand) error {
	var b bytes.Buffer
	b.WriteString("Sallowmere Reserve - moths at light 2018;;;;;;;\r\n")
	b.WriteString("Recorder: Ines Calloway;;;;;;;\r\n;;;;;;;\r\n")
	b.WriteString("Night;Site;Grid ref;Species;No.;Stage;Det.;Notes\r\n")
	traps := []struct{ name, ref string }{
		{"Sallowmere, Carr Edge", "TL 4581 8832"}, {"Sallowmere, Long Drove", "TL 462 879"}, {"Sallowmere, Sluice Cottage Field", "TL 4550 8795"},
	}
	for i, n := range nights(r, 2018, 4, 10, 9) {
		trap := traps[i%len(traps)]
		for j, c := range n.catch {
			date, site, ref := nightOf(n.date), trap.name, trap.ref
			if j > 0 {
				date, site, ref = "do.", "do.", "do."
			}
			name, note := c.species.scientific, ""
			switch {
			case i == 3 && j == 1:
				name = misspell(name)
			case i == 7 && j == 0:
				date, note = "31/32.vi.18", "date smudged"
			case i == 9 && j == 2:
				note = "mine, not collected"
			case i == 11 && j == 0:
				ref, note = "TL 458 83", "one figure lost?"
			case i == 5 && j == 1:
				note = "very worn é specimen"
			}
			det := ""
			if j == 2 {
				det = "T. Achterberg"
			}
			fmt.Fprintf(&b, "%s;%s;%s;%s;%d;adult;%s;%s\r\n", date, site, ref, name, c.count, det, note)
		}
	}
	b.WriteString(";;;;;;;\r\n")
	encoded, err := charmap.Windows1252.NewEncoder().Bytes(b.Bytes())
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(folder, "sallowmere 2018.csv"), encoded, 0o644)
}

// nightOf writes a night as many light trappers do: 12/13.vi.18.
func nightOf(evening time.Time) string {
	roman := []string{"i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"}
	morning := evening.AddDate(0, 0, 1)
	if morning.Month() != evening.Month() {
		return fmt.Sprintf("%d.%s/%d.%s.%02d", evening.Day(), roman[evening.Month()-1], morning.Day(), roman[morning.Month()-1], evening.Year()%100)
	}
	return fmt.Sprintf("%d/%d.%s.%02d", evening.Day(), morning.Day(), roman[evening.Month()-1], evening.Year()%100)
}

// misspell swaps two letters in the middle of the last word.
func misspell(name string) string {
	i := strings.LastIndex(name, " ") + 3
	return name[:i] + name[i+1:i+2] + name[i:i+1] + name[i+2:]
}

// oldNotebook is typed up from a notebook of the nineties, with the dates and
// counts as they were written then.
func oldNotebook(*rand.Rand) error {
	return save("old notebook.csv", `Typed up from the green notebook,,,,,
,,,,,
When,Where,What,How many,Who,Remarks
12.vi.1998,Tinker's Row,Elephant Hawk,2,IC,
12.vi.1998,Tinker's Row,Buff Ermine,several,IC,
,,White Ermine,5,,
,,Heart & Dart,c.20,,
19/20.vi.1998,Tinker's Row,Swallow-tailed Moth,1,IC,
,,Elephant Hawkmoth,2m 1f,,
,,Buff-tip,3,,one in cop.
June 1999,Sallowmere,Drinker,larvae,IC & TA,on reed by the sluice
31 June 1999,Sallowmere,Burnished Brass,1,IC,
4.vii.1999,Sallowmere,Common Footman,12,IC & TA,
4.vii.1999,Sallowmere,Scarce Silver Rustic,1,IC & TA,name as written in the notebook
summer 2000,Sallowmere,Poplar Hawk-moth,1 larva,TA,on aspen
2001,Tinker's Row,December Moth,P,IC,
3.xi.2001,Tinker's Row,December Moth,4,IC,
3.xi.2001,Tinker's Row,December Moth,4,IC,
10.xi.2001,Tinker's Row,November Moth agg.,6,IC,
,Tinker's Row,Angle Shades,1,IC,"no date, between the November pages"
`)
}

// butterflyWalks are counts along a walk, with day, month and year apart and
// a grid reference of every length.
func butterflyWalks(r *rand.Rand) error {
	var b strings.Builder
	b.WriteString("Day,Month,Year,Place,OS ref,Butterfly,Latin name,Number,Observer\n")
	refs := []string{"TL4588", "TL458883", "TL 45 88", "TL48P", "TL45858831"}
	day := time.Date(2023, 4, 9, 0, 0, 0, 0, time.UTC)
	for i := range 18 {
		for _, s := range butterflies {
			if !s.flies(int(day.Month())) || r.IntN(3) == 0 {
				continue
			}
			observer := "Tom Achterberg"
			if i%4 == 1 {
				observer = "Tom Achterberg; Maud Pettifer"
			}
			fmt.Fprintf(&b, "%d,%d,%d,Sallowmere Reserve,%s,%s,%s,%d,%s\n", day.Day(), day.Month(), day.Year(),
				refs[(i+len(s.vernacular))%len(refs)], s.vernacular, s.scientific, 1+r.IntN(s.most), observer)
		}
		day = day.AddDate(0, 0, 7+r.IntN(5))
	}
	return save("butterfly walks 2023.csv", b.String())
}

// lists are the places and people that the notebooks mention, and the project
// file that ties all together.
func lists(*rand.Rand) error {
	if err := save("places.csv", `Name,Also written,Grid reference,Vice-county,Private
Tinker's Row,Tinkers Row; the garden,TF 491 012,29,yes
Sallowmere Reserve,Sallowmere,TL 45 88,29,
"Sallowmere, Carr Edge",,TL 4581 8832,29,
"Sallowmere, Long Drove",,TL 462 879,29,
"Sallowmere, Sluice Cottage Field",,TL 4550 8795,29,
`); err != nil {
		return err
	}
	if err := save("people.csv", `Name,Initials
Ines Calloway,IC
Tom Achterberg,TA
Maud Pettifer,MP
`); err != nil {
		return err
	}
	return save("fieldfare.toml", `# What the demonstration notebooks do not say themselves.

[dataset]
title = "Moths and butterflies of Sallowmere Reserve and Tinker's Row"
abstract = "Light-trap catches and butterfly walks at an invented fenland reserve and in an invented garden, made to demonstrate Fieldfare."
licence = "CC BY"
rights = "Ines Calloway"
country = "GB"
language = "en"
date = "2026-01-31"
citation = "Calloway, I. (2026). Moths and butterflies of Sallowmere Reserve and Tinker's Row."
methods = "Moths were caught in light traps run from dusk to dawn, named in the morning, counted and released. Butterflies were counted on walks."

[[dataset.creator]]
given = "Ines"
surname = "Calloway"

[[dataset.contact]]
given = "Ines"
surname = "Calloway"
position = "recorder of Sallowmere Reserve"

[lists]
places = "places.csv"
people = "people.csv"
self = "Ines Calloway"
`)
}
