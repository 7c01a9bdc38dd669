package wording

import (
	"strconv"

	"underpaint/engine/money"
	"underpaint/engine/session"
)

// Cover says for how many cars an amount is enough.
func (t *Text) Cover(amount money.Minor, share float64) string {
	return t.Amount(amount) + ": " + coverWords(share)
}

func coverWords(share float64) string {
	switch {
	case share < 0.05:
		return "fewer than 1 out of 20 cars like yours would cost less than this."
	case share > 0.95:
		return "more than 19 out of 20 cars like yours would cost less than this, and some would still cost more."
	}
	n := min(9, max(1, session.Tenths(share)))
	return "about " + strconv.Itoa(n) + " out of 10 cars like yours would cost less than this."
}

// Fit says how often an amount is enough for one scope and standard.
func Fit(f session.Fit) string {
	return Standard(f.Standard) + ", " + scopeNames[f.Scope] + ": " + enoughIn(f.Share) + "."
}

// FitsNote is the text below the lines of [Fit].
const FitsNote = "Worked out on the same simulated cars. A smaller scope leaves rust where it is: outside only does not touch the metal under the outer panels, and metalwork only ends in primer."

func enoughIn(share float64) string {
	switch {
	case share < 0.05:
		return "enough in fewer than 1 car out of 20"
	case share > 0.95:
		return "enough in more than 19 cars out of 20"
	}
	return "enough in about " + CarsInTen(share)
}
