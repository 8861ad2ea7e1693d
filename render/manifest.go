package render

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"topplate/plan"
)

// Version of the program, as a folder's manifest and the command line tell it.
const Version = "0.4.0"

// ManifestName is the file of a job folder that says what the program wrote.
const ManifestName = "manifest.json"

// manifestFormat names the format, and its version, of the manifest.
const manifestFormat = "topplate-manifest/1"

// A Manifest says what a job folder was made from and what the program wrote
// there, so that drawing again replaces just that.
type Manifest struct {
	Format  string  `json:"format"`
	Version string  `json:"version"`
	Inputs  []Entry `json:"inputs"`
	Files   []Entry `json:"files"`
	// Replaced are what files were before they are replaced, while a folder is
	// being written: a folder whose writing broke off has them.
	Replaced []Entry `json:"replaced,omitempty"`
}

// An Entry is a file and what was in it.
type Entry struct {
	File string `json:"file"`
	SHA  string `json:"sha256"` // in hexadecimal
}

// EntryOf is the entry of a file with this content.
func EntryOf(name string, data []byte) Entry {
	sum := sha256.Sum256(data)
	return Entry{name, hex.EncodeToString(sum[:])}
}

// ManifestOf is the manifest of a folder with these files.
func ManifestOf(job *plan.Job, files []File) Manifest {
	m := Manifest{Format: manifestFormat, Version: Version, Inputs: []Entry{}, Files: []Entry{}}
	for _, in := range job.Inputs {
		m.Inputs = append(m.Inputs, Entry{in.Path, hex.EncodeToString(in.SHA256[:])})
	}
	for _, f := range files {
		m.Files = append(m.Files, EntryOf(f.Name, f.Data))
	}
	return m
}

// File is the manifest as a file.
func (m *Manifest) File() (File, error) {
	data, err := json.MarshalIndent(m, "", "  ")
	if err != nil {
		return File{}, fmt.Errorf("writing the manifest: %w", err)
	}
	return File{ManifestName, append(data, '\n')}, nil
}

// ReadManifest reads a manifest back.
func ReadManifest(data []byte) (Manifest, error) {
	var m Manifest
	if err := json.Unmarshal(data, &m); err != nil {
		return m, fmt.Errorf("%s is not what topplate wrote: %w", ManifestName, err)
	}
	if m.Format != manifestFormat {
		return m, fmt.Errorf("%s has format %q; want %q", ManifestName, m.Format, manifestFormat)
	}
	return m, nil
}

// Wrote reports whether the program wrote a file with this content.
func (m *Manifest) Wrote(name string, data []byte) bool {
	e := EntryOf(name, data)
	for _, entries := range [][]Entry{m.Files, m.Replaced} {
		for _, o := range entries {
			if o == e {
				return true
			}
		}
	}
	return false
}
