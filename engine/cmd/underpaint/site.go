package main

import (
	"context"
	"io"
	"os"
	"os/signal"
	"time"

	"github.com/spf13/cobra"

	"underpaint/engine/rates"
	"underpaint/site/build"
	"underpaint/site/serve"
)

// siteCommand makes the folder of pages for a web host, as the command in ./site does with
// "build".
func (c command) siteCommand() *cobra.Command {
	cmd := c.named("site")
	rates := ratesFlag(cmd, "the shop's rates")
	out := cmd.Flags().String("out", "", "the folder `DIR` to write into")
	engine := cmd.Flags().String("engine", "", "`FILE` with an engine built earlier")
	address := cmd.Flags().String("address", "", "the web address `URL` that the folder will have")
	must(cmd.MarkFlagDirname("out"))
	completeFiles(cmd, "engine", "wasm")
	cmd.ValidArgsFunction = cobra.NoFileCompletions
	cmd.RunE = does(func(args []string) int {
		if len(args) > 0 || *rates == "" || *out == "" {
			return c.misused("site", "site needs --rates RATES.json and --out DIR")
		}
		text, err := c.read(*rates)
		if err != nil {
			return c.fail(1, "%v", err)
		}
		return c.site(build.Order{Out: *out, RatesName: *rates, Rates: text, Engine: *engine, Address: *address}, c.out)
	})
	return cmd
}

func (c command) site(order build.Order, out io.Writer) int {
	order.Today = time.Now().Format(time.DateOnly)
	if _, err := build.Make(order, out); err != nil {
		return c.fail(1, "%v", err)
	}
	return 0
}

// serveCommand shows the pages on this computer.
func (c command) serveCommand() *cobra.Command {
	cmd := c.named("serve")
	ratesName := ratesFlag(cmd, "the shop's rates")
	listen := cmd.Flags().String("listen", "127.0.0.1:8080", "the network `ADDRESS` to serve at")
	cmd.ValidArgsFunction = cobra.NoFileCompletions
	cmd.RunE = does(func(args []string) int {
		if len(args) > 0 {
			return c.misused("serve", "serve needs no file beside its flags, found %q", args[0])
		}
		order := build.Order{RatesName: "the invented shop's rates", Rates: rates.Sample()}
		if *ratesName != "" {
			text, err := c.read(*ratesName)
			if err != nil {
				return c.fail(1, "%v", err)
			}
			order.RatesName, order.Rates = *ratesName, text
		}
		ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
		defer stop()
		return c.serve(ctx, order, *listen)
	})
	return cmd
}

// serve makes the folder in a temporary place and serves it until ctx is done.
func (c command) serve(ctx context.Context, order build.Order, address string) int {
	dir, err := os.MkdirTemp("", programName)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	defer os.RemoveAll(dir)
	order.Out = dir
	if code := c.site(order, io.Discard); code != 0 {
		return code
	}
	if err := serve.Folder(ctx, address, dir, c.out); err != nil {
		return c.fail(1, "%v", err)
	}
	return 0
}
