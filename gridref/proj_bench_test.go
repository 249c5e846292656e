package gridref

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fieldfare/testdata/need"

	"github.com/stretchr/testify/require"
)

// projTimer prints the nanoseconds that PROJ's C library takes for a point,
// the least of many rounds over the eastings and northings on its input.
const projTimer = `
#include <proj.h>
#include <stdio.h>
#include <time.h>
enum { most = 4096, rounds = 100 };
static PJ_COORD given[most], work[most];
int main(int argc, char **argv) {
	PJ *p = proj_create(PJ_DEFAULT_CTX, argv[1]);
	int n = 0;
	double least = 0;
	if (!p) return 1;
	while (n < most && scanf("%lf %lf", &given[n].xy.x, &given[n].xy.y) == 2) n++;
	for (int round = 0; round < rounds; round++) {
		struct timespec a, b;
		for (int i = 0; i < n; i++) work[i] = given[i];
		clock_gettime(CLOCK_MONOTONIC, &a);
		if (proj_trans_array(p, PJ_INV, n, work)) return 2;
		clock_gettime(CLOCK_MONOTONIC, &b);
		double ns = (b.tv_sec - a.tv_sec) * 1e9 + (b.tv_nsec - a.tv_nsec);
		if (round == 0 || ns < least) least = ns;
	}
	printf("%.1f\n", least / n);
	return 0;
}
`

// BenchmarkBesidePROJ reads references and finds their latitude, longitude and
// uncertainty, and reports beside it what PROJ's C library takes for the
// transformation alone, in the same run: from the plane through its own file of
// OSTN15. Both are the least of many rounds over the same points of a county,
// since the machine may be busy. PROJ is not asked about points all over
// Britain, on which it spends its time unpacking its file. It needs a C
// compiler and PROJ's headers (libproj-dev).
func BenchmarkBesidePROJ(b *testing.B) {
	dir := b.TempDir()
	source, program := filepath.Join(dir, "timer.c"), filepath.Join(dir, "timer")
	grid := need.ReferenceFile(b, "ostn15/uk_os_OSTN15_NTv2_OSGBtoETRS.tif")
	require.NoError(b, os.WriteFile(source, []byte(projTimer), 0o644))
	out, err := exec.Command(need.Tool(b, "cc", "apt-get install gcc libproj-dev"), "-O2", "-o", program, source, "-lproj").CombinedOutput()
	require.NoError(b, err, string(out))
	county := tidyReferences(520_000, 580_000, 240_000, 320_000)
	var points bytes.Buffer
	for _, text := range county {
		r, err := Parse(text)
		require.NoError(b, err)
		at := r.Square.Centre()
		fmt.Fprintf(&points, "%.1f %.1f\n", at.Easting, at.Northing)
	}
	proj := exec.Command(program, "+proj=pipeline +step +inv +proj=hgridshift +grids="+grid+" +step "+strings.Replace(projBritish, "+units=m", "", 1))
	proj.Stdin = &points
	timed, err := proj.Output()
	require.NoError(b, err)
	var theirs float64
	_, err = fmt.Sscan(string(timed), &theirs)
	require.NoError(b, err)
	shifts()
	for _, area := range []struct {
		name   string
		values []string
	}{{"county", county}, {"Britain", tidyReferences(0, 700_000, 0, 1_250_000)}} {
		b.Run(area.name, func(b *testing.B) {
			sum, least := 0.0, time.Hour
			for b.Loop() {
				start := time.Now()
				for _, text := range area.values {
					r, _ := Parse(text)
					sum += r.Square.Point().Lat
				}
				least = min(least, time.Since(start))
			}
			ours := float64(least.Nanoseconds()) / float64(len(area.values))
			b.ReportMetric(ours, "ns/reference")
			b.ReportMetric(theirs, "PROJ-ns/point")
			b.ReportMetric(theirs/ours, "PROJ/ours")
			_ = sum
		})
	}
}
