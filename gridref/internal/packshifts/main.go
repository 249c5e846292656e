// Command packshifts packs the OSTN15 shift grids for embedding.
//
// It reads the two data files of Debian's libgeo-coordinates-osgb-perl: 701 by
// 1251 little-endian 16-bit values each, row by row from the south-west, in
// millimetres above the least shift, which is part of the file's name. It
// writes, for the east and then the north shifts, the difference of each value
// from the plane through its three neighbours to the west and south, as
// zigzag varints, all deflated.
package main

import (
	"bytes"
	"compress/flate"
	"encoding/binary"
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

const columns, rows = 701, 1251

func main() {
	in := flag.String("in", "", "folder with the two data files")
	out := flag.String("out", "", "packed file to write")
	flag.Parse()
	if err := pack(*in, *out); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func pack(in, out string) error {
	var packed bytes.Buffer
	w, err := flate.NewWriter(&packed, flate.BestCompression)
	if err != nil {
		return err
	}
	for _, name := range []string{"ostn_east_shift_82140", "ostn_north_shift_-84180"} {
		raw, err := os.ReadFile(filepath.Join(in, name))
		if err != nil {
			return err
		}
		if len(raw) != 2*columns*rows {
			return fmt.Errorf("%s has %d bytes, not %d", name, len(raw), 2*columns*rows)
		}
		if _, err := w.Write(residuals(raw)); err != nil {
			return err
		}
	}
	if err := w.Close(); err != nil {
		return err
	}
	return os.WriteFile(out, packed.Bytes(), 0o644)
}

func residuals(raw []byte) []byte {
	at := func(i int) int64 {
		if i < 0 {
			return 0
		}
		return int64(binary.LittleEndian.Uint16(raw[2*i:]))
	}
	var b []byte
	for i := range columns * rows {
		west, south, corner := at(i-1), at(i-columns), at(i-columns-1)
		if i%columns == 0 {
			west, corner = south, south
		}
		b = binary.AppendVarint(b, at(i)-(west+south-corner))
	}
	return b
}
