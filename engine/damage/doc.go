// Package damage models the hidden damage of one car: the condition of every item and
// whether it was repaired before, given where the car lived and all evidence on it.
//
// Start with [New] and [Model]. The model is a network of discrete nodes: the history of
// the car, a factor for the car as a whole, the state of its earlier repairs, a factor
// for each pocket group, a factor for each pocket on its side and, below them, one leaf
// for each item. The log of the deepest loss of item i, as a share of its sheet, is
//
//	y = μ + σ·(√.40·K + √.15·P + √.20·Q + √.25·ε)
//
// with K, P, Q on even grids and ε integrated exactly, so that two items share .40 of
// their variance across a car and .75 within one pocket. A closed box has a larger share
// of its own. Conditioning on evidence is exact (package network). The convergence test
// measures the error due to the grids.
//
// Conditioning on the worst of several items ([MaxEvidence]) is also exact: on a side of
// the car, or on either side of a part. max.go arranges that evidence.
//
// The figures are in data/damage.json with a source for each block. [Model.Draw] draws
// whole cars from the posterior.
package damage
