package main

import (
	"flag"
	"time"

	"underpaint/site/build"
)

// site makes the folder of pages for a web host, as the command in ./site does with
// "build".
func (c command) site(args []string) int {
	flags := flag.NewFlagSet("site", flag.ContinueOnError)
	rates := flags.String("rates", "", "the shop's rates file")
	out := flags.String("out", "", "the folder to write into")
	engine := flags.String("engine", "", "an engine built earlier")
	address := flags.String("address", "", "the web address that the folder will have")
	operands, ok := c.parse(args, flags)
	if !ok {
		return 2
	}
	if len(operands) > 0 || *rates == "" || *out == "" {
		return c.fail(2, "site needs --rates RATES.json and --out DIR\n%s", usage)
	}
	text, err := c.read(*rates)
	if err != nil {
		return c.fail(1, "%v", err)
	}
	order := build.Order{Out: *out, RatesName: *rates, Rates: text, Engine: *engine, Address: *address, Today: time.Now().Format(time.DateOnly)}
	if _, err := build.Make(order, c.out); err != nil {
		return c.fail(1, "%v", err)
	}
	return 0
}
