package main

import (
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"topplate/render"
)

// A folder that may not be written to is left as it was, and so is the place
// where a new folder would be made. Root may write everywhere, so as root the
// test takes the rights of nobody for files, on a thread of its own.
func TestWriteFolderReadOnly(t *testing.T) {
	dir := t.TempDir()
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	errs := make(chan error, 2)
	go func() {
		if os.Geteuid() == 0 {
			runtime.LockOSThread() // never unlocked: the thread ends with the goroutine
			const nobody = 65534
			syscall.RawSyscall(syscall.SYS_SETFSUID, nobody, 0, 0)
		}
		files := []render.File{{Name: "a", Data: []byte("x")}}
		errs <- writeFolder(dir, files)
		errs <- writeFolder(filepath.Join(dir, "new"), files)
	}()
	for range 2 {
		if err := <-errs; err == nil || !strings.Contains(err.Error(), "read-only") {
			t.Errorf("error %v does not say that the folder is read-only", err)
		}
	}
	if entries, _ := os.ReadDir(dir); len(entries) > 0 {
		t.Errorf("the folder holds %v", entries)
	}
}
