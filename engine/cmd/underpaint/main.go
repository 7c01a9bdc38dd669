// Command underpaint does at the prompt what the pages do: it works out the cost range
// of one car, or of a folder of cars, at a shop's rates.
//
// Start reading at tree.go, which has all commands; words.go is their help.
//
// Exit codes: 0 when it is done; 1 when a file cannot be used (the reason is on standard
// error); 2 when the command line is wrong.
package main

import (
	"errors"
	"io"
	"os"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run carries out one command line and returns the exit code.
func run(args []string, in io.Reader, out, complaints io.Writer) int {
	c := command{in: in, out: out, complaints: complaints}
	root := c.tree()
	root.SetArgs(longFlags(root, args))
	err := root.Execute()
	var code exitCode
	switch {
	case err == nil:
		return 0
	case errors.As(err, &code):
		return int(code)
	}
	return c.misused("", "%v", err)
}
