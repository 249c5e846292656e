package bdq

import (
	"fmt"
	"math"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/language"

	"fieldfare/testdata/need"
)

// TestCountries compares the country codes with those of the Unicode CLDR.
func TestCountries(t *testing.T) {
	rows := list("countries.tsv")
	// 249 countries and areas by ISO 3166-1 (2013 to 2026), and XZ and ZZ.
	require.Len(t, rows, 251)
	for _, row := range rows[:249] {
		region, err := language.ParseRegion(row[0])
		require.NoError(t, err, row[0])
		assert.True(t, region.IsCountry(), row[0])
		assert.Equal(t, row[1], region.ISO3(), row[0])
	}
}

// TestListsAreWhole: every value of every list interprets itself, and no word
// stands for two values.
func TestListsAreWhole(t *testing.T) {
	for _, name := range []string{"dcmi_type.tsv", "basis_of_record.tsv", "occurrence_status.tsv", "establishment_means.tsv",
		"degree_of_establishment.tsv", "pathway.tsv", "sex.tsv", "taxon_rank.tsv"} {
		v := loadVocabulary(name)
		meant := map[string]string{}
		for _, row := range list(name) {
			assert.True(t, v.has(row[0]), row[0])
			got, ok := v.interpret(row[0])
			assert.True(t, ok && got == row[0], "%s: %s", name, row[0])
			for text := range strings.SplitSeq(row[1]+"|"+row[2], "|") {
				if text == "" {
					continue
				}
				if other, taken := meant[key(text)]; taken {
					assert.Equal(t, other, row[0], "%s: %q means both", name, text)
				}
				meant[key(text)] = row[0]
				if !v.values[text] {
					got, ok = v.interpret(text)
					assert.True(t, ok && got == row[0], "%s: %q gives %s, not %s", name, text, got, row[0])
				}
			}
		}
	}
}

func TestMonthNames(t *testing.T) {
	meant := map[string]int{}
	for i, names := range monthNames {
		for name := range strings.FieldsSeq(names) {
			other, taken := meant[name]
			assert.False(t, taken, "%s is month %d and %d", name, other, i+1)
			meant[name] = i + 1
			assert.Equal(t, folded(name), name)
		}
	}
}

// TestDatumShiftsCoverPROJ asks PROJ how far the datums of Great Britain,
// Europe and North America lie from WGS 84, by the transformations given: the
// grid must allow for as much.
func TestDatumShiftsCoverPROJ(t *testing.T) {
	cs2cs := need.Tool(t, "cs2cs", "apt-get install proj-bin")
	for _, c := range []struct {
		name, datum         string
		latitude, longitude float64
	}{
		// OSGB36 to WGS 84, EPSG transformation 1314.
		{"OSGB36", "+ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489", 52.55, 0.36},
		{"OSGB36", "+ellps=airy +towgs84=446.448,-125.157,542.06,0.15,0.247,0.842,-20.489", 58.6, -3.1},
		// ED50 to WGS 84, EPSG transformation 1133.
		{"ED50", "+ellps=intl +towgs84=-87,-98,-121", 48.2, 16.4},
		// NAD27 to WGS 84, EPSG transformation 1173.
		{"NAD27", "+ellps=clrk66 +towgs84=-8,160,176", 40.7, -100},
		// Tokyo to WGS 84, EPSG transformation 1230.
		{"Tokyo", "+ellps=bessel +towgs84=-148,507,685", 35.7, 139.7},
	} {
		args := append([]string{"-f", "%.9f", "+proj=longlat"}, strings.Fields(c.datum)...)
		command := exec.Command(cs2cs, append(args, "+to", "+proj=longlat", "+datum=WGS84")...)
		command.Stdin = strings.NewReader(fmt.Sprintf("%f %f\n", c.longitude, c.latitude))
		out, err := command.Output()
		require.NoError(t, err)
		var x, y, z float64
		_, err = fmt.Sscan(string(out), &x, &y, &z)
		require.NoError(t, err, string(out))
		const degree = 111_320 // metres in a degree of latitude, nearly
		east := (x - c.longitude) * degree * math.Cos(c.latitude*math.Pi/180)
		distance := math.Hypot(east, (y-c.latitude)*degree)
		assert.Greater(t, distance, 20.0, "%s: the transformation took place", c.name)
		shift, ok := datumShift(c.latitude, c.longitude)
		require.True(t, ok)
		assert.GreaterOrEqual(t, float64(shift), distance, c.name)
	}
	for _, off := range [][2]float64{{91, 0}, {0, 181}, {math.NaN(), 0}, {math.Inf(1), 0}} {
		_, ok := datumShift(off[0], off[1])
		assert.False(t, ok)
	}
	for _, corner := range [][2]float64{{90, 180}, {-90, -180}} {
		_, ok := datumShift(corner[0], corner[1])
		assert.True(t, ok)
	}
}
