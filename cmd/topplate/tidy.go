package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"topplate/plan/source"
	"topplate/plan/tidy"
)

func tidyCommand() *cobra.Command {
	var write bool
	var o tidy.Options
	c := &cobra.Command{
		Use:   "tidy FILE.toml",
		Short: "Put the tables and keys of a house or job in order, and keep every comment",
		Long: `tidy prints a house or job file with its tables and keys in the order of the
reference, and comments lined up. No value changes and no comment is lost. With
--write the file itself is replaced, whole or not at all.`,
		Args: oneFile("a house or job file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			src, err := source.ReadFile(args[0])
			if err != nil {
				return err
			}
			out, problems := tidy.Format(args[0], src, o)
			if err := problems.Print(cmd.ErrOrStderr(), lineOf); err != nil {
				return err
			}
			switch {
			case out == nil:
				return errShown
			case !write:
				_, err := cmd.OutOrStdout().Write(out)
				return err
			case bytes.Equal(src, out):
				fmt.Fprintf(cmd.ErrOrStderr(), "%s is tidy\n", args[0])
				return nil
			}
			if err := replaceFile(args[0], src, out); err != nil {
				return err
			}
			fmt.Fprintf(cmd.ErrOrStderr(), "wrote %s\n", args[0])
			return nil
		},
	}
	c.Flags().BoolVarP(&write, "write", "w", false, "replace the file instead of printing")
	c.Flags().BoolVar(&o.Lengths, "lengths", false, `write all lengths in one way, such as "12ft 6-1/2in"`)
	return c
}

// replaceFile puts data in the place of a file, whole or not at all, with the
// file's permissions. A link stays, and the file that it leads to is replaced.
// The file must be as it was read.
func replaceFile(path string, was, data []byte) (err error) {
	fail := func(err error) error {
		return fmt.Errorf("can't write %s: %w; nothing was changed", path, reason(err))
	}
	target, err := filepath.EvalSymlinks(path)
	if err != nil {
		return fail(err)
	}
	// A file that may not be written is not replaced either, even where its
	// folder allows it.
	f, err := os.OpenFile(target, os.O_WRONLY, 0)
	if err != nil {
		return fail(err)
	}
	info, err := f.Stat()
	if err := errors.Join(err, f.Close()); err != nil {
		return fail(err)
	}
	stage, err := os.CreateTemp(filepath.Dir(target), ".topplate-")
	if err != nil {
		return fail(err)
	}
	defer os.Remove(stage.Name()) // gone already if all went well
	_, err = stage.Write(data)
	err = errors.Join(err, stage.Chmod(info.Mode().Perm()), stage.Sync(), stage.Close())
	if err != nil {
		return fail(err)
	}
	if now, err := os.ReadFile(target); err != nil || !bytes.Equal(now, was) {
		return fail(errors.New("somebody else changed it"))
	}
	if err := os.Rename(stage.Name(), target); err != nil {
		return fail(err)
	}
	return nil
}
