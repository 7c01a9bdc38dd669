//go:build js && wasm

package bridge

import (
	"fmt"
	"os"
	"strings"

	"github.com/hack-pad/safejs"
)

// Console writes each text that it is given as one error on the console of the page or
// worker. A text that the console does not take goes to standard error, which the
// loader of the Go release shows in its own way, with what the console said.
type Console struct{}

// Write gives an error when the console did not take the text.
func (Console) Write(text []byte) (int, error) {
	console, err := safejs.Global().Get("console")
	if err == nil {
		_, err = console.Call("error", strings.TrimRight(string(text), "\n"))
	}
	if err != nil {
		fmt.Fprintf(os.Stderr, "%s(the console did not take this: %v)\n", text, err)
		return 0, err
	}
	return len(text), nil
}
