package validate_test

import (
	"context"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"fieldfare/convert"
	"fieldfare/convert/when"

	"github.com/stretchr/testify/require"
)

// The columns of the season's notebook.
const (
	cDate = iota
	cSpecies
	cCount
	cStage
	cSex
	cStatus
	cSite
	cRef
	cCounty
	cRecorder
	cDeterminer
	cMethod
	cTime
	cComments
	columns
)

var headings = []string{"Date", "Species", "Count", "Stage", "Sex", "Status", "Site", "Grid ref", "Vice-county", "Recorder", "Determiner", "Method", "Time", "Comments"}

type row [columns]string

// flyer is a moth of the season: its flight months on the starter list and the
// middle of its counts.
type flyer struct {
	name     string
	from, to int
	usual    int
}

var flyers = []flyer{
	{"Hebrew Character", 3, 5, 6}, {"Common Quaker", 3, 4, 9}, {"Clouded Drab", 3, 5, 4}, {"Small Quaker", 3, 4, 6},
	{"Early Thorn", 4, 5, 2}, {"Brimstone Moth", 5, 9, 3}, {"White Ermine", 5, 6, 4}, {"Buff Ermine", 5, 7, 4},
	{"Poplar Hawk-moth", 5, 7, 2}, {"Elephant Hawk-moth", 6, 7, 3}, {"Buff-tip", 6, 7, 3}, {"Heart and Dart", 5, 7, 14},
	{"Flame Shoulder", 5, 9, 5}, {"Dark Arches", 6, 8, 9}, {"Riband Wave", 6, 8, 4}, {"Drinker", 7, 8, 4},
	{"Large Yellow Underwing", 6, 9, 22}, {"Lesser Yellow Underwing", 7, 9, 6}, {"Common Wainscot", 6, 9, 4},
	{"Smoky Wainscot", 7, 8, 5}, {"Dun-bar", 7, 8, 4}, {"Setaceous Hebrew Character", 8, 10, 12},
	{"Square-spot Rustic", 8, 9, 9}, {"Willow Beauty", 7, 8, 3}, {"Rosy Rustic", 8, 10, 2}, {"Lunar Underwing", 9, 10, 10},
	{"Angle Shades", 5, 10, 2}, {"Silver Y", 6, 9, 4}, {"Green-brindled Crescent", 10, 10, 3},
}

type site struct{ name, ref, county string }

var sites = []site{
	{"Sallowmere Reserve", "TL4588", "29"},
	{"Carr Edge", "TL4581 8832", "29"},
	{"Tinker's Row", "TF491012", "29"},
}

// season is a clean season: two trapping nights a week, the trap at another
// site each time, with counts that vary about what is usual.
func season(year int) []row {
	r := rand.New(rand.NewPCG(uint64(year), 7))
	var rows []row
	day := time.Date(year, 3, 12, 0, 0, 0, 0, time.UTC)
	for night := 0; day.Month() < 11; night++ {
		at := sites[night%len(sites)]
		for _, f := range flyers {
			if m := int(day.Month()); m < f.from || m > f.to || r.IntN(3) == 0 {
				continue
			}
			n := max(1, int(float64(f.usual)*(0.3+1.6*r.Float64()*r.Float64())+0.5))
			rows = append(rows, row{day.Format("02/01/2006"), f.name, fmt.Sprint(n), "adult", "", "present", at.name, at.ref, at.county,
				"Ines Calloway", "Tom Achterberg", "actinic light trap", "22:30", ""})
		}
		day = day.AddDate(0, 0, 3+night%2)
	}
	return rows
}

func text(t testing.TB, rows []row) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	require.NoError(t, w.Write(headings))
	for i := range rows {
		require.NoError(t, w.Write(rows[i][:]))
	}
	w.Flush()
	return b.String()
}

// check converts notebooks given as text by their names.
func check(t testing.TB, files map[string]string) *convert.Result {
	t.Helper()
	dir := t.TempDir()
	job := convert.Job{Today: when.Date{Year: 2026, Month: 1, Day: 31}, Out: filepath.Join(dir, "out")}
	for _, name := range []string{"fieldfare.toml", "area.geojson", "list.csv", "season.csv", "second.csv"} {
		content, given := files[name]
		if !given {
			continue
		}
		path := filepath.Join(dir, name)
		require.NoError(t, os.WriteFile(path, []byte(content), 0o644))
		if filepath.Ext(name) == ".csv" && name != "list.csv" {
			job.Files = append(job.Files, path)
		}
	}
	result, err := convert.Run(context.Background(), job)
	require.NoError(t, err)
	return result
}

// asked tells whether a question with the code concerns the row of the
// notebook, numbered from 1.
func asked(result *convert.Result, code string, number int) bool {
	at := regexp.MustCompile(fmt.Sprintf(`^[A-Z]+%d$`, number))
	for _, q := range result.Questions {
		if !slices.ContainsFunc(strings.Fields(q.Code), func(c string) bool { return slices.Contains(strings.Fields(code), c) }) {
			continue
		}
		for _, p := range q.Places {
			if slices.ContainsFunc(strings.Split(p.Cell, ", "), at.MatchString) {
				return true
			}
		}
	}
	return false
}
