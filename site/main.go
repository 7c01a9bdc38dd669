package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"time"

	"underpaint/site/folder"
)

const usage = `usage:
  site build -out DIR -rates FILE [-engine FILE]
  site weigh [-dir DIR]
  site serve [-addr 127.0.0.1:8080] [-dir DIR | -rates FILE [-engine FILE]]

build   puts the pages, the engine and the rates into DIR
weigh   says where the bytes of the customer's engine go, by section and package;
        with -dir only what a built folder comes to, an error when over budget
serve   serves DIR; without -dir it builds into a folder of its own first
-engine uses an engine that is already built instead of building ./wasm
`

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "site:", err)
		os.Exit(1)
	}
}

// run carries out one command line. What a person wants to read goes to out.
func run(args []string, out io.Writer) error {
	if len(args) == 0 {
		return errors.New("say build, weigh or serve\n" + usage)
	}
	flags := flag.NewFlagSet(args[0], flag.ContinueOnError)
	flags.Usage = func() { fmt.Fprint(flags.Output(), usage) }
	dir := flags.String("dir", "", "folder that is already built")
	outDir := flags.String("out", "", "folder to build into")
	rates := flags.String("rates", "", "the shop's rates file")
	engine := flags.String("engine", "", "engine that is already built")
	addr := flags.String("addr", "127.0.0.1:8080", "address to listen on")
	if err := flags.Parse(args[1:]); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q: nothing is expected after the flags", flags.Arg(0))
	}
	switch args[0] {
	case "build":
		return runBuild(*outDir, *rates, *engine, out)
	case "weigh":
		if *dir != "" {
			return folder.Measured(*dir, out)
		}
		return folder.WriteWeights(out)
	case "serve":
		return runServe(*addr, *dir, *rates, *engine, out)
	}
	return fmt.Errorf("%q: expected build, weigh or serve\n%s", args[0], usage)
}

func runBuild(outDir, rates, engine string, out io.Writer) error {
	if outDir == "" || rates == "" {
		return errors.New("build needs -out DIR and -rates FILE")
	}
	text, err := os.ReadFile(rates)
	if err != nil {
		return err
	}
	_, err = folder.Make(folder.Order{Out: outDir, RatesName: rates, Rates: text, Engine: engine, Today: time.Now().Format(time.DateOnly)}, out)
	return err
}

func runServe(addr, dir, rates, engine string, out io.Writer) error {
	if dir == "" {
		if rates == "" {
			return errors.New("serve needs -dir DIR, or -rates FILE to build first")
		}
		temporary, err := os.MkdirTemp("", "site")
		if err != nil {
			return err
		}
		defer os.RemoveAll(temporary)
		if err := runBuild(temporary, rates, engine, out); err != nil {
			return err
		}
		dir = temporary
	}
	return serve(addr, dir, out)
}
