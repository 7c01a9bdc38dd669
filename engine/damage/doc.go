// Package damage models the hidden damage of one car: the condition of every
// item and whether it was repaired before, given where the car lived and
// whatever anyone has seen of it.
//
// Start with [New] and [Model]. The model is a network of discrete nodes: the
// history of the car, a factor for the car as a whole, whether it was repaired
// before, a factor for each pocket group and one for each pocket on its side,
// and under them one leaf for each item. The log of the deepest loss of item i,
// as a share of its sheet, is
//
//	y = μ + σ·(√.40·K + √.15·P + √.20·Q + √.25·ε)
//
// with K, P, Q on even grids and ε integrated exactly, so that two items share
// .40 of their variance across a car and .75 inside one pocket. A closed box is
// more of a lottery. Conditioning on evidence is exact (package network); what
// the grids cost is measured by the convergence test.
//
// What was seen of the worst of several items ([MaxEvidence]) is taken in exactly too:
// the sides of a car, and one side or the other of a part. max.go lays it out.
//
// The figures are in data/damage.json with a source on each block. [Model.Draw]
// draws whole cars that agree with everything known.
package damage
