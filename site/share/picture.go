package share

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/png"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// Width and Height are those that the Open Graph pages of large sites ask for, from
// memory: 1.91 to 1.
const (
	Width  = 1200
	Height = 630
)

// Alt says what is on the picture.
const Alt = "Twenty dots on a money axis, each one of twenty imagined cars: two below the range, sixteen in it, two above. An invented sample."

// The colours are those of site/pages/styles/tokens.css in the light.
var (
	paper = color.NRGBA{0xf6, 0xf3, 0xec, 0xff}
	ink   = color.NRGBA{0x1f, 0x21, 0x24, 0xff}
	grey  = color.NRGBA{0x55, 0x59, 0x5d, 0xff}
	steel = color.NRGBA{0x7a, 0x81, 0x87, 0xff}
	oxide = color.NRGBA{0x8a, 0x33, 0x24, 0xff}
)

// dots are invented: column and row of each, the outer two at each end hollow.
var dots = [][2]int{{4, 0}, {5, 0}, {6, 0}, {7, 0}, {7, 1}, {8, 0}, {8, 1}, {8, 2}, {9, 0}, {9, 1}, {9, 2}, {10, 0}, {10, 1}, {11, 0}, {11, 1}, {12, 0}, {13, 0}, {15, 0}, {17, 0}, {20, 0}}

const (
	left, right = 90, 1110
	axis        = 470
	radius      = 20
	step        = 46
)

// Picture is the picture as PNG.
func Picture() ([]byte, error) {
	img := image.NewNRGBA(image.Rect(0, 0, Width, Height))
	fill(img, 0, 0, Width, Height, paper)
	for i, coat := range []color.NRGBA{oxide, grey, steel} {
		fill(img, 0, i*10, Width, 10, coat)
	}
	fill(img, left, axis, right-left, 4, ink)
	for at := left; at <= right; at += (right - left) / 4 {
		fill(img, at-2, axis, 4, 20, ink)
	}
	for i, d := range dots {
		x, y := float32(left+d[0]*step), float32(axis-radius-3-d[1]*step)
		disc(img, x, y, radius, ink)
		if i < 2 || i > 17 {
			disc(img, x, y, radius-6, paper)
		}
	}
	for _, line := range []struct {
		text string
		x, y int
		size float64
		c    color.NRGBA
	}{
		{"What would the body work cost?", left, 130, 58, oxide},
		{"A range, before the paint comes off.", left, 190, 36, ink},
		{"less", left, 530, 28, grey}, {"more", right - 66, 530, 28, grey},
		{"Each dot is one of twenty imagined cars. An invented sample: no price of any car.", left, 590, 26, grey},
	} {
		if err := write(img, line.text, line.x, line.y, line.size, line.c); err != nil {
			return nil, err
		}
	}
	var b bytes.Buffer
	err := (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, paletted(img))
	return b.Bytes(), err
}

func fill(img draw.Image, x, y, w, h int, c color.Color) {
	draw.Draw(img, image.Rect(x, y, x+w, y+h), image.NewUniform(c), image.Point{}, draw.Src)
}

// disc draws a circle of four curves.
func disc(img draw.Image, x, y, r float32, c color.Color) {
	const k = 0.5523 // of a quarter circle as a cubic curve
	v := vector.NewRasterizer(Width, Height)
	v.MoveTo(x+r, y)
	v.CubeTo(x+r, y+k*r, x+k*r, y+r, x, y+r)
	v.CubeTo(x-k*r, y+r, x-r, y+k*r, x-r, y)
	v.CubeTo(x-r, y-k*r, x-k*r, y-r, x, y-r)
	v.CubeTo(x+k*r, y-r, x+r, y-k*r, x+r, y)
	v.ClosePath()
	v.Draw(img, img.Bounds(), image.NewUniform(c), image.Point{})
}

func write(img draw.Image, text string, x, y int, size float64, c color.Color) error {
	f, err := opentype.Parse(goregular.TTF)
	if err != nil {
		return err
	}
	face, err := opentype.NewFace(f, &opentype.FaceOptions{Size: size, DPI: 72})
	if err != nil {
		return err
	}
	(&font.Drawer{Dst: img, Src: image.NewUniform(c), Face: face, Dot: fixed.P(x, y)}).DrawString(text)
	return nil
}

// paletted takes the picture down to the shades between paper and the four inks,
// which a file of a few kilobytes holds.
func paletted(img *image.NRGBA) *image.Paletted {
	const shades = 16
	var p color.Palette
	for _, c := range []color.NRGBA{ink, grey, steel, oxide} {
		for i := range shades {
			mix := func(a, b uint8) uint8 { return uint8((int(a)*i + int(b)*(shades-1-i)) / (shades - 1)) }
			p = append(p, color.NRGBA{mix(c.R, paper.R), mix(c.G, paper.G), mix(c.B, paper.B), 0xff})
		}
	}
	out := image.NewPaletted(img.Bounds(), p)
	draw.Draw(out, out.Bounds(), img, image.Point{}, draw.Src)
	return out
}
