package session

import "underpaint/engine/car"

// Seed is the start number of every range.
const Seed = 1

// State says how far a calculation has got.
type State string

// The states of a calculation.
const (
	Rough       State = "rough"        // the first simulated cars
	Refining    State = "refining"     // more is to come when it is asked again
	Settled     State = "settled"      // as accurate as it is meant to be
	BudgetEnded State = "budget_ended" // stopped short of that at its limit
)

// holedFrom is the mildest condition that counts as rusted through.
const holedFrom = car.Conditions - 2
