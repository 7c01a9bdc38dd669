// Package scores says how ranges came out once the jobs were finished, and what can be
// learned from that.
//
// Start with [Finished] and [Count]: where each finished job fell in its own first
// range. [Coverage.Judge] says whether that agrees with what the range promised;
// [CRPS], [IntervalScore] and [PIT] are the figures for a statistician. [Ratios]
// compares what was found with what was expected, group by group. [Learn] turns the
// same comparison into a shift that the shop may adopt, shrunk towards no shift while
// there are few jobs. [LeaveOneOut] predicts each job from the others, and [Compare]
// says whether that beats the starting figures.
//
// # Guarantees
//
//   - The functions are pure: they have no clock, no randomness of their own and no
//     state.
//   - Results have the same bits everywhere: products are written float64(x*y), and
//     the only transcendental functions are those of package chance.
//   - Nothing is said about fewer than [LeastJobs] finished jobs.
//   - A bad figure from a file is refused with an error that names the job and the
//     group. A call that only a programming error can make panics.
//
// Money is in minor units, hours are in hours, residuals and shifts are differences of
// natural logarithms; a score has the unit of what it scores.
package scores
