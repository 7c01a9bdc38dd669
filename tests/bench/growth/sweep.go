package main

import (
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat"
)

// sweep varies one size and keeps everything else the same.
type sweep struct {
	name  string // what is timed
	over  string // what grows
	sizes []int
	base  int // index in sizes of the one to which ratios are taken
	work  func(size int) (func() error, error)

	took [][]float64 // milliseconds, by size, then by round
}

// atLeast is how long one timing lasts at least, so that short ones do not get lost in
// the resolution of the clock (assumption).
const atLeast = 40 * time.Millisecond

// time times every size once per round, and each round begins with another size. A
// first round warms up and does not count.
func (s *sweep) time(rounds int) error {
	jobs := make([]func() error, len(s.sizes))
	for k, size := range s.sizes {
		var err error
		if jobs[k], err = s.work(size); err != nil {
			return err
		}
	}
	s.took = make([][]float64, len(s.sizes))
	for round := -1; round < rounds; round++ {
		for n := range jobs {
			k := (n + round + 1) % len(jobs)
			ms, err := timed(jobs[k])
			if err != nil {
				return err
			}
			if round >= 0 {
				s.took[k] = append(s.took[k], ms)
			}
		}
	}
	return nil
}

// timed repeats a job until it has taken long enough and returns milliseconds per run.
func timed(job func() error) (float64, error) {
	start, n := time.Now(), 0
	for {
		if err := job(); err != nil {
			return 0, err
		}
		n++
		if took := time.Since(start); took >= atLeast {
			return float64(took.Microseconds()) / 1000 / float64(n), nil
		}
	}
}

// median is the median time of the k-th size, in milliseconds.
func (s *sweep) median(k int) float64 {
	v := slices.Sorted(slices.Values(s.took[k]))
	return v[len(v)/2]
}

// times is the median ratio of the k-th size to the base; ratios are taken within
// rounds, between measurements close in time.
func (s *sweep) times(k int) float64 {
	var v []float64
	for round, ms := range s.took[k] {
		v = append(v, ms/s.took[s.base][round])
	}
	slices.Sort(v)
	return v[len(v)/2]
}

// exponent is the slope of the least-squares line through log time over log size; a
// size of 0 is left out.
func (s *sweep) exponent() float64 {
	var x, y []float64
	for k, size := range s.sizes {
		if size > 0 {
			x, y = append(x, math.Log(float64(size))), append(y, math.Log(s.times(k)))
		}
	}
	_, slope := stat.LinearRegression(x, y, nil, false)
	return slope
}
