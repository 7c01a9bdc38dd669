// Package network does exact inference in discrete Bayesian networks: it computes
// exact posteriors given evidence on any node, and samples from them exactly.
//
// Start with [Nested] for a whole car: a root with groups, pockets and leaves, whose
// joint table would be far too large to write down. Its upward pass is in
// nested_pass.go. Start with [Net] for a small network of any shape; it uses variable
// elimination. The two agree wherever both can be used. For evidence on the worst of
// several leaves, in any pockets, start with [NestedPosterior.ConditionMax]; max.go
// explains how that evidence factorises.
//
// # Guarantees
//
//   - Exact: a posterior involves no sampling, iteration or approximation. The only
//     error is the rounding of float64 sums and products.
//   - No underflow: products carry an exponent of their own, so evidence with a
//     log-likelihood of -650 or -65,000 gives a posterior as precise as any other.
//   - Impossible evidence is [ErrNoSupport], never a number. Weights and likelihoods
//     that are negative, infinite or not numbers are errors that name the place.
//   - Max nodes are equally exact while the likelihoods of each node lie within six
//     powers of ten. They need sums of signed terms, which lose that many digits.
//   - Sampling inverts distribution functions with one uniform for each node in a
//     fixed order, so equal streams give similar draws (common random numbers).
//   - Same bits natively and in WebAssembly: the arithmetic is sums, products,
//     quotients and the logarithm of package chance.
//   - Memory: one table of root states × levels for each group with evidence, one
//     value per root state for the group's message, and, for each group and row width,
//     at most 2^14 rows or 2 MB kept for sampling. Max nodes add a table of root
//     states × levels × components for each pocket with members. A table of a Net has
//     at most 2^22 cells.
//
// Weights, likelihoods and posteriors are plain ratios without a unit; log
// evidence is in natural logarithms.
package network
