// Package chance is the arithmetic of uncertainty: random streams, the normal
// distribution, three-point figures and sample quantiles.
//
// Start with [NewThreePoint], which turns a low, likely and high figure into a
// distribution, and [NewStream], which supplies the uniform numbers to draw
// from it. Quantiles of finished draws come from [Quantile], where the rule is
// always named.
//
// # Guarantees
//
//   - Same bits everywhere. No function here calls the exponential, logarithm,
//     power or error function of package math, whose last bits differ between
//     processors; [Exp] and [Log] are our own. Every product is
//     written float64(x*y), which the Go specification ("Floating-point
//     operators") keeps from being fused with a sum; a test reads the source for
//     products without it, another pins the bits of every function.
//   - No randomness of its own. A [Stream] is a value that the caller holds; one
//     uniform number gives one variate by inversion, so the same uniform number
//     can be used again in a changed calculation.
//   - No allocation in [Exp], [Log], [NormalCDF], [NormalQuantile],
//     [Stream.Uniform] and [ThreePoint.At].
//   - Arguments outside a function's domain give NaN where the mathematics has
//     no answer. Figures that a person typed are refused with an error
//     ([NewThreePoint]). A call that only a programming mistake can make
//     (quantile of an empty sample) panics.
//
// Units are those of the caller: a three-point figure of hours gives hours.
package chance
