// Command underpaint does at the prompt what the pages do: it works out the cost range
// of one car, or of a folder of cars, at a shop's rates.
//
// Exit codes: 0 when it is done; 1 when a file cannot be used (the reason is on standard
// error); 2 when the command line is wrong.
package main

import (
	"fmt"
	"io"
	"os"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

// run carries out one command line and returns the exit code.
func run(args []string, in io.Reader, out, complaints io.Writer) int {
	if len(args) == 0 {
		fmt.Fprint(complaints, usage)
		return 2
	}
	c := command{in: in, out: out, complaints: complaints}
	switch args[0] {
	case "range":
		return c.ranges(args[1:])
	case "stages", "worth", "ways", "why", "plan", "decide":
		return c.thisCar(args[0], args[1:])
	case "score":
		return c.score(args[1:])
	case "check":
		return c.check(args[1:])
	case "sample":
		return c.sample(args[1:])
	case "site":
		return c.site(args[1:])
	case "help", "-h", "-help", "--help":
		fmt.Fprint(out, usage)
		return 0
	}
	fmt.Fprintf(complaints, "underpaint: found the command %q; use one of these\n%s", args[0], usage)
	return 2
}
