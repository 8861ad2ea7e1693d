package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"syscall"

	"topplate/render"
)

// writeFolder writes files into dir, which is made if it is not there. All are
// written beside it first and moved in only when every one is complete, so
// that nothing half-written is left behind.
func writeFolder(dir string, files []render.File) error {
	info, err := os.Stat(dir)
	switch {
	case err == nil && !info.IsDir():
		return fmt.Errorf("%s is a file, not a folder; give another folder to -o", dir)
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("can't write to %s: %w", dir, reason(err))
	}
	fresh := err != nil
	parent := dir
	if fresh {
		parent = filepath.Dir(filepath.Clean(dir))
		if err := os.MkdirAll(parent, 0o777); err != nil {
			return fmt.Errorf("can't make the folder %s: %w", dir, reason(err))
		}
	}
	stage, err := os.MkdirTemp(parent, ".topplate-")
	if err != nil {
		return fmt.Errorf("can't write to %s: %w", dir, reason(err))
	}
	defer os.RemoveAll(stage)
	for _, f := range files {
		if err := writeWhole(filepath.Join(stage, f.Name), f.Data); err != nil {
			return fmt.Errorf("can't write %s: %w; nothing was changed", f.Name, reason(err))
		}
	}
	if fresh {
		if err := os.Chmod(stage, 0o755); err != nil {
			return fmt.Errorf("can't write to %s: %w", dir, reason(err))
		}
		if err := os.Rename(stage, dir); err != nil {
			return fmt.Errorf("can't make the folder %s: %w", dir, reason(err))
		}
		return nil
	}
	return moveIn(stage, dir, files)
}

// moveIn renames each file from stage into dir, and takes away what an earlier
// drawing wrote there and this one does not. It replaces nothing but what the
// program wrote itself: what that was, the manifest in dir tells. If the writing
// breaks off, the manifest tells of both drawings.
func moveIn(stage, dir string, files []render.File) error {
	old, err := oldManifest(dir)
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := replaceable(filepath.Join(dir, f.Name), f, &old); err != nil {
			return err
		}
	}
	if err := announce(stage, dir, files, &old); err != nil {
		return err
	}
	for _, f := range files { // the manifest is the last
		if err := os.Rename(filepath.Join(stage, f.Name), filepath.Join(dir, f.Name)); err != nil {
			return fmt.Errorf("can't write %s: %w", filepath.Join(dir, f.Name), reason(err))
		}
		if f.Name != render.ManifestName {
			continue
		}
		if err := clearStale(dir, files, &old); err != nil {
			return err
		}
	}
	return nil
}

// apartFromJob fails if a folder has drawings other than ours: its manifest
// tells of them, and one that tells only of ours would take them away.
func apartFromJob(dir string, ours func(name string) bool) error {
	info, err := os.Stat(dir)
	if err != nil || !info.IsDir() {
		return nil
	}
	old, err := oldManifest(dir)
	if err != nil {
		return err
	}
	for _, e := range old.Files {
		if !ours(e.File) {
			return fmt.Errorf("%s has the drawings of a job, %s among them; give another folder to -o; nothing was changed", filepath.Clean(dir), e.File)
		}
	}
	return nil
}

// oldManifest reads the manifest of a folder; it is empty if there is none.
func oldManifest(dir string) (render.Manifest, error) {
	path := filepath.Join(dir, render.ManifestName)
	data, err := os.ReadFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return render.Manifest{}, nil
	case err != nil:
		if info, e := os.Lstat(path); e == nil && info.IsDir() {
			return render.Manifest{}, errFolder(path)
		}
		return render.Manifest{}, fmt.Errorf("can't read %s: %w; nothing was changed", path, reason(err))
	}
	m, err := render.ReadManifest(data)
	if err != nil {
		return m, fmt.Errorf("%s: %w; move it away or give another folder to -o; nothing was changed", dir, err)
	}
	return m, nil
}

func errFolder(path string) error {
	return fmt.Errorf("%s is a folder, and a file of that name would be written; nothing was changed", path)
}

// replaceable says why a file may not take the place of what is there.
func replaceable(path string, f render.File, old *render.Manifest) error {
	info, err := os.Lstat(path)
	if err != nil || f.Name == render.ManifestName {
		return nil // nothing there, or read already
	}
	if info.IsDir() {
		return errFolder(path)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return fmt.Errorf("can't read %s, which would be replaced: %w; nothing was changed", path, reason(err))
	}
	if !old.Wrote(f.Name, data) && !bytes.Equal(data, f.Data) {
		return fmt.Errorf("%s is there and is not as topplate wrote it; move it away or give another folder to -o; nothing was changed", path)
	}
	return nil
}

// announce puts a manifest into dir that tells of what is there and of what
// will be.
func announce(stage, dir string, files []render.File, old *render.Manifest) error {
	i := slices.IndexFunc(files, func(f render.File) bool { return f.Name == render.ManifestName })
	if i < 0 {
		return nil
	}
	m, err := render.ReadManifest(files[i].Data)
	if err != nil {
		return err
	}
	m.Replaced = slices.Concat(old.Files, old.Replaced)
	f, err := m.File()
	if err != nil {
		return err
	}
	between := filepath.Join(stage, ".between")
	if err := writeWhole(between, f.Data); err != nil {
		return fmt.Errorf("can't write %s: %w; nothing was changed", f.Name, reason(err))
	}
	if err := os.Rename(between, filepath.Join(dir, f.Name)); err != nil {
		return fmt.Errorf("can't write %s: %w; nothing was changed", f.Name, reason(err))
	}
	return nil
}

// clearStale removes what an earlier drawing wrote and this one did not, unless
// somebody changed it.
func clearStale(dir string, files []render.File, old *render.Manifest) error {
	for _, e := range slices.Concat(old.Files, old.Replaced) {
		if !filepath.IsLocal(e.File) || slices.ContainsFunc(files, func(f render.File) bool { return f.Name == e.File }) {
			continue
		}
		path := filepath.Join(dir, e.File)
		data, err := os.ReadFile(path)
		if err != nil || !old.Wrote(e.File, data) {
			continue
		}
		if err := os.Remove(path); err != nil {
			return fmt.Errorf("can't remove %s, which an earlier drawing wrote: %w", path, reason(err))
		}
	}
	return nil
}

// writeWhole writes and closes a file, so that a full disk is noticed.
func writeWhole(path string, data []byte) (err error) {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}

// reason is what a person wants to know of a file error, without the path.
func reason(err error) error {
	known := []struct {
		err  error
		text string
	}{
		{syscall.ENOSPC, "the disk is full"},
		{syscall.EROFS, "the disk is read-only"},
		{fs.ErrPermission, "it is read-only for you"},
		{syscall.ENOTDIR, "a part of the path is a file, not a folder"},
		{syscall.ELOOP, "its links lead in a circle"},
		{syscall.ENAMETOOLONG, "the name is too long"},
	}
	i := slices.IndexFunc(known, func(k struct {
		err  error
		text string
	},
	) bool {
		return errors.Is(err, k.err)
	})
	if i >= 0 {
		return errors.New(known[i].text)
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}
