//go:build js && wasm

package bridge

import (
	"fmt"
	"os"
	"strings"

	"github.com/hack-pad/safejs"
)

// Console writes each text that it receives as one error on the console of the page or
// worker. If the console does not accept a text, it goes to standard error together
// with the console's error; Go's loader shows that.
type Console struct{}

// Write returns an error if the console did not accept the text.
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
