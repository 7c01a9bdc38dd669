//go:build js && wasm

// Package bridge lets a page ask an engine. Start with [Serve]. All sense is in
// package message; nothing here knows what the texts mean.
package bridge

import "github.com/hack-pad/safejs"

// Serve exports one function, underpaintAsk(request text) → reply text, and waits
// for ever.
func Serve(answer func(request []byte) []byte) {
	ask, err := safejs.FuncOf(func(_ safejs.Value, args []safejs.Value) any {
		text := ""
		if len(args) == 1 {
			// A request that is not a text reaches the engine as an empty one,
			// which it refuses in words.
			if s, err := args[0].String(); err == nil {
				text = s
			}
		}
		return string(answer([]byte(text)))
	})
	if err != nil {
		panic("engine: internal error: " + err.Error())
	}
	if err := safejs.Global().Set("underpaintAsk", ask); err != nil {
		panic("engine: internal error: " + err.Error())
	}
	select {}
}
