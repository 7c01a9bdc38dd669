package network

import (
	"math"

	"underpaint/engine/chance"
)

// extFloat is a non-negative number m × 2^(512 e), so that a product of any number
// of likelihoods neither underflows nor loses digits. Scaling by a power of two is
// exact, so every operation is as precise as on a float64, and cheaper than a
// logarithm. Zero is extFloat{}; otherwise m is in [2^-256, 2^256).
type extFloat struct {
	m float64
	e int32
}

const (
	extLow   = 0x1p-256
	extHigh  = 0x1p+256
	stepUp   = 0x1p+512
	stepDown = 0x1p-512
	stepBits = 512
)

// usable reports whether v can be a weight or a likelihood: finite, not negative.
func usable(v float64) bool { return v >= 0 && v <= math.MaxFloat64 }

// toExt converts a usable float64 to normal form.
func toExt(v float64) extFloat { return extFloat{m: v}.normal() }

// expExt is the exponential of any finite number, even where a float64 would overflow
// or underflow. The exponential of minus infinity is zero.
func expExt(log float64) extFloat {
	if math.IsInf(log, -1) {
		return extFloat{}
	}
	e := math.Floor(log/(stepBits*math.Ln2) + 0.5)
	return extFloat{m: chance.Exp(log - float64(e*(stepBits*math.Ln2))), e: int32(e)}.normal()
}

func (a extFloat) normal() extFloat {
	if a.m == 0 {
		return extFloat{}
	}
	for a.m < extLow {
		a.m *= stepUp
		a.e--
	}
	for a.m >= extHigh {
		a.m *= stepDown
		a.e++
	}
	return a
}

func (a extFloat) zero() bool { return a.m == 0 }

// times multiplies. The product of two normal mantissas is within float64's range.
func (a extFloat) times(b extFloat) extFloat { return extFloat{m: a.m * b.m, e: a.e + b.e}.normal() }

// plus adds. A number whose exponent is two or more below the other's is less than
// 2^-512 of it, far under half a unit in the last place, so it adds nothing.
func (a extFloat) plus(b extFloat) extFloat {
	if a.zero() {
		return b
	}
	if b.zero() {
		return a
	}
	if a.e < b.e {
		a, b = b, a
	}
	switch a.e - b.e {
	case 0:
		a.m += b.m
	case 1:
		a.m += float64(b.m * stepDown)
	}
	return a.normal()
}

// over is a ÷ total as a float64, for a part a of a positive total. A quotient below
// float64's range is 0.
func (a extFloat) over(total extFloat) float64 {
	if a.zero() {
		return 0
	}
	ratio := a.m / total.m
	for e := a.e - total.e; e != 0; {
		if e < 0 {
			ratio *= stepDown
			e++
		} else {
			ratio *= stepUp
			e--
		}
		if ratio == 0 {
			return 0
		}
	}
	return ratio
}

// log is the natural logarithm of a positive number.
func (a extFloat) log() float64 {
	return float64(float64(a.e)*(stepBits*math.Ln2)) + chance.Log(a.m)
}
