package share

import (
	"bytes"
	"image/color"
	"image/png"
	"testing"
)

func TestPicture(t *testing.T) {
	a, err := Picture()
	if err != nil {
		t.Fatal(err)
	}
	b, err := Picture()
	if err != nil || !bytes.Equal(a, b) {
		t.Errorf("two pictures differ (%v)", err)
	}
	if len(a) > 60_000 {
		t.Errorf("%d bytes, expected at most 60,000", len(a))
	}
	img, err := png.Decode(bytes.NewReader(a))
	if err != nil || img.Bounds().Dx() != 1200 || img.Bounds().Dy() != 630 {
		t.Fatalf("bounds %v (%v)", img.Bounds(), err)
	}
	if len(dots) != 20 {
		t.Errorf("%d dots", len(dots))
	}
	// A full dot has ink in its middle, a hollow one paper.
	for i, d := range dots {
		r, _, _, _ := img.At(left+d[0]*step, axis-radius-3-d[1]*step).RGBA()
		want, _, _, _ := color.Color(ink).RGBA()
		if hollow := i < 2 || i > 17; hollow == (r == want) {
			t.Errorf("dot %d: red is %x, hollow %v", i+1, r, hollow)
		}
	}
}
