// Package bench says how fast the engine imagines cars, as ratios to programs
// written by hand for nothing else: the peers.
//
// Start with [Load], a car and a shop's rates made ready, and [Case.Flat], which
// writes down everything that drawing and pricing one imagined car reads as one
// flat file of numbers. The peers in the folder peers (JavaScript for V8, C)
// read that file and nothing else. They draw the same stream of uniforms, do the
// same work, and must come to the same money in whole minor units, the same hours
// in thousandths and the same number of items that were replaced before or have a
// cause of their own; a test holds the one in JavaScript to it, and the race holds
// both to it before it times them.
//
// What the flat file carries is unexported in the engine. The files in the folder
// _tables read it from within: -overlay=tests/bench/overlay.json lays each into the
// package that it names, for the one command that asks for it, so that the engine as it
// ships knows nothing of all this. What needs them carries the build tag bench:
//
//	go test -tags bench -overlay tests/bench/overlay.json ./tests/bench
//
// enginepeer is the engine itself behind the same few words on standard input (see
// ask.go), built natively and as wasm; race runs all of them in turn and writes the
// table of DEVELOPERS.md.
//
// The flat file carries a car of which nothing was seen. What a look or a survey
// adds to drawing is not covered, and neither are decisions.
package bench
