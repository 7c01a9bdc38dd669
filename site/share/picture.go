package share

import _ "embed"

// Width and Height of the picture in pixels are those that the Open Graph pages of
// large sites ask for, from memory: 1.91 to 1.
const (
	Width  = 1200
	Height = 630
)

// Alt says what is on the picture.
const Alt = "Twenty dots on a money axis, each one of twenty simulated cars: two below the range, sixteen in it, two above. An invented sample."

// Picture is the picture as PNG. Callers must not change it.
//
//go:embed share.png
var Picture []byte
