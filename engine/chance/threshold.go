package chance

// ThresholdIndex is how many of five ends v has reached. It is written out, for a loop in
// WebAssembly goes through a table of jumps at every turn, and this is asked some
// hundreds of times for every imagined car.
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
