package notebook

import "io"

// readSome reads something into b, or tells that the input is at its end.
func readSome(r io.Reader, b []byte) (n int, eof bool, err error) {
	for range 100 {
		switch n, err := r.Read(b); {
		case err == io.EOF:
			return n, true, nil
		case n > 0 || err != nil:
			return n, false, err
		}
	}
	return 0, false, io.ErrNoProgress
}
