package sheet

import (
	"strings"
	"testing"
)

func TestPictureFaults(t *testing.T) {
	good := Picture{JPEG: []byte{1}, Width: 4, Height: 3, TopLeft: Pt(0, 0), TopRight: Pt(4*MM, 0), BottomLeft: Pt(0, 3*MM)}
	for _, c := range []struct {
		change func(p *Picture)
		want   string
	}{
		{func(*Picture) {}, ""},
		{func(p *Picture) { p.JPEG = nil }, "no dots or no size"},
		{func(p *Picture) { p.Width = 0 }, "no dots or no size"},
		{func(p *Picture) { p.Height = -1 }, "no dots or no size"},
		{func(p *Picture) { p.BottomLeft = Pt(8*MM, 0) }, "no dots or no size"},
		{func(p *Picture) { p.TopRight = Pt(MaxCoordinate+1, 0) }, "more than ten metres"},
		{func(p *Picture) { p.TopRight, p.BottomLeft = Pt(MaxCoordinate, 0), Pt(MaxCoordinate, 5) }, "more than ten metres"},
	} {
		p := good
		c.change(&p)
		s := New("s", "S", A4)
		s.Group("g", "", "").Add(p)
		err := s.Check()
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%+v: %v, want %q", p, err, c.want)
		}
	}
}
