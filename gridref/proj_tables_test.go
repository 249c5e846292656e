package gridref

import (
	"encoding/binary"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shiftModel is what PROJ's defmodel operation wants to be told of a grid of
// shifts in metres on a plane: the deformation model's master file of
// "Deformation model functional model" (OGC 22-010r4), as PROJ documents it.
const shiftModel = `{
	"file_type": "deformation_model_master_file", "format_version": "1.0", "name": "OSTN15", "version": "1",
	"source_crs": "EPSG:27700", "target_crs": "EPSG:27700", "definition_crs": "EPSG:27700",
	"horizontal_offset_unit": "metre", "horizontal_offset_method": "addition",
	"extent": {"type": "bbox", "parameters": {"bbox": [0, 0, 700000, 1250000]}},
	"time_extent": {"first": "1900-01-01T00:00:00Z", "last": "2100-01-01T00:00:00Z"},
	"components": [{
		"description": "shifts", "displacement_type": "horizontal", "uncertainty_type": "none",
		"extent": {"type": "bbox", "parameters": {"bbox": [0, 0, 700000, 1250000]}},
		"spatial_model": {"type": "GeoTIFF", "interpolation_method": "bilinear", "filename": %q},
		"time_function": {"type": "constant"}
	}]
}`

// shiftsTIFF returns the lattice as a GeoTIFF (OGC 19-008r4) in the form of
// PROJ's "Geodetic TIFF grids": two samples a node, metres east and north, in
// single precision, which is good to 4 micrometres here. The first row is the
// northernmost.
func shiftsTIFF(lattice []shift) []byte {
	const metadata = `<GDALMetadata><Item name="TYPE">DEFORMATION_MODEL</Item>` +
		`<Item name="DESCRIPTION" sample="0" role="description">east_offset</Item>` +
		`<Item name="DESCRIPTION" sample="1" role="description">north_offset</Item>` +
		`<Item name="UNITTYPE" sample="0" role="unittype">metre</Item>` +
		`<Item name="UNITTYPE" sample="1" role="unittype">metre</Item></GDALMetadata>` + "\x00"
	const rowBytes = shiftColumns * 2 * 4
	offsets, counts := make([]uint32, shiftRows), make([]uint32, shiftRows)
	for i := range offsets {
		offsets[i], counts[i] = uint32(8+i*rowBytes), rowBytes
	}
	const short, long, double, ascii = 3, 4, 12, 2
	fields := []struct {
		tag, kind uint16
		values    any
	}{
		{256, long, []uint32{shiftColumns}},
		{257, long, []uint32{shiftRows}},
		{258, short, []uint16{32, 32}},
		{259, short, []uint16{1}},
		{262, short, []uint16{1}},
		{273, long, offsets},
		{277, short, []uint16{2}},
		{278, long, []uint32{1}},
		{279, long, counts},
		{284, short, []uint16{1}},
		{338, short, []uint16{0}},
		{339, short, []uint16{3, 3}},
		{33550, double, []float64{shiftCell, shiftCell, 0}},
		{33922, double, []float64{0, 0, 0, 0, coverNorth, 0}},
		// A projected plane, whose values are those of points.
		{34735, short, []uint16{1, 1, 0, 3, 1024, 0, 1, 1, 1025, 0, 1, 2, 3072, 0, 1, 27700}},
		{42112, ascii, []byte(metadata)},
	}
	le := binary.LittleEndian
	tiff := le.AppendUint32([]byte("II*\x00"), 8+shiftRows*rowBytes)
	for row := shiftRows - 1; row >= 0; row-- {
		for _, s := range lattice[row*shiftColumns : (row+1)*shiftColumns] {
			for _, metres := range []float64{leastEastShift + float64(s.e)/1000, leastNorthShift + float64(s.n)/1000} {
				tiff = le.AppendUint32(tiff, math.Float32bits(float32(metres)))
			}
		}
	}
	directory := le.AppendUint16(nil, uint16(len(fields)))
	var behind []byte
	for _, f := range fields {
		value, _ := binary.Append(nil, le, f.values)
		directory = le.AppendUint16(le.AppendUint16(directory, f.tag), f.kind)
		directory = le.AppendUint32(directory, uint32(len(value)/map[uint16]int{short: 2, long: 4, double: 8, ascii: 1}[f.kind]))
		if len(value) > 4 {
			at := len(tiff) + 2 + 12*len(fields) + 4 + len(behind)
			behind = append(behind, value...)
			value = le.AppendUint32(nil, uint32(at))
		}
		directory = append(directory, value...)
		directory = append(directory, make([]byte, 4-len(value))...)
	}
	tiff = append(tiff, directory...)
	return append(append(tiff, 0, 0, 0, 0), behind...)
}

// PROJ given the OSTN15 tables themselves: the shifts of our lattice (which
// TestLatticeIsThatOfTheTables compares with the tables as distributed) by its
// defmodel operation, behind its own transverse Mercator projection. Lattice,
// projection, interpolation and iteration are then all PROJ's, from the code of
// others, and the two agree over the whole cover: to 0.02 mm where Ordnance
// Survey's series for the plane is the true projection, and to 2 mm where it
// was cut off (see redfearn.go; PROJ's is the true one).
//
// What PROJ gives with its own file of OSTN15 is another thing, for that is
// resampled: see TestOSTN15AgainstPROJ.
func TestOSTN15AgainstPROJWithItsTables(t *testing.T) {
	dir := t.TempDir()
	table, model := filepath.Join(dir, "shifts.tif"), filepath.Join(dir, "shifts.json")
	require.NoError(t, os.WriteFile(table, shiftsTIFF(shifts()), 0o644))
	require.NoError(t, os.WriteFile(model, fmt.Appendf(nil, shiftModel, table), 0o644))
	pipeline := strings.Fields("+proj=pipeline +step +proj=unitconvert +xy_in=deg +xy_out=rad " +
		"+step +proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=GRS80 " +
		"+step +proj=defmodel +model=" + model)
	cct := func(lines []string, flags ...string) (out []string) {
		for _, line := range tool(t, "proj-bin", lines, "cct", append(append([]string{"-t", "2020"}, flags...), pipeline...)...) {
			// A point that cannot be found has a line more, with the reason.
			if !strings.HasPrefix(strings.TrimSpace(line), "(") {
				out = append(out, line)
			}
		}
		require.Equal(t, len(lines), len(out))
		return out
	}
	planes, lines, ours := randomPlanes(t, rand.NewPCG(89, 97), "%.6f %.6f 0", func(lat, lon float64) string { return fmt.Sprintf("%.11f %.11f 0", lon, lat) })
	back := cct(lines, "-I", "-d", "11")
	returned := cct(ours, "-d", "6")
	var worst [3]float64
	var trueWorst float64
	astray := 0
	for i, at := range planes {
		note := func(way int, d float64) {
			worst[way] = max(worst[way], d)
			if math.Abs(at.Easting-britishOnETRS.e0) < redfearnReach {
				trueWorst = max(trueWorst, d)
			}
			assert.LessOrEqual(t, d, 0.002, "%v, way %d", at, way)
		}
		// Our latitude and longitude through PROJ's way there.
		e, n := scan(t, returned[i])
		note(0, math.Hypot(e-at.Easting, n-at.Northing))
		if strings.HasPrefix(back[i], "#") {
			// PROJ's iteration to and fro across the edge of a cell does not
			// always end.
			astray++
			continue
		}
		lon, lat := scan(t, back[i])
		ourLat, ourLon, _ := at.geographic()
		note(1, metresBetween(lat, lon, ourLat, ourLon))
		there := Point{Lat: lat, Lon: lon}.Plane(British)
		note(2, math.Hypot(there.Easting-at.Easting, there.Northing-at.Northing))
	}
	assert.Less(t, trueWorst, 0.0001)
	assert.Less(t, astray, randomPoints/500)
	t.Logf("worst differences: ours through its way there %.6f m, its latitude and longitude %.6f m, its back through ours %.6f m; within %d km of the meridian %.6f m; %d points that its way back does not find",
		worst[0], worst[1], worst[2], redfearnReach/1000, trueWorst, astray)
}
