// Package evidence turns what anyone has seen of a car into a likelihood for
// each item: looks before it is stripped, and readings of the bare metal after.
//
// Start with [FromLooks] for looks and [Reading] for the survey; [Joined] puts
// the two together. [Kinds] lists the looks with their words.
//
// The rule for several looks at one item. Looks that agree are partly the same
// news, looks that disagree are not. So among looks at condition the bad results
// are taken together, and apart from them the good ones, step by step between
// neighbouring conditions: on each step the largest log ratio counts whole and
// every further one in part. Looks at what an earlier repair left (magnet, gauge,
// photographs) are joined apart from those, good and bad together: the one with
// the widest spread counts whole, at a tie the first in data/looks.json, the
// others in part. A customer's look and the seller's word count for less than the
// shop's look; the seller's word is whatever the shop was told of it, while a
// customer who enters it speaks as a customer.
//
// Guarantees:
//   - A bad result of a look at condition never makes a hole less likely and a
//     good one never more likely, whatever else was seen and whatever was
//     believed before. This does not hold for looks at repairs: a magnet that
//     lets go may as well speak of a dent, and a photograph of a new panel speaks
//     against rust.
//   - A look at condition by a customer never moves the chance of a hole further
//     than the same look by the shop; the seller's word is the exception named
//     above.
//   - Could not look is no evidence. An item of which nothing was seen has a nil
//     likelihood.
//   - No likelihood is zero and the largest from FromLooks and Joined is one.
//   - The order of the looks changes nothing, not even the last digit.
//   - Every refusal is a *strict.Error that names the entry, such as looks[3].on.
//
// Door gaps and the lift at the jacking point are entered for a whole side, left
// or right, and speak of the worst item there; a customer may answer for either
// side of a part, such as outer_sill.either, which speaks of the worse of the two.
//
// Such looks are joined by the rule above among those at the same side, or at
// either side of the same part, and apart from looks at single items. They may be
// of any number.
//
// [ImagineWalkRound] and [ImagineSurvey] look at an imagined car as a shop would,
// with the errors that the likelihoods allow for.
//
// Limits: mistakes that all looks of one careless visit share are not modelled.
// Failed lead joints of a survey are counted and exact, so they are no likelihood
// and not read here.
//
// The chances are in data/looks.json and data/reading.json; all are assumptions.
package evidence
