// Package shapley says how much of the variance of a result each of its inputs
// brings: shares that add to all of it and leave none for what has no effect.
//
// Start with [New] and [Walks.Add]. The share of an input is its Shapley effect: what
// knowing it adds to the variance explained, averaged over every order in which the
// inputs could become known (A. B. Owen, "Sobol' indices and Shapley value", SIAM/ASA
// J. Uncertainty Quantification 2, 2014). It is estimated by walks from one random
// point to another that change one input at a time, in random order (T. Goda, "A
// simple algorithm for global sensitivity analysis with Shapley effects",
// Reliability Engineering & System Safety 213, 2021): each walk adds
//
//	(f(x) − (f(before) + f(after))/2)·(f(after) − f(before))
//
// to the input that was changed, x being where it ends; these add up to half the
// squared distance of the two ends, so the sum of all shares is never negative.
//
// Inputs are independent by construction: each is a list of uniforms. A result
// whose inputs depend on each other is written with what is new in each, in the
// order in which they are drawn; what an input shares with one before it then
// counts for the one before.
package shapley
