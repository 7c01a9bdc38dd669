//go:build js && wasm

// Command customer is the engine of the customer's page. It is built from the same
// packages as command wasm, but without what only the shop's pages ask, so that there
// is less to load.
package main

import (
	"underpaint/engine/message"
	"underpaint/wasm/bridge"
)

func main() {
	engine := message.Customer{Reports: bridge.Console{}}
	bridge.Serve(engine.Ask)
}
