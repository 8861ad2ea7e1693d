package plan

import (
	"fmt"
	"strings"
	"testing"
)

// comb is a house of two storeys, one over the other, whose outlines have 4n
// corners each, with a floor between them that is cut into strips.
func comb(n int) string {
	var run, b strings.Builder
	fmt.Fprintf(&run, "E %dft, N 20ft", 4*n-2)
	for range n - 1 {
		run.WriteString(", W 2ft, S 10ft, W 2ft, N 10ft")
	}
	run.WriteString(", W 2ft, S 20ft")
	b.WriteString("[house]\nname = \"Comb\"\nunits = \"imperial\"\n[[level]]\nid = \"low\"\nceiling = \"8ft\"\n[[level]]\nid = \"high\"\nfloor = \"8ft 10-5/8in\"\nceiling = \"8ft\"\n")
	for _, level := range []string{"low", "high"} {
		fmt.Fprintf(&b, "[[wall]]\nid = \"o-%s\"\nlevel = %q\nstart = [\"0ft\", \"0ft\"]\nrun = %q\ncloses = true\nface = \"right\"\nexterior = true\n", level, level, run.String())
		fmt.Fprintf(&b, "[[room]]\nid = \"r-%s\"\nname = \"Room\"\nlevel = %q\nat = [\"2ft\", \"2ft\"]\n", level, level)
	}
	const framing = "joists_run = \"N\"\njoist = \"sawn\"\nspacing = \"16in\"\nfirst = \"0in\"\n"
	for i := range 20 {
		fmt.Fprintf(&b, "[[floor]]\nid = \"f%d\"\nunder = \"high\"\nover = \"low\"\nsize = \"2x10\"\narea = [{ from = [\"0ft\", \"%dft\"], to = [\"%dft\", \"%dft\"] }]\n%s", i, i, 4*n, i+1, framing)
	}
	b.WriteString("[attic]\nsize = \"2x10\"\n" + framing + "[roof]\nkind = \"flat\"\noverhang = \"12in\"\n")
	for i := range 500 {
		fmt.Fprintf(&b, "[[obstacle]]\nid = \"d%d\"\nkind = \"duct\"\nspace = \"f3\"\nfrom = [\"%dft\", \"3ft 1in\"]\nto = [\"%dft 6in\", \"3ft 8in\"]\ntop = \"4in\"\n", i, i%(4*n-4)+1, i%(4*n-4)+1)
	}
	return b.String()
}

// Outlines of hundreds of corners over one another load in a second or two:
// what takes longer grows too fast with the corners.
func TestLargestHouseOfLevels(t *testing.T) {
	h, list := LoadHouse("house.toml", []byte(comb(120)))
	if h == nil {
		t.Fatal(print(t, list))
	}
	if len(h.Walls) != 960 || len(h.Spaces) != 21 || len(h.Obstacles) != 500 {
		t.Errorf("got %d walls, %d spaces and %d obstacles", len(h.Walls), len(h.Spaces), len(h.Obstacles))
	}
}
