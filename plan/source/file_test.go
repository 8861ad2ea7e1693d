package source

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

func TestReadFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "hall.toml")
	want := strings.Repeat("a", maxRead)
	if err := os.WriteFile(path, []byte(want), 0o600); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	for _, p := range []string{path, link} {
		if got, err := ReadFile(p); err != nil || string(got) != want {
			t.Errorf("%d bytes, %v", len(got), err)
		}
	}
}

func TestReadFileRefuses(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	must(os.Symlink(at("b"), at("a")))
	must(os.Symlink(at("a"), at("b")))
	must(os.WriteFile(at("secret"), []byte("a = 1"), 0o200))
	must(os.WriteFile(at("huge"), nil, 0o600))
	must(os.Truncate(at("huge"), 50<<30)) // takes no room on the disk

	tests := []struct{ path, want string }{
		{dir, "it is a folder, not a file"},
		{at("none"), "there is no such file"},
		{at("secret") + "/x", "not a directory"},
		{at("a"), "its links go round in a circle"},
		{os.DevNull, "it is a device, not a plain file"},
		{at("huge"), "it is larger than the 16777216 bytes that are read"},
		{"line\nbreak", `"line\nbreak": there is no such file`},
	}
	if os.Getuid() != 0 { // who may read everything is never refused
		tests = append(tests, struct{ path, want string }{at("secret"), "you are not allowed to read it"})
	}
	for _, tt := range tests {
		src, err := ReadFile(tt.path)
		if err == nil {
			t.Errorf("%s: %d bytes are read", tt.path, len(src))
			continue
		}
		if got := err.Error(); !strings.HasPrefix(got, `cannot read "`) || !strings.Contains(got, tt.want) || strings.Contains(got, "\n") {
			t.Errorf("%s: %s; want %s", tt.path, got, tt.want)
		}
	}
}

func TestFileErrorOfPermission(t *testing.T) {
	err := fileError("x", &fs.PathError{Op: "open", Path: "x", Err: syscall.EACCES})
	if got := err.Error(); got != `cannot read "x": you are not allowed to read it` {
		t.Error(got)
	}
	other := errors.New("the disk is on fire")
	if err := fileError("x", other); !errors.Is(err, other) {
		t.Error(err)
	}
}
