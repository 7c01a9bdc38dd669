//go:build js && wasm

// Package bridge lets a page ask an engine. Start with [Serve]; [Console] takes
// reports. Package message knows what the texts mean; nothing here does. Every call
// into the page or worker goes through safejs, so that a call that fails is an error
// and does not end the program.
package bridge

import (
	"errors"
	"fmt"
	"os"

	"github.com/hack-pad/safejs"
)

// Name is the function that a page calls: underpaintAsk(request text) → reply text.
const Name = "underpaintAsk"

// Serve exports answer under [Name] and waits forever. If it cannot export it, it says
// so on the console and ends the program, which the page notices.
func Serve(answer func(request []byte) []byte) {
	if err := export(answer); err != nil {
		fmt.Fprintf(os.Stderr, "the engine could not offer %s: %v\n", Name, err)
		os.Exit(1)
	}
	select {}
}

// export sets the global function by Reflect.set, which returns a failure as an error;
// a plain assignment that throws would end the program without a message.
func export(answer func(request []byte) []byte) error {
	function, err := safejs.FuncOf(func(_ safejs.Value, args []safejs.Value) any {
		return string(answer(requestIn(args)))
	})
	if err != nil {
		return err
	}
	reflect, err := safejs.Global().Get("Reflect")
	if err != nil {
		return err
	}
	done, err := reflect.Call("set", safejs.Global(), Name, function)
	if err != nil {
		return err
	}
	if is, err := done.Truthy(); err != nil || !is {
		return errors.Join(errors.New("the page does not let it be set"), err)
	}
	return nil
}

// requestIn returns the text of a request. A request that is not a text, or cannot be
// read, reaches the engine as an empty one, and the engine refuses it in words.
func requestIn(args []safejs.Value) []byte {
	if len(args) != 1 || args[0].Type() != safejs.TypeString {
		return nil
	}
	text, err := args[0].String()
	if err != nil {
		fmt.Fprintf(Console{}, "a request could not be read: %v\n", err)
		return nil
	}
	return []byte(text)
}
