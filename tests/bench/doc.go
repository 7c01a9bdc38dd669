// Package bench measures how fast the engine simulates cars, as ratios to programs
// written by hand for this work alone: the peers.
//
// Start with [Load], which prepares a car and a shop's rates, and [Case.Flat], which
// writes everything that drawing and pricing one simulated car reads into one flat file
// of numbers. The peers in the folder peers (JavaScript for V8, C) read that file and
// nothing else. They draw the same stream of uniforms, do the same work, and must
// arrive at the same money in whole minor units, the same hours in thousandths and the
// same number of items that were replaced before or have a cause of their own. A test
// checks the JavaScript peer against the engine, and the race checks both before it
// times them.
//
// What the flat file holds is unexported in the engine. The files in the folder _tables
// read it from inside: -overlay=tests/bench/overlay.json adds each to its package, only
// for a command with that flag, so that the engine as shipped contains none of this.
// Code that needs them has the build tag bench:
//
//	go test -tags bench -overlay tests/bench/overlay.json ./tests/bench
//
// Command enginepeer is the engine itself as a peer (see ask.go), built natively and as
// wasm. Command race runs all of them in turn and writes the table in DEVELOPERS.md.
//
// The flat file is about a car of which nothing was seen. The benchmark does not cover
// what a check or a survey adds to drawing, or decisions.
package bench
