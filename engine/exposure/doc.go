// Package exposure turns what somebody knows of a car's life into how deep rust
// has probably eaten into each part.
//
// Start with [Histories], which makes the alternatives of a car's history from what
// was told of it, and [History.Medians], the logs of the median loss of a part as a
// share of its sheet. [Exact] does the same as Histories for histories known period
// by period. What is not sure is a mixture of alternatives with chances and never
// a guess: a place, the way of keeping, years on the road, a decade instead of a
// year. No history is certain, so every one also counts with all its rates a
// quarter lower and a third higher.
//
// # What an answer stands for
//
// A told period whose years on the road were asked about is two: on the road
// first, then off it. How the car was kept counts in both: data/kept.json has the
// share of a year's weather for each way of keeping, on the road, off it, and for
// a period of which nobody asked ([Whole]). Years on the road that are not sure
// follow from the climate times a multiplier, one for all such periods of a
// history. They never exceed their period. A way of keeping that is not sure is a
// mixture of the five, independent from one told period to the next.
//
// Earlier places come first in time, in the order told; the main place takes the
// years that are left, and some must be left. An age that the earlier places do
// not fit into is ruled out, and the chances of the other ages grow in
// proportion; when no age is left that is an error naming life[i].years.
//
// # Years
//
// Sheet was thicker and paint lived shorter before about 1960, and the other way
// round after about 1975; road salt was hardly used before 1955. data/eras.json
// has the factors: by the year of make for sheet and paint, by the middle year of
// a period for the salt. The engine has no clock: the year of asking is part of
// what is [Asked].
//
// # An earlier restoration
//
// Every history is read in three ways ([Reading]): as if nothing was done, as if
// the car was painted over its rust, and as if it was renewed. Which one holds is
// not settled here (package damage). The year of the work may be told; one before
// the make counts as the make, one after the year of asking as that year. If
// the year was not told, the work was done half the car's age ago, but at most 25
// years ago. A period in which the work falls keeps its middle year for the salt.
//
// # Guarantees
//
// Weights of the histories sum to 1 within rounding. The order is by falling weight,
// then by content, and the same on every build. Equal histories are one history;
// neighbouring stretches that act alike are one period. There are at most
// [MaxHistories]; how histories are joined beyond that is told in reduce.go. Joining
// never mixes ages or last climates. Histories of equal [History.Life] differ in every
// μ by the same amount. Errors are *strict.Error with paths of the car file.
//
// With the year of make kept, more years never make μ smaller in any reading, nor
// does an earlier period put before the others, nor a harsher climate in place of
// a milder one. A milder period put after the others can: the least loss a spot
// is given (least_years in data/history.json) goes by the last period's climate,
// which matters only while the paint is whole. A car made earlier is no rule
// either way, since its sheet was thicker.
//
// Climates, places, eras and what each answer stands for are in data/*.json, with
// a source for every figure.
package exposure
