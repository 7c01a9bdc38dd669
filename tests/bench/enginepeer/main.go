// Command enginepeer is the engine as a peer: it answers the requests of package bench
// for a car file and a rates file. Built for js and wasm, it is the engine as it runs
// in a browser.
package main

import (
	"fmt"
	"os"

	"underpaint/tests/bench"
)

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run() error {
	if len(os.Args) != 3 {
		return fmt.Errorf("expected a car file and a rates file")
	}
	c, err := bench.Load(os.Args[1], os.Args[2])
	if err != nil {
		return err
	}
	return c.Answer(os.Stdin, os.Stdout)
}
