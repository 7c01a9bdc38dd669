//go:build bench

package main

import (
	"fmt"
	"runtime"
	"slices"
	"strings"
)

// ratios are those in the table, each the first over the second: slower over faster
// would hide which one is slower.
var ratios = []struct {
	name        string
	first, over int
}{
	{"engine native ÷ C", native, inC},
	{"engine native ÷ C for this processor", native, inCHere},
	{"engine wasm ÷ C", wasm, inC},
	{"engine wasm ÷ C for this processor", wasm, inCHere},
	{"engine wasm ÷ JavaScript", wasm, js},
	{"engine wasm ÷ engine native", wasm, native},
	{"engine native ÷ JavaScript", native, js},
}

// tableOf writes medians over the rounds, with the middle half of the rounds. Each
// ratio is taken within a round, between measurements close in time.
func tableOf(items int, runners []*runner, rounds [][]float64, o options) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Drawing and pricing one simulated car of which nothing was seen (%d items), on one core of %s/%s. Medians of %d rounds of %d cars, each program in turn; in brackets the middle half of the rounds. All five gave the same money to the minor unit, the same hours to the thousandth and the same number of parts replaced before or with a cause of their own on each of %d cars compared, and the same totals on the others. `make bench` measures it again.\n\n",
		items, runtime.GOOS, runtime.GOARCH, o.rounds, o.cars, o.compare)
	b.WriteString("| | | microseconds a car |\n|---|---|---|\n")
	for k, r := range runners {
		fmt.Fprintf(&b, "| %s | %s | %s |\n", r.name, r.what, spreadOf(rounds, 1, func(took []float64) float64 { return took[k] }))
	}
	b.WriteString("\n| ratio of times | |\n|---|---|\n")
	for _, r := range ratios {
		fmt.Fprintf(&b, "| %s | %s |\n", r.name, spreadOf(rounds, 2, func(took []float64) float64 { return took[r.first] / took[r.over] }))
	}
	return b.String()
}

// spreadOf is the median of a figure over the rounds and its quartiles.
func spreadOf(rounds [][]float64, digits int, figure func(took []float64) float64) string {
	var all []float64
	for _, took := range rounds {
		all = append(all, figure(took))
	}
	slices.Sort(all)
	n := len(all)
	return fmt.Sprintf("%.*f (%.*f to %.*f)", digits, all[n/2], digits, all[n/4], digits, all[n-1-n/4])
}
