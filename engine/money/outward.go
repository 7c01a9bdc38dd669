package money

import (
	"math"
	"math/bits"
)

// OutwardStep returns the step to which the ends of a range of the given width are
// rounded for display. Of 1, 2 and 5 times the powers of ten, it is the one nearest (in
// ratio) to a twentieth of the width, and at least 1 minor unit.
// Source of the twentieth: assumption.
func OutwardStep(width Minor) Minor {
	if width <= 0 {
		return 1
	}
	// The next step t is nearer than s if width/20 > √(s·t), that is width² > 20s · 20t.
	// The products of neighbours are 2, 10 or 50 times an even power of ten, never a
	// square, so there are no ties. The last t is 5×10^17, because half of a twentieth of
	// the largest width is below it.
	wHi, wLo := bits.Mul64(uint64(width), uint64(width))
	step := uint64(1)
	for i := 0; step < 500_000_000_000_000_000; i++ {
		next := step * 2
		if i%3 == 1 {
			next = step / 2 * 5
		}
		hi, lo := bits.Mul64(20*step, 20*next)
		if hi > wHi || hi == wHi && lo > wLo {
			break
		}
		step = next
	}
	return Minor(step)
}

// RoundDown returns the largest multiple of step that is not above m. For a negative
// amount that is away from zero.
func RoundDown(m, step Minor) Minor {
	over := overshoot(m, step)
	return checked(m-over, over >= 0 && m-over <= m)
}

// RoundUp returns the smallest multiple of step that is not below m.
func RoundUp(m, step Minor) Minor {
	over := overshoot(m, step)
	if over == 0 {
		return m
	}
	up := m + (step - over)
	return checked(up, up > m)
}

// RoundNearest returns the multiple of step nearest to m, half away from zero.
func RoundNearest(m, step Minor) Minor {
	over := overshoot(m, step)
	under := step - over
	if over < under || over == under && m < 0 {
		return RoundDown(m, step)
	}
	return RoundUp(m, step)
}

// overshoot is how far m is above the multiple of step below it: 0 ≤ overshoot < step.
func overshoot(m, step Minor) Minor {
	if step < 1 {
		panic("engine: internal error: step below one minor unit")
	}
	over := m % step
	if over < 0 {
		over += step
	}
	return over
}

// checked returns m, and panics if the addition that gave it overflowed 64 bits.
func checked(m Minor, fits bool) Minor {
	if !fits || m == math.MinInt64 {
		panic("engine: internal error: amount out of range")
	}
	return m
}
