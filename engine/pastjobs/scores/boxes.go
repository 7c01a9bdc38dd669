package scores

import "math"

// Boxes is the number of boxes in the strip of finished jobs: one for jobs below their
// own first range, ten slots inside it, one for jobs above.
const Boxes = 12

// Finished says where one finished job fell: the ends of its own first range, its final
// price, and its place among the draws as [PIT] or [LognormalPIT] gives it.
type Finished struct {
	Low, High, Found float64
	PIT              float64
}

// Box is the box of a job, 0 to 11. The published ends decide what is below and above;
// an end itself is inside. The slots inside are equally likely: each holds 8 jobs in
// 100 of an honest range.
func (f Finished) Box() int {
	f.check()
	switch {
	case f.Found < f.Low:
		return 0
	case f.Found > f.High:
		return Boxes - 1
	}
	// The tiny addition keeps .18, one slot in, from becoming .07999… of the way.
	slot := math.Floor(float64((f.PIT-0.1)/0.08) + 0x1p-40)
	return int(math.Max(1, math.Min(slot+1, 10)))
}

func (f Finished) check() {
	if !(f.High >= f.Low) || !(f.PIT >= 0 && f.PIT <= 1) || f.Found != f.Found {
		panic("engine: internal error: finished job with ends out of order or a place outside 0 to 1")
	}
}

// Strip counts the jobs in each box.
func Strip(jobs []Finished) (count [Boxes]int) {
	for _, f := range jobs {
		count[f.Box()]++
	}
	return count
}

// BoxChance is the probability of a box under an honest range.
func BoxChance(box int) float64 {
	if box == 0 || box == Boxes-1 {
		return 0.1
	}
	return 0.08
}
