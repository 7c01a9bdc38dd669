// Package network does exact inference in discrete Bayesian networks: exact
// posteriors given evidence on any node, and exact sampling from them.
//
// Start with [Nested] for the shape of a whole car, a root with groups, pockets
// and leaves, whose joint table would be far too large to write down; the upward
// pass is in nested_pass.go. Start with [Net] for a small network of any shape,
// which works by variable elimination. Both agree wherever both can be used. Start
// with [NestedPosterior.ConditionMax] for evidence on the worst of several leaves wherever
// they hang; max.go says how it factorises.
//
// # Guarantees
//
//   - Exact: no sampling, no iteration, no approximation in a posterior. What is
//     lost is the rounding of float64 sums and products.
//   - No underflow: products are kept with an exponent of their own, so evidence
//     of log-likelihood -650 or -65,000 has a posterior as precise as any other.
//   - Impossible evidence is [ErrNoSupport], never a number. Weights and likelihoods
//     that are negative, infinite or not numbers are errors that name the place.
//   - Max nodes are as exact while the likelihoods of each lie within six powers
//     of ten: their sums are of signed terms and lose as many digits.
//   - Sampling is by inverse distribution functions, one uniform for each node in
//     a fixed order, so equal streams give like draws (common random numbers).
//   - Same bits natively and in WebAssembly: only sums, products, quotients and
//     the logarithm of package chance.
//   - CDFLeaf memory: a table of root states × levels for each group with evidence,
//     and at most 2^14 rows or 2 MB kept for sampling, for each group and width of row;
//     one more table of the kind for what the group says; with
//     max nodes a table of root states × levels × components for each pocket with
//     members; a table of a Net has at most 2^22 cells.
//
// Weights, likelihoods and posteriors are plain ratios without a unit; log
// evidence is in natural logarithms.
package network
