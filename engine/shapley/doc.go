// Package shapley divides the variance of a result among its inputs. The shares add up
// to 1, and an input without effect gets none.
//
// Start with [New] and [Walks.Add]. The share of an input is its Shapley effect: the
// variance explained by also knowing this input, averaged over every order in which the
// inputs could become known (A. B. Owen, "Sobol' indices and Shapley value", SIAM/ASA
// J. Uncertainty Quantification 2, 2014). It is estimated by walks from one random point
// to another that change one input at a time, in random order (T. Goda, "A simple
// algorithm for global sensitivity analysis with Shapley effects", Reliability
// Engineering & System Safety 213, 2021). At each step a walk adds
//
//	(f(x) − (f(before) + f(after))/2)·(f(after) − f(before))
//
// to the input it changes, where x is the end of the walk. These add up to half the
// squared difference of f at the two ends, so the sum of all shares is never negative.
//
// Inputs are independent by construction: each is a list of uniforms. If the inputs of a
// result depend on each other, write each as a function of the earlier ones and of new
// uniforms, in the order in which they are drawn. Whatever an input has in common with an
// earlier one then counts for the earlier one.
package shapley
