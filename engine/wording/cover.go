package wording

import (
	"strconv"

	"underpaint/engine/money"
	"underpaint/engine/session"
)

// Cover says in how many cars an amount is enough.
func (t *Text) Cover(amount money.Minor, share float64) string {
	return t.Amount(amount) + ": " + coverWords(share)
}

func coverWords(share float64) string {
	switch {
	case share < 0.05:
		return "fewer than 1 car in 20 like yours would come out below this."
	case share > 0.95:
		return "more than 19 cars in 20 like yours would come out below this, and some would still cost more."
	}
	n := min(9, max(1, session.Tenths(share)))
	if n == 1 {
		return "about 1 car in 10 like yours would come out below this."
	}
	return "about " + strconv.Itoa(n) + " cars in 10 like yours would come out below this."
}

// Fit says how often an amount is enough for one way of doing the job.
func Fit(f session.Fit) string {
	return Standard(f.Standard) + ", " + scopeNames[f.Scope] + ": " + enoughIn(f.Share) + "."
}

// FitsNote stands below the lines of [Fit].
const FitsNote = "Chances on the same imagined cars. A smaller scope leaves rust where it is: outside only does not touch what lies behind, and metalwork only ends in primer."

func enoughIn(share float64) string {
	switch {
	case share < 0.05:
		return "enough in fewer than 1 car of 20"
	case share > 0.95:
		return "enough in more than 19 cars of 20"
	}
	return "enough in about " + CarsInTen(share)
}
