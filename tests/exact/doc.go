// Package exact works out how the price of a car is distributed without drawing any:
// the yardstick that the sampled ranges of the engine are held to.
//
// Start with [Case] and [Case.Solve]. Given the levels of the network (the history, the
// luck of the car, its earlier repairs, its pocket groups and pockets, each on an even
// grid) and the two factors of hours of the whole car, items are independent of each
// other, so that the characteristic function of the price is a product over the items.
// An item adds up the ways in which it may have come through the years (leaf.go): by
// the history as it is, painted again or renewed, with causes of its own, mended or not.
// It is added up over the levels from the pockets to the root, what was seen of each
// item multiplied in on the way (levels.go), and turned into a distribution function by
// a cosine series (invert.go; F. Fang and C. W. Oosterlee, "A novel pricing method for
// European options based on Fourier-cosine series expansions", SIAM Journal on
// Scientific Computing 31, 2008). No draw, no seed and no posterior of the engine is
// in it; chances and hours are read from the data files by code of its own, and
// only medians of depth, likelihoods of what was seen, quantiles of three-point figures
// and sums of money that are the same for every car come from the engine.
//
// What it is exact for. Work on one item also changes work on others: panels cover
// others, openings raise neighbours, getting in is charged once, new neighbours share a
// seam. [Bare] makes a body to which none of these applies: the same parts and
// items, which no rule finds by name. [Steady] makes rates whose wire and gas have one
// price. On these the engine runs unchanged through its public inputs, and
// the two differ by rounding alone: of hours to a thousandth and of money to a minor
// unit, far below the standard errors that are compared. [Case.Solve] refuses what it
// cannot do: looks at the worst of several items, looks that fresh cover can hide,
// supplies as a share of labour, a wish other than show standard for the whole body.
//
// The whole bill, couplings and all, has no exact solution here.
package exact
