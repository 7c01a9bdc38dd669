// Package scores says how ranges came out once the jobs were finished, and what
// can be learnt from that.
//
// Start with [Finished] and [Count]: where each finished job fell against its own
// first range. [Coverage.Judge] says whether that agrees with what the range
// promised; [CRPS], [IntervalScore] and [PIT] are the figures for a statistician.
// [Ratios] compares what was found with what was expected, group by group.
// [Learn] turns the same comparison into a shift that the shop may adopt, drawn
// towards no shift at all while the jobs are few; [LeaveOneOut] predicts each job
// from the others, and [Compare] says whether that beats the starting figures.
//
// # Guarantees
//
//   - Pure functions: no clock, no randomness of their own, no state.
//   - Same bits everywhere: products are written float64(x*y), and of the
//     transcendental functions only those of package chance are used.
//   - Nothing is said about fewer than [LeastJobs] finished jobs.
//   - What came out of a file is refused with an error that names the job and
//     the group. A call that only a programming mistake can make panics.
//
// Money is in minor units, hours in hours, residuals and shifts are differences
// of natural logarithms; a score has the unit of what it scores.
package scores
