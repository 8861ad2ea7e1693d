package main

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"topplate/render"
)

//go:embed starter/house.toml starter/job.toml
var starter embed.FS

func newCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "new DIR",
		Short: "Write a commented house and job to start from",
		Args:  oneFile("a folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := writeStarter(args[0]); err != nil {
				return err
			}
			fmt.Fprintf(cmd.OutOrStdout(), "wrote %s and %s\nnext: topplate draw %s -o plans\n",
				filepath.Join(args[0], "house.toml"), filepath.Join(args[0], "job.toml"), filepath.Join(args[0], "job.toml"))
			return nil
		},
	}
}

// writeStarter writes the starter files into dir. A file of the user's is
// never overwritten.
func writeStarter(dir string) error {
	var files []render.File
	for _, name := range []string{"house.toml", "job.toml"} {
		if _, err := os.Lstat(filepath.Join(dir, name)); err == nil {
			return fmt.Errorf("%s is there already; give another folder", filepath.Join(dir, name))
		} else if !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("can't look into %s: %w", dir, reason(err))
		}
		data, err := starter.ReadFile("starter/" + name)
		if err != nil {
			return err
		}
		files = append(files, render.File{Name: name, Data: data})
	}
	return writeFolder(dir, files)
}
