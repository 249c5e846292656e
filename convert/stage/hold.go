package stage

import "errors"

// ErrHeld says that another run holds what is to be held.
var ErrHeld = errors.New("another run is at work")

// Hold keeps a thing for this run alone, by a file of the given path that is
// locked until release is called or the program ends, however it ends. The
// error is ErrHeld while another run has it. Where no such file can be made, or
// the disk knows no locks, nothing is held and there is no error: who only
// wants to read must not fail for it.
func Hold(path string) (release func(), err error) {
	f, err := lock(path)
	switch {
	case errors.Is(err, ErrHeld):
		return nil, err
	case err != nil:
		return func() {}, nil
	}
	return func() { unlock(f) }, nil
}
