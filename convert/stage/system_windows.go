package stage

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// isFull tells whether the disk is used up: ERROR_HANDLE_DISK_FULL (39) or
// ERROR_DISK_FULL (112) of the Windows system error codes.
func isFull(err error) bool {
	return errors.Is(err, syscall.Errno(39)) || errors.Is(err, syscall.Errno(112))
}

// isReadOnly: ERROR_WRITE_PROTECT.
func isReadOnly(err error) bool { return errors.Is(err, syscall.Errno(19)) }

// isNoFolder: ERROR_DIRECTORY.
func isNoFolder(err error) bool { return errors.Is(err, syscall.Errno(267)) }

// isOpen: ERROR_SHARING_VIOLATION, ERROR_LOCK_VIOLATION and
// ERROR_USER_MAPPED_FILE.
func isOpen(err error) bool {
	return errors.Is(err, syscall.Errno(32)) || errors.Is(err, syscall.Errno(33)) || errors.Is(err, syscall.Errno(1224))
}

// mine: temporary folders of Windows are each person's own.
func mine(fs.FileInfo) bool { return true }

// hold makes a file and holds it until it is closed or the program ends,
// however it ends: nobody else can open it.
func hold(path string) (*os.File, error) { return exclusive(path, syscall.FILE_ATTRIBUTE_NORMAL) }

func exclusive(path string, attributes uint32) (*os.File, error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, err
	}
	const shared = 0 // with nobody
	handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, shared, nil, syscall.CREATE_ALWAYS, attributes, 0)
	if err != nil {
		return nil, &fs.PathError{Op: "create", Path: path, Err: err}
	}
	return os.NewFile(uintptr(handle), path), nil
}

// lock makes a file that nobody else can open, and that is gone once it is
// closed or the program ends. While another program has it, opening it is a
// sharing violation; while it is on its way out, access is denied.
func lock(path string) (*os.File, error) {
	const deleteOnClose = 0x04000000 // FILE_FLAG_DELETE_ON_CLOSE
	f, err := exclusive(path, syscall.FILE_ATTRIBUTE_NORMAL|deleteOnClose)
	if errors.Is(err, syscall.Errno(32)) {
		return nil, ErrHeld
	}
	return f, err
}

func unlock(f *os.File) { f.Close() }

// held tells whether a running program holds the file: ERROR_SHARING_VIOLATION.
func held(path string) bool {
	f, err := os.Open(path)
	if err == nil {
		f.Close()
	}
	return errors.Is(err, syscall.Errno(32))
}

// keep holds nothing: a file that is open cannot be moved into its place.
func keep(string) (lock *os.File, ours bool) { return nil, true }

// takeAway takes nothing away, since it cannot tell whose maker is gone.
func takeAway(string) bool { return false }
