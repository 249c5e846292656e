// Command packshifts packs the OSTN15 shift grids for embedding.
//
// It reads the two data files of Debian's libgeo-coordinates-osgb-perl: 701 by
// 1251 little-endian 16-bit values each, row by row from the south-west, in
// millimetres above the least shift, which is part of the file's name. It
// writes, for the east and then the north shifts, a length in four bytes and
// the deflated zigzag varints of the difference of each value from the plane
// through its three neighbours to the west and south.
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
	var packed []byte
	for _, name := range []string{"ostn_east_shift_82140", "ostn_north_shift_-84180"} {
		raw, err := os.ReadFile(filepath.Join(in, name))
		if err != nil {
			return err
		}
		if len(raw) != 2*columns*rows {
			return fmt.Errorf("%s has %d bytes, not %d", name, len(raw), 2*columns*rows)
		}
		plane, err := deflate(residuals(raw))
		if err != nil {
			return err
		}
		packed = binary.LittleEndian.AppendUint32(packed, uint32(len(plane)))
		packed = append(packed, plane...)
	}
	return os.WriteFile(out, packed, 0o644)
}

func deflate(b []byte) ([]byte, error) {
	var packed bytes.Buffer
	w, err := flate.NewWriter(&packed, flate.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(b); err != nil {
		return nil, err
	}
	err = w.Close()
	return packed.Bytes(), err
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
