//go:build js && wasm

// Command wasm is the engine inside a browser's worker. It exports one function,
// underpaintAsk(request text) → reply text, and waits for ever. All sense is in
// package message; nothing here knows what the texts mean.
package main

import (
	"github.com/hack-pad/safejs"

	"underpaint/engine/message"
)

func main() {
	engine := &message.Engine{}
	ask, err := safejs.FuncOf(func(_ safejs.Value, args []safejs.Value) any {
		text := ""
		if len(args) == 1 {
			// A request that is not a text reaches the engine as an empty one,
			// which it refuses in words.
			if s, err := args[0].String(); err == nil {
				text = s
			}
		}
		return string(engine.Ask([]byte(text)))
	})
	if err != nil {
		panic("engine: internal error: " + err.Error())
	}
	if err := safejs.Global().Set("underpaintAsk", ask); err != nil {
		panic("engine: internal error: " + err.Error())
	}
	select {}
}
