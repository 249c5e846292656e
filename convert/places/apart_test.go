package places_test

import (
	"fmt"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"fieldfare/convert/places"
	"fieldfare/gridref"
	"fieldfare/testdata/need"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestApartOnSphere compares distances with those on the ellipsoid that
// GeographicLib's GeodSolve computes: the sphere is within 0.6 % of it.
func TestApartOnSphere(t *testing.T) {
	tool := need.Tool(t, "GeodSolve", "apt-get install geographiclib-tools")
	for _, c := range [][4]float64{
		{52.4075, 0.1735, 52.6, 0.4},
		{52.4075, 0.1735, 52.4075, 1.9},
		{49.95, -6.3, 60.8, -0.8},
		{54.6, -5.9, 54.6, -5.88},
	} {
		cmd := exec.Command(tool, "-i", "-p", "3")
		cmd.Stdin = strings.NewReader(fmt.Sprintf("%v %v %v %v\n", c[0], c[1], c[2], c[3]))
		out, err := cmd.Output()
		require.NoError(t, err)
		fields := strings.Fields(string(out))
		require.Len(t, fields, 3)
		want, err := strconv.ParseFloat(fields[2], 64)
		require.NoError(t, err)
		a := gridref.Reading{Place: gridref.Point{Lat: c[0], Lon: c[1]}}
		b := gridref.Reading{Place: gridref.Point{Lat: c[2], Lon: c[3]}}
		assert.InEpsilon(t, want, places.Apart(a, b), 0.006)
	}
}
