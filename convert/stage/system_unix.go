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

// isOpen tells whether a file is in use in a way that keeps it from being
// replaced.
func isOpen(err error) bool {
	return errors.Is(err, syscall.EBUSY) || errors.Is(err, syscall.ETXTBSY)
}

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

// lock locks a file, made for it, that no other program has locked. It loses its
// name before its lock, so that whoever finds it by its name afterwards, and
// finds another there or none, tries again.
func lock(path string) (*os.File, error) {
	for {
		f, err := os.OpenFile(path, os.O_RDONLY|os.O_CREATE, 0o644)
		if err != nil {
			return nil, err
		}
		if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
			f.Close()
			if errors.Is(err, syscall.EWOULDBLOCK) {
				return nil, ErrHeld
			}
			return nil, err
		}
		locked, err := f.Stat()
		if err != nil {
			f.Close()
			return nil, err
		}
		if named, err := os.Stat(path); err == nil && os.SameFile(locked, named) {
			return f, nil
		}
		f.Close()
	}
}

func unlock(f *os.File) {
	os.Remove(f.Name())
	f.Close()
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

// keep holds a file that was just made, until the handle returned is closed.
// It is not ours where somebody had it already or has taken it away. The handle
// is nil where the disk knows no locks.
func keep(path string) (lock *os.File, ours bool) {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return nil, !errors.Is(err, fs.ErrNotExist)
	}
	if err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		f.Close()
		return nil, !errors.Is(err, syscall.EWOULDBLOCK)
	}
	if _, err := os.Lstat(path); err != nil {
		f.Close()
		return nil, false
	}
	return f, true
}

// takeAway removes a file that keep has held, where its maker is certainly
// gone: where the lock can be had, and is had as long as the file has its name.
func takeAway(path string) bool {
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return false
	}
	defer f.Close()
	return syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) == nil && os.Remove(path) == nil
}
