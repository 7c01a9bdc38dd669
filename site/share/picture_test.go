package share

import (
	"bytes"
	"encoding/xml"
	"image/png"
	"os"
	"strings"
	"testing"
)

// drawing is what the test reads of share.svg.
type drawing struct {
	Dots []struct {
		Class string `xml:"class,attr"`
		X     int    `xml:"cx,attr"`
		Y     int    `xml:"cy,attr"`
	} `xml:"circle"`
	Texts []string `xml:"text"`
}

// TestPictureIsOfTheDrawing: the committed picture has each of the drawing's twenty dots
// in its place, full or hollow, and is small enough to travel with a link.
func TestPictureIsOfTheDrawing(t *testing.T) {
	text, err := os.ReadFile("share.svg")
	if err != nil {
		t.Fatal(err)
	}
	var d drawing
	if err := xml.Unmarshal(text, &d); err != nil {
		t.Fatal(err)
	}
	if len(d.Dots) != 20 || !strings.Contains(strings.Join(d.Texts, " "), "invented") {
		t.Errorf("%d dots, and these words: %q", len(d.Dots), d.Texts)
	}
	if len(Picture) > 60_000 {
		t.Errorf("%d bytes, expected at most 60,000", len(Picture))
	}
	img, err := png.Decode(bytes.NewReader(Picture))
	if err != nil || img.Bounds().Dx() != Width || img.Bounds().Dy() != Height {
		t.Fatalf("bounds %v (%v)", img.Bounds(), err)
	}
	hollow := 0
	for _, dot := range d.Dots {
		red, _, _, _ := img.At(dot.X, dot.Y).RGBA()
		if paper := red > 0x8000; paper != (dot.Class == "hollow") {
			t.Errorf("the dot at %d, %d is %s, and its middle has red %x", dot.X, dot.Y, dot.Class, red)
		} else if paper {
			hollow++
		}
	}
	if hollow != 4 {
		t.Errorf("%d hollow dots, expected two below the range and two above", hollow)
	}
}
