// Package exposure turns what somebody knows of a car's life into how deep rust
// has probably eaten into each part.
//
// Start with [Levels], which makes the alternatives of a car's history from what
// was told of it, and [Level.Mu], the log of the median loss of a part as a
// share of its sheet. [Exact] does the same for histories known period by
// period. What is not sure is a mixture of alternatives with chances and never a
// guess: a place, the way of keeping, years on the road, a decade instead of a
// year. No history is certain, so every one also counts with all its rates a
// quarter lower and a third higher.
//
// # What an answer stands for
//
// A told period is split in two: years on the road, then years put away.
//
//	driven_all_year   driven all year, then an ordinary garage
//	driven_in_summer  driven in summers only, then an ordinary garage
//	mostly_garaged    driven all year for half the road years, then a garage
//	mostly_outside    driven all year, then an open shed or outside
//	not_sure          a mixture of the four
//
// Years on the road that are not sure follow from the climate (three
// alternatives) and never exceed the period; half of them means half of what the
// period allows. An answer in years stands as it is, halved by nothing. Each
// told period has its own answer, independent of the others.
//
// Earlier places come first in time, in the order told; the main place takes the
// years that are left, and some must be left. An age that the earlier places do
// not fit into is ruled out, and the chances of the other ages grow in
// proportion; when no age is left that is an error naming life[i].years.
//
// # Guarantees
//
// Weights of the levels sum to 1 within rounding. The order is by falling weight,
// then by content, and the same on every build. Equal histories are one level;
// neighbouring stretches of the same kind are one period. There are at most
// [MaxLevels]; how levels are joined beyond that is told in reduce.go. Errors are
// *strict.Error with paths of the car file.
//
// More years never make μ smaller, nor does an earlier period put before the
// others, nor a harsher climate in place of a milder one. A milder period put
// after the others can: the least loss a spot is given (least_years in
// data/climates.json) goes by the last period's climate, which matters only
// while the paint is whole.
//
// Climates, places and what each answer stands for are in data/*.json, with a
// source on every row.
package exposure
