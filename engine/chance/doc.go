// Package chance does the arithmetic of uncertainty: random streams, the normal
// distribution, three-point figures and sample quantiles.
//
// Start with [NewThreePoint], which turns a low, likely and high figure into a
// distribution, and [NewStream], which supplies the uniform numbers to draw from it.
// [Quantile] gives quantiles of finished draws; the caller always names the rule.
//
// # Guarantees
//
//   - Same bits everywhere. No function here calls the exponential, logarithm,
//     power or error function of package math, whose last bits differ between
//     processors; this package has its own [Exp] and [Log]. Every product is written
//     float64(x*y), because the Go specification ("Floating-point operators") then
//     forbids fusing it with a sum. One test searches the source for products without
//     the conversion, another pins the bits of every function.
//   - No randomness of its own. A [Stream] is a value that the caller holds. One
//     uniform number gives one variate by inversion, so the caller can use the same
//     uniform number again in a changed calculation.
//   - No allocation in [Exp], [Log], [NormalCDF], [NormalQuantile],
//     [Stream.Uniform] and [ThreePoint.At].
//   - Arguments for which the mathematics has no answer give NaN. Unusable figures that
//     a person typed are an error ([NewThreePoint]). A call that only a programming
//     error can cause (quantile of an empty sample) panics.
//
// Units are the caller's: a three-point figure in hours gives hours.
package chance
