package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"time"

	"underpaint/site/build"
	"underpaint/site/serve"
)

const usage = `usage:
  site build -out DIR -rates FILE [-engine FILE] [-address URL]
  site engines -out DIR
  site weigh [-dir DIR]
  site serve [-addr 127.0.0.1:8080] [-dir DIR | -rates FILE [-engine FILE]]

build   puts the pages, the engine and the rates into DIR
engines puts the engines into DIR as a released program has them in it
weigh   says where the bytes of the customer's engine go, by section and package;
        with -dir only what a built folder comes to, an error when over budget
serve   serves DIR; without -dir it builds into a folder of its own first
-address is where the folder will stand on the web: with it other sites show a
        picture beside a link to the customer's page
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
		return errors.New("say build, engines, weigh or serve\n" + strings.TrimSpace(usage))
	}
	flags := flag.NewFlagSet(args[0], flag.ContinueOnError)
	flags.Usage = func() { fmt.Fprint(flags.Output(), usage) }
	dir := flags.String("dir", "", "folder that is already built")
	outDir := flags.String("out", "", "folder to build into")
	rates := flags.String("rates", "", "the shop's rates file")
	engine := flags.String("engine", "", "engine that is already built")
	address := flags.String("address", "", "where the folder will stand on the web")
	addr := flags.String("addr", "127.0.0.1:8080", "address to listen on")
	if err := flags.Parse(args[1:]); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q: nothing is expected after the flags", flags.Arg(0))
	}
	switch args[0] {
	case "build":
		return runBuild(build.Order{Out: *outDir, RatesName: *rates, Engine: *engine, Address: *address}, out)
	case "engines":
		if *outDir == "" {
			return errors.New("engines needs -out DIR")
		}
		return build.WriteReady(*outDir)
	case "weigh":
		if *dir != "" {
			return build.Measured(*dir, out)
		}
		return build.WriteWeights(out)
	case "serve":
		return runServe(*addr, *dir, *rates, *engine, out)
	}
	return fmt.Errorf("%q: expected build, engines, weigh or serve\n%s", args[0], usage)
}

func runBuild(o build.Order, out io.Writer) error {
	if o.Out == "" || o.RatesName == "" {
		return errors.New("build needs -out DIR and -rates FILE")
	}
	var err error
	if o.Rates, err = os.ReadFile(o.RatesName); err != nil {
		return err
	}
	o.Today = time.Now().Format(time.DateOnly)
	_, err = build.Make(o, out)
	return err
}

func runServe(addr, dir, rates, engine string, out io.Writer) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if dir == "" {
		if rates == "" {
			return errors.New("serve needs -dir DIR, or -rates FILE to build first")
		}
		temporary, err := os.MkdirTemp("", "site")
		if err != nil {
			return err
		}
		defer os.RemoveAll(temporary)
		if err := runBuild(build.Order{Out: temporary, RatesName: rates, Engine: engine}, out); err != nil {
			return err
		}
		dir = temporary
	}
	return serve.Folder(ctx, addr, dir, out)
}
