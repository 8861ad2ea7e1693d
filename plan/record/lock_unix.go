//go:build unix && !solaris && !illumos && !aix

package record

import (
	"errors"
	"os"
	"syscall"
)

// lock waits until no other program has the lock of f. The system gives it back
// when f is closed or the program ends, however it ends.
func lock(f *os.File) error {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX)
		if !errors.Is(err, syscall.EINTR) {
			return err
		}
	}
}

// syncFolder waits until the disk has the name of a new file.
func syncFolder(dir string) error {
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}
