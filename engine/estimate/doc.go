// Package estimate draws many simulated cars from the posterior, prices each, and works
// out the range of their prices.
//
// Start with [Run]. [NewRun] takes a conditioned model of hidden damage and one price
// table for each standard of finish. [Run.Add] adds simulated cars and [Run.Range] gives
// the range. The factors that all items of a car share, and how hard the work on it goes,
// come from scrambled Sobol points; the rest comes from Latin hypercubes (sampler.go).
// The work on each car is simulated several times (replicates.go). One such car is worth
// about two dozen drawn with plain random numbers, in twice the time of one (measured in
// tests/draws_test.go).
//
// Points are divided among independent randomisations, so that the standard error of each
// end of the range is measured and not guessed. A run adds cars until both ends are as
// accurate as [Accuracy] asks or the budget is spent (in the spirit of JCGM 101:2008,
// 7.9).
//
// [Run.Difference] compares two tables on the same simulated cars. [Run.IfKnown] and
// [Run.IfLook] work out how wide the range would be after one check, on average and for
// each outcome, by weighting the cars by Bayes' rule. They also give the effective sample
// size behind the answer.
//
// What the figures may have wrong, and how the parts of a car come, have streams of their
// own (doubtOf, supplied), so that switching either off leaves all else as it is.
//
// Every car has its own point and its own stream of uniforms, made from the seed and the
// number of the car. So the same car file, rates and seed give the same bytes everywhere,
// and two runs that differ in one answer are compared on the same simulated cars.
package estimate
