//go:build !windows

package stage

import (
	"errors"
	"syscall"
)

// isFull tells whether the disk, or the person's share of it, is used up.
func isFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT)
}
