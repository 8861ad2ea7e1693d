package record

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"topplate/plan/diag"
	"topplate/plan/source"
)

// Add adds to the record at path what choose makes of the entries that are
// there, and returns it with its numbers. It makes the file if there is none. If
// choose returns an error nothing is touched; it is asked again if another
// program adds to the record meanwhile. Once Add has returned without an error
// the disk has the entries. After an error of writing a part of them may be in
// the file: the whole ones count.
func Add(path string, choose func(entries []Entry) ([]Entry, error)) ([]Entry, error) {
	src, err := readIfThere(path)
	if err != nil {
		return nil, err
	}
	add, err := chosen(path, src, choose)
	if err != nil || len(add) == 0 {
		return nil, err
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_APPEND|os.O_CREATE, 0o644)
	if err != nil {
		return nil, fmt.Errorf("can't add to %q: %w", path, cause(err))
	}
	err = func() error {
		if err := lock(f); err != nil {
			return fmt.Errorf("can't lock %q: %w", path, err)
		}
		now, err := readIfThere(path)
		if err != nil {
			return err
		}
		if !bytes.Equal(now, src) {
			if add, err = chosen(path, now, choose); err != nil {
				return err
			}
		}
		return write(f, path, now, add)
	}()
	// Closing gives the lock back.
	if err := errors.Join(err, f.Close()); err != nil {
		return nil, err
	}
	return add, nil
}

// chosen are the entries that choose wants to add, with their numbers. Each of
// them reads back.
func chosen(path string, src []byte, choose func([]Entry) ([]Entry, error)) ([]Entry, error) {
	there, _ := Read(path, src)
	add, err := choose(there)
	if err != nil {
		return nil, err
	}
	last := 0
	if len(there) > 0 {
		last = there[len(there)-1].Number
	}
	add = slices.Clone(add)
	for i := range add {
		add[i].Number = last + i + 1
		line := add[i].line()
		if _, err := parseLine(line[:len(line)-1]); err != nil {
			return nil, fmt.Errorf("an entry about %s %s can't be written: %w", add[i].Kind, add[i].ID, err)
		}
	}
	return add, nil
}

// readIfThere reads a file; one that is not there is empty.
func readIfThere(path string) ([]byte, error) {
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	return source.ReadFile(path)
}

// write writes entries at the end of a file that holds src, in one piece, on a
// line of their own, and waits until the disk has them.
func write(f *os.File, path string, src []byte, add []Entry) error {
	var b bytes.Buffer
	if len(src) > 0 && src[len(src)-1] != '\n' {
		b.WriteByte('\n') // the last entry was torn
	}
	for i := range add {
		b.WriteString(add[i].line())
	}
	if len(src)+b.Len() > mostFile {
		return fmt.Errorf("%q would become larger than the %d bytes that are read; nothing was added", path, mostFile)
	}
	_, err := f.Write(b.Bytes())
	if err == nil {
		err = f.Sync()
	}
	if err == nil && len(src) == 0 {
		err = syncFolder(filepath.Dir(path))
	}
	if err != nil {
		return fmt.Errorf("can't add to %q: %w; what was to be recorded may be missing, look with show", path, cause(err))
	}
	return nil
}

// cause is an error of a file without its path.
func cause(err error) error {
	var p *fs.PathError
	switch {
	case errors.Is(err, fs.ErrPermission):
		return errors.New("you are not allowed to write it")
	case errors.As(err, &p):
		return p.Err
	}
	return err
}

// ReadFile reads the record at path, as Read does. One that is not there has no
// entries.
func ReadFile(path string) ([]Entry, *diag.List, error) {
	src, err := readIfThere(path)
	if err != nil {
		return nil, nil, err
	}
	all, list := Read(path, src)
	return all, list, nil
}
