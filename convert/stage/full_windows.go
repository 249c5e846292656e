package stage

import (
	"errors"
	"syscall"
)

// isFull tells whether the disk is used up: ERROR_HANDLE_DISK_FULL (39) or
// ERROR_DISK_FULL (112) of the Windows system error codes.
func isFull(err error) bool {
	return errors.Is(err, syscall.Errno(39)) || errors.Is(err, syscall.Errno(112))
}
