package convert_test

import (
	"context"
	"os"
	"path/filepath"
	"testing"

	"fieldfare/convert"
	"fieldfare/testdata/make/large"

	"github.com/stretchr/testify/require"
)

// BenchmarkConvert runs the main job on a list of 20,000 rows, all outputs
// included.
func BenchmarkConvert(b *testing.B) {
	const rows = 20_000
	folder := b.TempDir()
	path := filepath.Join(folder, "large.csv")
	file, err := os.Create(path)
	require.NoError(b, err)
	require.NoError(b, large.Write(file, rows))
	require.NoError(b, file.Close())
	b.ReportAllocs()
	for b.Loop() {
		_, err := convert.Run(context.Background(), convert.Job{Files: []string{path}, Out: filepath.Join(folder, "out"), Today: today})
		require.NoError(b, err)
	}
	b.ReportMetric(float64(b.N)*rows/b.Elapsed().Seconds(), "rows/s")
}
