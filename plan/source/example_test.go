package source_test

import (
	"fmt"
	"os"

	"topplate/plan/measure"
	"topplate/plan/source"
)

// All that is wrong in a file is said at once.
func Example() {
	src := []byte(`[[wall]]
run = "E 12ft 6in"
height = 8

[[wall]]
run = "N 8ft"
heigth = "8ft"
`)
	root, problems := source.Parse("hall.toml", src)
	if root != nil {
		heights := measure.Range{Min: 6 * measure.Foot, Max: 20 * measure.Foot}
		walls, _ := root.Tables("wall", source.Required)
		for _, wall := range walls {
			wall.Text("run", source.Required)
			wall.Length("height", source.Required, heights)
		}
		root.Done()
	}
	err := problems.Print(os.Stdout, func(_ string, line int) (string, bool) { return source.Line(src, line) })
	fmt.Println(err)
	// Output:
	// hall.toml:3:10: error: wall[0].height: found the number 8; a length needs a unit, such as "12ft 6in" or "8-1/2in"
	//     3 | height = 8
	//       |          ^
	// hall.toml:5:3: error: wall[1].height: missing; want a length from 6ft to 20ft, such as "8ft"
	//     5 | [[wall]]
	//       |   ^
	// hall.toml:7:1: error: wall[1].heigth: unknown key "heigth"; did you mean "height"?
	//     7 | heigth = "8ft"
	//       | ^
	// <nil>
}
