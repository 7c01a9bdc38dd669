//go:build js && wasm

// Command wasm is the engine in a browser's worker, with everything that the shop's
// pages ask.
package main

import (
	"underpaint/engine/message"
	"underpaint/wasm/bridge"
)

func main() {
	engine := message.Engine{Reports: bridge.Console{}}
	bridge.Serve(engine.Ask)
}
