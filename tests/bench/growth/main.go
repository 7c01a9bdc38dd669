// Command growth measures how the engine's time grows with its input: items of a body,
// alternatives of a car's history, simulated cars, records of a survey, checks of a
// whole side, and car files in a folder on one core and on all. Start with run.
//
// All sizes of a sweep are timed in turn. The table has their ratio to one of them and
// the exponent of a power law fitted to them; 1 is linear. -plot draws them with
// gnuplot; -readme writes the table between the two marks of that file.
package main

import (
	"flag"
	"fmt"
	"os"

	"underpaint/tests/bench"
)

// options are the flags.
type options struct {
	rates, readme, plot string
	rounds, cars        int
}

func main() {
	var o options
	flag.StringVar(&o.rates, "rates", "engine/rates/data/sample.json", "rates file")
	flag.StringVar(&o.readme, "readme", "", "file to write the table into")
	flag.StringVar(&o.plot, "plot", "", "picture (SVG) to draw with gnuplot")
	flag.IntVar(&o.rounds, "rounds", 9, "rounds in which each size is timed once")
	flag.IntVar(&o.cars, "cars", 48, "car files in the folder")
	flag.Parse()
	if err := run(o); err != nil {
		fmt.Fprintln(os.Stderr, "growth:", err)
		os.Exit(1)
	}
}

func run(o options) error {
	b, err := newBench(o.rates)
	if err != nil {
		return err
	}
	sweeps, err := b.sweeps()
	if err != nil {
		return err
	}
	for k := range sweeps {
		if err := sweeps[k].time(o.rounds); err != nil {
			return err
		}
	}
	folder, err := timeFolder(o)
	if err != nil {
		return err
	}
	table := tableOf(append(sweeps, folder...), o)
	fmt.Print(table)
	if o.plot != "" {
		if err := plot(append(sweeps, folder...), o.plot); err != nil {
			return err
		}
	}
	if o.readme == "" {
		return nil
	}
	return bench.WriteBetween(o.readme, "growth", table)
}
