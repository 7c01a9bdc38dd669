package chance

// ThresholdIndex is the number of the five ascending ends that v has reached. It is
// unrolled, because a loop in WebAssembly goes through a jump table on every iteration,
// and this is called hundreds of times for every simulated car.
func ThresholdIndex(ends *[5]float64, v float64) int8 {
	var a, b, c, d, e int8
	if v >= ends[0] {
		a = 1
	}
	if v >= ends[1] {
		b = 1
	}
	if v >= ends[2] {
		c = 1
	}
	if v >= ends[3] {
		d = 1
	}
	if v >= ends[4] {
		e = 1
	}
	return a + b + c + d + e
}
