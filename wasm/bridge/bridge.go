//go:build js && wasm

// Package bridge lets a page ask an engine. Start with [Serve]. All sense is in
// package message; nothing here knows what the texts mean.
package bridge

import "syscall/js"

// Serve exports one function, underpaintAsk(request text) → reply text, and waits
// for ever.
func Serve(answer func(request []byte) []byte) {
	js.Global().Set("underpaintAsk", js.FuncOf(func(_ js.Value, args []js.Value) any {
		text := ""
		// A request that is not a text reaches the engine as an empty one, which it
		// refuses in words.
		if len(args) == 1 && args[0].Type() == js.TypeString {
			text = args[0].String()
		}
		return string(answer([]byte(text)))
	}))
	select {}
}
