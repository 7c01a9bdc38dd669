// Package exposure turns what is known about a car's life into how deep rust has
// probably eaten into each part.
//
// Start with [Histories], which builds the alternative histories of a car from the
// customer's answers, and [History.Medians], which gives the log of the median loss of
// a part as a share of its sheet. [Exact] does the same as Histories for lives known
// period by period. An uncertain answer becomes a mixture of alternatives with chances,
// never a guess: a place, a way of keeping the car, years on the road, a decade instead
// of a year. No history is certain, so each one also counts with all its rates a
// quarter lower and a third higher.
//
// # What an answer means
//
// A told period with an answer about years on the road becomes two periods: on the road
// first, then off it. How the car was kept matters in both. data/kept.json has the share
// of a year's weather for each way of keeping: on the road, off it, and for a period
// that nobody was asked about ([Whole]). If the customer is not sure of the years on the
// road, they are those of the climate times a multiplier, which is the same for all such
// periods of a history. They never exceed their period. If the customer is not sure how
// the car was kept, the answer is a mixture of the five ways, independent for each told
// period.
//
// Earlier places come first in time, in the order told. The main place takes the
// remaining years, of which there must be some. Ages too short for the earlier places
// are ruled out, and the chances of the other ages grow in proportion. If no age is
// left, the error names life[i].years.
//
// # Years
//
// Before about 1960 sheet was thicker and paint did not last as long; after about 1975
// it was the other way round. Road salt was hardly used before 1955. data/eras.json has
// the factors: by the year of make for sheet and paint, by the middle year of a period
// for salt. The engine has no clock, so the year of asking is part of [Asked].
//
// # An earlier restoration
//
// Every history has three readings ([Reading]): nothing was done, the car was painted
// over its rust, or the car was renewed. Package damage decides between them. The year
// of the work may be known; a year before the make counts as the year of make, and one
// after the year of asking as the year of asking. Otherwise the work was done half the
// car's age ago, but at most 25 years ago. The period in which the work falls keeps its
// middle year for the salt.
//
// # Guarantees
//
// The weights of the histories sum to 1 within rounding. Histories are ordered by
// decreasing weight, then by content, and the order is the same on every build. Equal
// histories are merged into one, and so are neighbouring periods with the same effect.
// There are at most [MaxHistories]; reduce.go describes how histories are joined to
// stay within that. Joining never mixes ages or last climates. Histories with equal
// [History.Life] differ in every μ by the same amount. Errors are *strict.Error with
// paths of the car file.
//
// For a fixed year of make, none of the following makes μ smaller in any reading: more
// years, an additional period before the others, a harsher climate in place of a milder
// one. An additional milder period after the others can, because the least loss of a
// spot (least_years in data/history.json) follows the last period's climate; this
// matters only while the paint is intact. An earlier year of make may move μ either
// way, because the sheet was thicker.
//
// Climates, places, eras and the meaning of each answer are in data/*.json, with a
// source for every figure.
package exposure
