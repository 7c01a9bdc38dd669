// Package evidence turns observations of a car into a likelihood for each item: checks
// before it is stripped, and the survey of the bare metal afterwards. A check is a
// [Look] in the code and in the car file.
//
// Start with [FromLooks] for checks and [Reading] for the survey. [Joined] combines the
// two. [Kinds] lists the checks with their words.
//
// # Several checks on one item
//
// Checks that agree partly repeat the same information; checks that disagree do not. So
// for checks of condition the bad results are combined with each other, and separately
// the good ones, step by step between neighbouring conditions: on each step the largest
// log ratio counts in full and every further one in part. Checks for an earlier repair
// (magnet, gauge, photographs) are combined separately from those, good and bad
// together: the one with the widest spread counts in full (on a tie the first in
// data/looks.json), the others in part.
//
// # Who made the check
//
// A check by a customer or a seller counts for less than one by the shop. There are two
// exceptions. A seller's word that a part is bad has a weight of its own, even if the
// shop enters it; the customer's own word counts like any of the customer's checks. And
// a visible hole counts in full, whoever reports it. The only difference is that a
// customer reports a hole where there is none more often than the shop does. Not seeing
// a hole counts like the result of any other check.
//
// # Cover
//
// New undercoat and recent or thick paint hide the same damage from many checks at once,
// so [Seen] has two versions of everything: for a car as it shows, and for a freshly
// covered one. In the second, good results of checks that cover can defeat count for
// little; bad results count in full. The results of such checks say nothing about which
// of the two holds. Only the check for fresh undercoat does, once for the whole car
// ([Seen.Cover]), in addition to what it says about the item it was made on.
//
// # Checks on several items
//
// Door gaps and the lift at the jacking point are entered for a whole side, left or
// right, and are evidence on the worst item there. A customer may answer for either side
// of a part, such as outer_sill.either, which is evidence on the worse of the two. The
// rule above combines such checks on the same side, or on either side of the same part,
// separately from checks on single items. There may be any number of them.
//
// # The survey
//
// A record of bare metal is nearly a fact: [RecordChance] is how often one condition is
// recorded as another. A survey can miss a hole but not invent one, and a closed box
// judged from outside is at least as bad as the hole that was seen. Every other mismatch
// is a keying error, which is so rare that a record must contradict everything else
// before it is doubted. [Readable] and [SlipNamedBelow] say when to ask for a second
// check.
//
// # Guarantees
//
//   - A bad result of a check of condition never makes a hole less likely and a good one
//     never makes it more likely, for any other evidence, any prior and either state of
//     cover. This does not hold for checks for repairs: a magnet that lets go may just
//     as well mean a dent, and a photograph of a new panel is evidence against rust.
//   - A check of condition by a customer never changes the chance of a hole by more than
//     the same check by the shop. The exception is the word about a part, which is the
//     seller's when the shop enters it.
//   - With equal priors, an item is at least as likely to be holed after the same checks
//     on a freshly covered car as on one that is as it shows.
//   - "Couldn't check" is not evidence. An item without evidence has a nil likelihood.
//   - No likelihood is zero, and the largest from FromLooks and Joined is one.
//   - The order of the checks changes nothing, not even the last digit.
//   - Every refusal is a *strict.Error that names the entry, such as looks[3].on.
//
// [ImagineWalkRound] and [ImagineSurvey] check a simulated car as a shop would, with
// the errors that the likelihoods allow for. On a freshly covered car, bad results are
// rarer than the likelihoods for such a car assume, because those count a bad result in
// full.
//
// Limits: apart from cover, the model has no mistakes that all checks of one careless
// visit share. Failed lead joints of a survey are counted exactly, so they have no
// likelihood and this package does not read them.
//
// The chances are in data/looks.json and data/reading.json; all are assumptions. The
// checks cover a few parts that no body has yet.
package evidence
