package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"topplate/render"
)

// When one file can't be written, none of the others is left behind, and what
// was there stays as it was.
func TestWriteFolderIsAllOrNothing(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "a.svg"), []byte("old"), 0o666); err != nil {
		t.Fatal(err)
	}
	files := []render.File{{Name: "a.svg", Data: []byte("new")}, {Name: "b.svg", Data: []byte("new")}, {Name: "no/such/c.svg", Data: []byte("new")}}
	err := writeFolder(dir, files)
	if err == nil || !strings.Contains(err.Error(), "nothing was changed") {
		t.Errorf("error %v does not say that nothing was changed", err)
	}
	entries, _ := os.ReadDir(dir)
	if len(entries) != 1 || entries[0].Name() != "a.svg" {
		t.Errorf("the folder holds %v, want a.svg alone", entries)
	}
	if data, _ := os.ReadFile(filepath.Join(dir, "a.svg")); string(data) != "old" {
		t.Errorf("a.svg holds %q, want the old text", data)
	}
	if err := writeFolder(filepath.Join(dir, "new"), files); err == nil {
		t.Error("a new folder was made although a file failed")
	}
	if _, err := os.Stat(filepath.Join(dir, "new")); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the new folder is there: %v", err)
	}
}

func TestReasonsOfFileErrors(t *testing.T) {
	for err, want := range map[error]string{
		syscall.ENOSPC:  "the disk is full",
		syscall.EROFS:   "the disk is read-only",
		syscall.EACCES:  "it is read-only for you",
		syscall.ENOTDIR: "a part of the path is a file, not a folder",
		syscall.ELOOP:   "its links lead in a circle",
	} {
		wrapped := fmt.Errorf("doing: %w", &fs.PathError{Op: "open", Path: "x", Err: err})
		if got := reason(wrapped).Error(); got != want {
			t.Errorf("reason(%v) = %q, want %q", err, got, want)
		}
	}
}
