package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestExitCodes(t *testing.T) {
	dir := t.TempDir()
	if err := writeStarter(dir); err != nil {
		t.Fatal(err)
	}
	job := filepath.Join(dir, "job.toml")
	src, err := os.ReadFile(job)
	if err != nil {
		t.Fatal(err)
	}
	short, broken := filepath.Join(dir, "short.toml"), filepath.Join(dir, "broken.toml")
	for path, text := range map[string]string{
		short:  strings.Replace(string(src), `"15ft"`, `"2ft"`, 1),
		broken: strings.Replace(string(src), `"15ft"`, `"15 feets"`, 1),
	} {
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct {
		args []string
		want int
	}{
		{[]string{"check", job}, exitOK},
		{[]string{"route", job}, exitOK},
		{[]string{"check", short}, exitStops},
		{[]string{"route", short, "--json"}, exitStops},
		{[]string{"draw", short, "-o", filepath.Join(dir, "out")}, exitStops},
		{[]string{"check", broken}, exitInput},
		{[]string{"graph", broken}, exitInput},
		{[]string{"check"}, exitInput},
		{[]string{"climb"}, exitInput},
		{[]string{"--help"}, exitOK},
	} {
		var out, errs bytes.Buffer
		if got := run(c.args, &out, &errs); got != c.want {
			t.Errorf("topplate %v exits with %d, want %d\n%s", c.args, got, c.want, errs.String())
		}
	}
}
