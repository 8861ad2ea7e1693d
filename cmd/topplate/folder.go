package main

import (
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

// moveIn renames each file from stage into dir after checking that none would
// land on a folder.
func moveIn(stage, dir string, files []render.File) error {
	for _, f := range files {
		if info, err := os.Lstat(filepath.Join(dir, f.Name)); err == nil && info.IsDir() {
			return fmt.Errorf("%s is a folder, and a file of that name would be written; nothing was changed", filepath.Join(dir, f.Name))
		}
	}
	for _, f := range files {
		if err := os.Rename(filepath.Join(stage, f.Name), filepath.Join(dir, f.Name)); err != nil {
			return fmt.Errorf("can't write %s: %w", filepath.Join(dir, f.Name), reason(err))
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
