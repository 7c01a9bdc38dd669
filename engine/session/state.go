package session

import "underpaint/engine/car"

// Seed is the start number of the simulated cars of every range.
const Seed = 1

// State says how far a calculation has got.
type State string

// The states of a calculation.
const (
	Rough       State = "rough"        // the first simulated cars
	Refining    State = "refining"     // another call makes it more accurate
	Settled     State = "settled"      // as accurate as we aim for
	BudgetEnded State = "budget_ended" // stopped at its limit before that
)

// holedFrom is the mildest condition that counts as rusted through.
const holedFrom = car.Conditions - 2
