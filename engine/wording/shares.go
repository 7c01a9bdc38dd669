package wording

import (
	"math"
	"strconv"

	"underpaint/engine/session"
)

// CarsInTen says a share in words, such as "6 cars out of 10".
func CarsInTen(share float64) string {
	switch n := session.Tenths(share); {
	case share < 0.05:
		return "fewer than 1 car out of 20"
	case share > 0.95:
		return "more than 19 cars out of 20"
	case n == 1:
		return "1 car out of 10"
	default:
		return strconv.Itoa(n) + " cars out of 10"
	}
}

// InTen says a share as "8 out of 10", or as "19 out of 20" near the ends.
func InTen(share float64) string {
	switch n := session.Tenths(share); {
	case share > 0.95:
		return "19 out of 20"
	case n == 0:
		return "fewer than 1 out of 20"
	default:
		return strconv.Itoa(n) + " out of 10"
	}
}

// percent writes a share from 0 to 1.
func percent(share float64) string { return Percent(int(math.Floor(float64(share*100) + 0.5))) }

// Percent writes a whole number of hundredths, such as "18%".
func Percent(n int) string { return strconv.Itoa(n) + "%" }

// percentOf says a factor as a difference: "18% more", "5% less".
func percentOf(factor float64, more, less string) string {
	n := int(math.Floor(float64(math.Abs(factor-1)*100) + 0.5))
	switch {
	case n == 0:
		return "neither more nor less"
	case factor > 1:
		return Percent(n) + " " + more
	}
	return Percent(n) + " " + less
}

// widthWords says a ratio of two widths, such as "about half as wide as at first".
func widthWords(ratio float64, other string) string {
	for _, one := range []struct {
		below float64
		text  string
	}{{0.15, "about a tenth as wide"}, {0.29, "about a quarter as wide"}, {0.42, "about a third as wide"}, {0.58, "about half as wide"},
		{0.71, "about two thirds as wide"}, {0.87, "about four fifths as wide"}, {0.96, "nearly as wide"}, {1.05, "about as wide"}} {
		if ratio < one.below {
			return one.text + " as " + other
		}
	}
	if ratio < 1.3 {
		return "somewhat wider than " + other
	}
	return "much wider than " + other
}
