//go:build !windows

package stage

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// isFull tells whether the disk, or the person's share of it, is used up, or a
// file has grown to the most that is allowed.
func isFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) || errors.Is(err, syscall.EFBIG)
}

func isReadOnly(err error) bool { return errors.Is(err, syscall.EROFS) }

func isNoFolder(err error) bool { return errors.Is(err, syscall.ENOTDIR) }

// mine tells whether the file belongs to who runs the program: in a place that
// many may write in, others may have put a thing of that name.
func mine(info fs.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && int(stat.Uid) == os.Getuid()
}

// hold makes a file and holds it until it is closed or the program ends,
// however it ends.
func hold(path string) (*os.File, error) {
	f, err := os.Create(path)
	if err != nil {
		return nil, err
	}
	// Where a disk knows no locks, a run is taken to have ended.
	syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	return f, nil
}

// held tells whether a running program holds the file.
func held(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	return errors.Is(syscall.Flock(int(f.Fd()), syscall.LOCK_SH|syscall.LOCK_NB), syscall.EWOULDBLOCK)
}
