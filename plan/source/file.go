package source

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"syscall"
)

// ReadFile returns the bytes of a file. It refuses what is not a plain file,
// before it opens it, and what is larger than 16 MiB, of which it reads no more
// than that. Its errors are one sentence that names the path.
func ReadFile(path string) ([]byte, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, fileError(path, err)
	}
	if !info.Mode().IsRegular() {
		return nil, fmt.Errorf("cannot read %q: it is %s", path, nature(info.Mode()))
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, fileError(path, err)
	}
	defer f.Close()
	// The size is not taken from info: some systems give 0 for files they
	// make up while they are read.
	src, err := io.ReadAll(io.LimitReader(f, maxRead+1))
	if err != nil {
		return nil, fileError(path, err)
	}
	if len(src) > maxRead {
		return nil, fmt.Errorf("cannot read %q: it is larger than the %d bytes that are read", path, maxRead)
	}
	return src, nil
}

// nature names what is not a plain file.
func nature(mode fs.FileMode) string {
	switch {
	case mode.IsDir():
		return "a folder, not a file"
	case mode&fs.ModeNamedPipe != 0:
		return "a pipe, not a plain file"
	case mode&fs.ModeSocket != 0:
		return "a socket, not a plain file"
	default:
		return "a device, not a plain file"
	}
}

// fileError says in plain words why a file cannot be read.
func fileError(path string, err error) error {
	var cause *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("cannot read %q: there is no such file", path)
	case errors.Is(err, fs.ErrPermission):
		return fmt.Errorf("cannot read %q: you are not allowed to read it", path)
	case errors.Is(err, syscall.ELOOP):
		return fmt.Errorf("cannot read %q: its links go round in a circle", path)
	case errors.As(err, &cause):
		err = cause.Err
	}
	return fmt.Errorf("cannot read %q: %w", path, err)
}
