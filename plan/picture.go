package plan

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	_ "image/jpeg" // pictures that are read
	_ "image/png"
)

// Limits of a picture (common practice, no source). The longer side of what is
// kept has about seven dots to the millimetre on the largest sheet.
const (
	mostDots     = 25_000_000
	mostKeptSide = 1600
)

// A picture is a photo or a scan in shades of grey, with one dot for step by step
// dots of the file.
type picture struct {
	grey          *image.Gray
	step          int
	width, height int // of the file
}

// readPicture reads a PNG or a JPEG. It takes time in proportion to its dots.
func readPicture(src []byte) (picture, error) {
	c, kind, err := image.DecodeConfig(bytes.NewReader(src))
	switch {
	case errors.Is(err, image.ErrFormat):
		return picture{}, errors.New("found a file that is no picture; want a PNG or a JPEG")
	case err != nil:
		return picture{}, fmt.Errorf("found a broken picture (%.80s); want a PNG or a JPEG", err.Error())
	case c.Width < 2 || c.Height < 2 || c.Width > mostDotsAlong || c.Height > mostDotsAlong || c.Width*c.Height > mostDots:
		return picture{}, fmt.Errorf("found a picture of %d by %d dots; want at most %d million in all: save it smaller", c.Width, c.Height, mostDots/1_000_000)
	}
	if turn := exifTurn(src); kind == "jpeg" && turn > 1 {
		return picture{}, fmt.Errorf("found a photo that is turned by a mark in the file (Exif orientation %d), so that programs differ in where its top is; turn it upright and save it without the mark", turn)
	}
	m, _, err := image.Decode(bytes.NewReader(src))
	if err != nil {
		return picture{}, fmt.Errorf("found a broken picture (%.80s); want a PNG or a JPEG", err.Error())
	}
	p := picture{step: (max(c.Width, c.Height) + mostKeptSide - 1) / mostKeptSide, width: c.Width, height: c.Height}
	p.grey = reduced(m, p.step)
	return p, nil
}

// reduced is a picture in grey on white paper, with the mean of step by step dots
// for each of its own.
func reduced(m image.Image, step int) *image.Gray {
	b := m.Bounds()
	out := image.NewGray(image.Rect(0, 0, (b.Dx()+step-1)/step, (b.Dy()+step-1)/step))
	dot := greyAt(m)
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			sum, n := 0, 0
			for v := b.Min.Y + y*step; v < min(b.Min.Y+(y+1)*step, b.Max.Y); v++ {
				for u := b.Min.X + x*step; u < min(b.Min.X+(x+1)*step, b.Max.X); u++ {
					sum += int(dot(u, v))
					n++
				}
			}
			out.Pix[y*out.Stride+x] = uint8((sum + n/2) / n)
		}
	}
	return out
}

// greyAt gives the grey of the dots of a picture, which lies on white paper.
func greyAt(m image.Image) func(x, y int) uint8 {
	switch m := m.(type) {
	case *image.YCbCr:
		return func(x, y int) uint8 { return m.Y[m.YOffset(x, y)] }
	case *image.Gray:
		return func(x, y int) uint8 { return m.Pix[m.PixOffset(x, y)] }
	}
	return func(x, y int) uint8 {
		r, g, b, a := m.At(x, y).RGBA()
		paper := 0xffff - a
		return color.GrayModel.Convert(color.RGBA64{uint16(r + paper), uint16(g + paper), uint16(b + paper), 0xffff}).(color.Gray).Y
	}
}

// exifTurn is the orientation that a JPEG says it has, 1 to 8, or 0: tag 274 of
// the first directory of its Exif segment (TIFF 6.0, and Exif 2.3, from memory).
func exifTurn(src []byte) int {
	for at := 2; at+4 <= len(src) && src[at] == 0xff; {
		size := int(src[at+2])<<8 | int(src[at+3])
		if size < 2 || at+2+size > len(src) || src[at+1] == 0xda {
			return 0
		}
		if body := src[at+4 : at+2+size]; src[at+1] == 0xe1 && bytes.HasPrefix(body, []byte("Exif\x00\x00")) {
			return tiffTurn(body[6:])
		}
		at += 2 + size
	}
	return 0
}

// tiffTurn is the orientation in the first directory of a TIFF.
func tiffTurn(b []byte) int {
	if len(b) < 8 {
		return 0
	}
	little := b[0] == 'I'
	number := func(at, n int) int {
		v := 0
		for i := range n {
			k := at + i
			if little {
				k = at + n - 1 - i
			}
			v = v<<8 | int(b[k])
		}
		return v
	}
	at := number(4, 4)
	if at < 8 || at > len(b)-2 {
		return 0
	}
	for i := range number(at, 2) {
		entry := at + 2 + 12*i
		if entry+12 > len(b) {
			return 0
		}
		if number(entry, 2) == 274 {
			return number(entry+8, 2)
		}
	}
	return 0
}
