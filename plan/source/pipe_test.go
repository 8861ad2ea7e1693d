//go:build unix

package source

import (
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// A pipe that nobody writes to is refused before it is opened: opening would
// wait for ever.
func TestReadFileRefusesPipe(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := ReadFile(pipe); err == nil || !strings.HasSuffix(err.Error(), `: it is a pipe, not a plain file`) {
		t.Errorf("a pipe gives %v", err)
	}
}
