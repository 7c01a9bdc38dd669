package session

import "underpaint/engine/estimate"

// AnotherBody is what doing the job on another body would take, as pages show it.
type AnotherBody struct {
	estimate.AnotherBody
	Shown Ends // of everything to do with another body
}

func anotherBody(x estimate.AnotherBody) AnotherBody {
	return AnotherBody{x, RoundEnds(x.Other.Low, x.Other.Half, 0, x.Other.High)}
}
