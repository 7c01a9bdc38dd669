//go:build bench

// Command race checks the peers against the engine and then times all of them in turn,
// in one run. It prints medians and ratios and, with -readme, writes them between the
// two marks of that file. Start with run.
//
// It needs Node and gcc; a missing one is an error.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"underpaint/tests/bench"
)

// options are the flags.
type options struct {
	car, rates, readme    string
	cars, rounds, compare int
}

func main() {
	var o options
	flag.StringVar(&o.car, "car", "tests/bench/car.json", "car file")
	flag.StringVar(&o.rates, "rates", "engine/rates/data/sample.json", "rates file")
	flag.StringVar(&o.readme, "readme", "", "file to write the table into")
	flag.IntVar(&o.cars, "cars", 20000, "simulated cars in each timing")
	flag.IntVar(&o.rounds, "rounds", 15, "rounds in which each is timed once")
	flag.IntVar(&o.compare, "compare", 5000, "simulated cars compared one by one")
	flag.Parse()
	if err := run(o); err != nil {
		fmt.Fprintln(os.Stderr, "race:", err)
		os.Exit(1)
	}
}

func run(o options) error {
	dir, err := os.MkdirTemp("", "race")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	c, err := bench.Load(o.car, o.rates)
	if err != nil {
		return err
	}
	flat := filepath.Join(dir, "flat.txt")
	if err := writeFlat(c, flat); err != nil {
		return err
	}
	runners, err := start(o, dir, flat)
	if err != nil {
		return err
	}
	if err := compare(c, runners, o.compare); err != nil {
		return err
	}
	rounds, err := timeAll(runners, o)
	if err != nil {
		return err
	}
	for _, r := range runners {
		if err := r.peer.Stop(); err != nil {
			return fmt.Errorf("%s: %w", r.name, err)
		}
	}
	table := tableOf(len(c.Model.Body.Items), runners, rounds, o)
	fmt.Print(table)
	if o.readme == "" {
		return nil
	}
	return bench.WriteBetween(o.readme, "race", table)
}

func writeFlat(c *bench.Case, path string) error {
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	if err := c.Flat(f); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

// compare checks every runner against the engine, car by car.
func compare(c *bench.Case, runners []*runner, n int) error {
	var want []bench.Priced
	c.Cars(bench.Seed, n, func(p bench.Priced) { want = append(want, p) })
	for _, r := range runners {
		got, err := r.peer.Show(bench.Seed, n)
		if err != nil {
			return fmt.Errorf("%s: %w", r.name, err)
		}
		if err := bench.Differences(got, want); err != nil {
			return fmt.Errorf("%s: %w", r.name, err)
		}
	}
	return nil
}
