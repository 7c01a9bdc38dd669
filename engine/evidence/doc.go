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
// others in part.
//
// Who looked. A look by a customer or a seller counts for less than the shop's.
// There are two exceptions. That the seller calls a part bad has a weight of its
// own, also when the shop enters it; the customer's own word counts as any look of
// theirs. And a hole that somebody has seen counts whole: a customer reports one
// that is not there more often than the shop does, and that is all the difference.
// Not to have seen a hole is a look like any other.
//
// Cover. New undercoat and recent or thick paint hide the same things from many
// looks at once, so [Seen] has two versions of everything: for a car as it shows,
// and for one that was freshly covered. In the second the good results of looks
// that cover can hide count for little; bad results count whole. Which of the two a
// car is does not follow from how its looks came out. The one look that speaks of
// it is for fresh undercoat, once for the whole car ([Seen.Cover]), beside what it
// says of the item it was made at.
//
// Door gaps and the lift at the jacking point are entered for a whole side, left
// or right, and speak of the worst item there; a customer may answer for either
// side of a part, such as outer_sill.either, which speaks of the worse of the two.
// Such looks are joined by the rule above among those at the same side, or at
// either side of the same part, and apart from looks at single items. They may be
// of any number.
//
// The survey. Bare metal that was recorded is nearly a fact: [RecordChance] is how
// often a condition is recorded as another. Holes can be missed, not invented, and a
// closed box judged from outside is at least as bad as the hole that was seen.
// Everything else is a slip of the key, so rare that a record has to contradict all
// the rest before it is doubted; [Readable] and [SlipNamedBelow] say when to ask for
// a second look.
//
// Guarantees:
//   - A bad result of a look at condition never makes a hole less likely and a
//     good one never more likely, whatever else was seen, whatever was believed
//     before, and with either state of cover. This does not hold for looks at
//     repairs: a magnet that lets go may as well speak of a dent, and a photograph
//     of a new panel speaks against rust.
//   - A look at condition by a customer never moves the chance of a hole further
//     than the same look by the shop, except for the word on a part, which is the
//     seller's when the shop enters it.
//   - Believed equally bad before, an item is at least as likely to be holed after
//     the same looks on a freshly covered car as on one that is as it shows.
//   - Could not look is no evidence. An item of which nothing was seen has a nil
//     likelihood.
//   - No likelihood is zero and the largest from FromLooks and Joined is one.
//   - The order of the looks changes nothing, not even the last digit.
//   - Every refusal is a *strict.Error that names the entry, such as looks[3].on.
//
// [ImagineWalkRound] and [ImagineSurvey] look at an imagined car as a shop would,
// with the errors that the likelihoods allow for; on a freshly covered car bad
// results come more rarely than the likelihoods have it there, since those take a
// bad result whole.
//
// Limits: apart from cover, mistakes that all looks of one careless visit share are
// not modelled. Failed lead joints of a survey are counted and exact, so they are no
// likelihood and not read here.
//
// The chances are in data/looks.json and data/reading.json; all are assumptions.
// The looks reach a few parts that no body has yet.
package evidence
