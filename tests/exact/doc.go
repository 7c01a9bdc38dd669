// Package exact works out the distribution of a car's price without drawing. The tests
// compare the engine's sampled ranges with it.
//
// Start with [Case] and [Case.Solve]. Given the levels of the network (the history, the
// luck of the car, its earlier repairs, its pocket groups and pockets, each on an even
// grid) and the two whole-car factors of hours, items are independent, so the
// characteristic function of the price is a product over the items. For one item it
// adds up the ways in which the item may have come through the years (leaf.go): with
// the history as it is, painted again or renewed, with causes of its own, repaired or
// not. It then sums over the levels from the pockets to the root and multiplies in what
// was seen of each item on the way (levels.go). A cosine series turns the result into a
// distribution function (invert.go; F. Fang and C. W. Oosterlee, "A novel pricing
// method for European options based on Fourier-cosine series expansions", SIAM Journal
// on Scientific Computing 31, 2008). It uses no draw, no seed and no posterior of the
// engine. It reads chances and hours from the data files with code of its own; only
// medians of depth, likelihoods of what was seen, quantiles of three-point figures and
// amounts that are the same for every car come from the engine.
//
// When it is exact. Work on one item also changes work on others: panels cover others,
// openings raise neighbours, getting in is charged once, new neighbours share a seam.
// [Bare] makes a body to which none of this applies: it has the same parts and items,
// under names that no rule knows. [Steady] makes rates on which wire and gas have one
// price. On these the engine runs unchanged through its public inputs, and the two
// differ only by rounding, of hours to a thousandth and of money to a minor unit, which
// is far below the standard errors in the comparison. [Case.Solve] refuses what it
// cannot do: checks of the worst of several items, checks that fresh cover can hide,
// supplies as a share of labour, and any wish other than show standard for the whole
// body.
//
// There is no exact solution here for the whole bill with its couplings.
package exact
