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

// mine: temporary folders of Windows are each person's own.
func mine(fs.FileInfo) bool { return true }

// hold makes a file and holds it until it is closed or the program ends,
// however it ends: nobody else can open it.
func hold(path string) (*os.File, error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, err
	}
	const shared = 0 // with nobody
	handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, shared, nil, syscall.CREATE_ALWAYS, syscall.FILE_ATTRIBUTE_NORMAL, 0)
	if err != nil {
		return nil, &fs.PathError{Op: "create", Path: path, Err: err}
	}
	return os.NewFile(uintptr(handle), path), nil
}

// held tells whether a running program holds the file: ERROR_SHARING_VIOLATION.
func held(path string) bool {
	f, err := os.Open(path)
	if err == nil {
		f.Close()
	}
	return errors.Is(err, syscall.Errno(32))
}
