// Package estimate imagines many cars that agree with everything known, prices
// each, and says what range their prices span.
//
// Start with [Run]: [NewRun] takes a conditioned model of hidden damage and one
// price table for each standard asked about; [Run.Add] adds imagined cars;
// [Run.Range] reads the range off. What all items of a car share, and how hard the
// work on it goes, comes from scrambled Sobol points, the rest from Latin hypercubes
// (sampler.go); the work on each car is imagined several times (replicates.go). A car is
// worth about two dozen drawn plainly, in twice the time of one (measured in
// tests/draws_test.go).
//
// Points are dealt out over independent randomisations, so that the standard error
// of each end of the range is measured and not guessed, and drawing goes on until
// both ends are as good as [Accuracy] asks or the budget is spent (in the spirit of
// JCGM 101:2008, 7.9).
//
// [Run.Difference] compares two tables car by car: the same imagined cars, two ways.
// [Run.IfKnown] and [Run.IfLook] say how wide the range would be after one look, on
// average and by outcome, from the cars at hand weighed by Bayes' rule; how many
// cars bear the answer is told with it.
//
// Every car has a point and a stream of uniforms of its own, made from the seed and
// the number of the car: the same car file, rates and seed give the same bytes
// everywhere, and two runs that differ in one answer are compared on the same
// imagined cars.
package estimate
