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

	"topplate/plan"
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

// withManifest adds the manifest of a folder to its files.
func withManifest(t *testing.T, files ...render.File) []render.File {
	t.Helper()
	m := render.ManifestOf(&plan.Job{}, files)
	f, err := m.File()
	if err != nil {
		t.Fatal(err)
	}
	return append(files, f)
}

func file(name, data string) render.File { return render.File{Name: name, Data: []byte(data)} }

// A second drawing takes away what the first one wrote and it does not, unless
// somebody changed it.
func TestStaleFilesGo(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "out")
	if err := writeFolder(dir, withManifest(t, file("a.svg", "1"), file("b.svg", "1"), file("c.svg", "1"))); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "c.svg"), []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := writeFolder(dir, withManifest(t, file("a.svg", "2"))); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]string{"a.svg": "2", "b.svg": "", "c.svg": "mine"} {
		data, err := os.ReadFile(filepath.Join(dir, name))
		if (err == nil) != (want != "") || string(data) != want {
			t.Errorf("%s holds %q, want %q (%v)", name, data, want, err)
		}
	}
}

// Wherever the writing of a second drawing breaks off, the next one goes over
// it and ends with the same folder.
func TestBrokenOffDrawingIsGoneOver(t *testing.T) {
	first := withManifest(t, file("a.svg", "1"), file("b.svg", "1"), file("d.svg", "1"))
	second := withManifest(t, file("a.svg", "2"), file("b.svg", "2"), file("c.svg", "2"))
	for moved := range len(second) {
		dir := filepath.Join(t.TempDir(), "out")
		if err := writeFolder(dir, first); err != nil {
			t.Fatal(err)
		}
		old, err := oldManifest(dir)
		if err != nil {
			t.Fatal(err)
		}
		stage := t.TempDir()
		if err := announce(stage, dir, second, &old); err != nil {
			t.Fatal(err)
		}
		for _, f := range second[:moved] {
			if err := os.WriteFile(filepath.Join(dir, f.Name), f.Data, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		third := withManifest(t, file("a.svg", "3"), file("b.svg", "3"))
		if err := writeFolder(dir, third); err != nil {
			t.Fatalf("after %d files: %v", moved, err)
		}
		entries, _ := os.ReadDir(dir)
		if len(entries) != len(third) {
			t.Errorf("after %d files the folder holds %v", moved, entries)
		}
	}
}
