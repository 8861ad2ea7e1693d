package route

import (
	"strings"
	"testing"
)

// Where a joist lies along the plate over the closet, each drop says so, and not
// what else would stop it: the starter's middle wall is at 14ft, in the middle of a
// joist if the first is at 8in.
func TestClosetWithNothingLeadingIntoIt(t *testing.T) {
	for _, first := range []string{"8in", "16in"} {
		res := solved(t, starter(t, `first = "16in"`, `first = "`+first+`"`))
		for d := range res.Routes {
			b := res.Routes[d].Blocked
			shut := b != nil && len(b.Blocks) == 1 && b.Blocks[0].Found == "nothing leads into the wall of the closet: a joist lies along the plate of wall middle" &&
				strings.HasPrefix(b.Blocks[0].Change, "another place for the closet, or a surface raceway")
			if shut != (first == "8in") {
				t.Errorf("first joist at %s, drop %d: %+v", first, d, b)
			}
		}
	}
}
