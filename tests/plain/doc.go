// Package plain simulates cars straight from the published form of the damage model:
// factors from their densities, without grids, tables or messages.
//
// Start with [New] and [Cars.Draw]. [Cars.Weigh] conditions on checks by importance
// weights: it draws cars from the customer's answers and weights each by the likelihood
// of what was seen. The effective number of cars says how good that is (A. Kong, J. S.
// Liu and W. H. Wong, "Sequential imputations and Bayesian missing data problems",
// Journal of the American Statistical Association 89, 1994).
//
// Package figures reads the figures from the data files. Only bodies and medians of
// depth come from the engine.
package plain
