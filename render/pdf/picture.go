package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"hash/crc32"

	"codeberg.org/go-pdf/fpdf"

	"topplate/render/sheet"
)

// pictureSide is the size, in points, that the library is asked to draw a
// picture with; it is round, since the library rounds.
const pictureSide = 1000

// picture draws a picture. The library lays it into a square at the origin, and
// the square is laid where the picture belongs.
func (p *page) picture(m sheet.Picture) {
	across, up := m.TopRight.Sub(m.TopLeft), m.TopLeft.Sub(m.BottomLeft)
	part := func(l sheet.Paper) string { return real(millimetres(l) / pictureSide) }
	p.put("q", part(across.X), part(across.Y), part(up.X), part(up.Y), pair(m.BottomLeft), "cm")
	name := fmt.Sprintf("%dx%d-%08x", m.Width, m.Height, crc32.ChecksumIEEE(m.JPEG))
	o := fpdf.ImageOptions{ImageType: "jpg"}
	p.lib.RegisterImageOptionsReader(name, o, bytes.NewReader(m.JPEG))
	_, height := p.lib.GetPageSize()
	side := pictureSide / pointsPerMM
	p.lib.ImageOptions(name, 0, height-side, side, side, false, o, 0, "")
	p.put("Q")
}

// pictureFaults reports pictures that differ and are of one width: the library
// would write them in any order.
func pictureFaults(sheets []*sheet.Sheet) error {
	byWidth := map[int][]byte{}
	for _, s := range sheets {
		for item := range s.All() {
			m, ok := item.(sheet.Picture)
			if !ok {
				continue
			}
			if other, seen := byWidth[m.Width]; seen && !bytes.Equal(other, m.JPEG) {
				return errors.New("pdf: two pictures are of one width, so that their order is not known")
			}
			byWidth[m.Width] = m.JPEG
		}
	}
	return nil
}
