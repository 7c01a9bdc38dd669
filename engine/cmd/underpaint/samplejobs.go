package main

import (
	"underpaint/engine/car"
	"underpaint/engine/pastjobs/invented"
	"underpaint/engine/rates"
)

// sampleJobs is the number of finished jobs of the invented shop.
const sampleJobs = 24

// samplePastJobs makes the finished jobs of the invented shop. Its floors are worse and
// its metalwork is slower than the starting figures say, so that there is something to
// learn.
func samplePastJobs() ([]byte, error) {
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		return nil, err
	}
	truth := rates.NothingLearnt()
	truth.Rust = []rates.OwnRust{{Group: "floor", OwnFigure: rates.OwnFigure{Factor: 1.4, Jobs: 1}}}
	truth.Hours[car.Metal].Factor = 1.15
	j, err := invented.Shop{Rates: r, Truth: truth, Seed: 2, Year: 2024}.Jobs(sampleJobs)
	if err != nil {
		return nil, err
	}
	middle := make([]float64, len(j.Jobs))
	for n := range middle {
		middle[n] = j.Score(n).Half
	}
	invented.Explained(j, middle)
	return append(j.Text([][]byte{rates.Sample()}), '\n'), nil
}
