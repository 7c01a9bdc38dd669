// Package plain imagines cars straight from the published form of the model of damage:
// factors from their densities, no grids, no tables, no messages.
//
// Start with [New] and [Cars.Draw]. [Cars.Weigh] conditions on looks by importance
// weights: cars are drawn from what was told, each counts as much as what was seen is
// likely on it, and the effective number of cars says how good that is (A. Kong, J. S.
// Liu and W. H. Wong, "Sequential imputations and Bayesian missing data problems",
// Journal of the American Statistical Association 89, 1994).
//
// The figures are read from the data files by package figures. Only bodies and medians
// of depth come from the engine.
package plain
