//go:build !unix || solaris || illumos || aix

package record

import "os"

// lock does nothing: the standard library has no lock for this system. Whoever
// works alone needs none.
func lock(*os.File) error { return nil }

// syncFolder does nothing: a folder can't be opened to be waited for here.
func syncFolder(string) error { return nil }
