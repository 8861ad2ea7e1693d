package plan

import (
	"image"
	"os"
	"strings"
	"testing"
)

// TestExamples loads the files that the package comment shows.
func TestExamples(t *testing.T) {
	src, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	read := map[string]string{}
	name := ""
	for line := range strings.Lines(string(src)) {
		switch {
		case strings.HasPrefix(line, "// # The house file"):
			name = "house.toml"
		case strings.HasPrefix(line, "// # A house of several levels"):
			name = "levels.toml"
		case strings.HasPrefix(line, "// # Checks"):
			name = ""
		case strings.HasPrefix(line, "// # Rooms by inside dimensions"):
			name = "inside.toml"
		case strings.HasPrefix(line, "// # The job file"):
			name = "job.toml"
		case strings.HasPrefix(line, "// # An included file"):
			name = "my/defaults.toml"
		case strings.HasPrefix(line, "//\t"), line == "//\n":
			read[name] += strings.TrimPrefix(strings.TrimPrefix(line, "//"), "\t")
		}
	}
	read["scan.png"] = string(pngOf(t, image.NewGray(image.Rect(0, 0, 420, 260))))
	j, list := LoadJob("job.toml", files(read))
	if j == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	checkJob(t, j)
	if len(j.House.Walls) != 5 || len(j.Drops) != 5 {
		t.Errorf("got %d walls and %d drops", len(j.House.Walls), len(j.Drops))
	}
	h, list := LoadHouse("inside.toml", []byte(read["inside.toml"]))
	if h == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	checkHouse(t, h)
	if len(h.Walls) != 12 || len(h.Rooms) != 4 {
		t.Errorf("got %d walls and %d rooms", len(h.Walls), len(h.Rooms))
	}
	h, list = LoadHouse("levels.toml", []byte(read["levels.toml"]))
	if h == nil || print(t, list) != "" {
		t.Fatal(print(t, list))
	}
	checkHouse(t, h)
	if len(h.Levels) != 3 || len(h.Spaces) != 5 || len(h.Roofs) != 2 || len(h.Chases) != 1 {
		t.Errorf("got %d levels, %d spaces, %d roofs and %d chases", len(h.Levels), len(h.Spaces), len(h.Roofs), len(h.Chases))
	}
	if j.Limits["power-parallel"].Value != int64(4*inch) || j.Limits["plate-bore"].Value != 40 || len(j.OwnCables) != 1 {
		t.Errorf("got limits %v, cables %v", j.Limits, j.OwnCables)
	}
}
