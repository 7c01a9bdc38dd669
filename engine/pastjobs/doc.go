// Package pastjobs holds a shop's finished jobs: what was known of each car, what was
// found and what it cost in the end. It scores the ranges and says what can be learned
// from them.
//
// Start with [Decode] and [Jobs]. [Jobs.Score] works out one job: where its final price
// fell in its own first range, at the rates of its day and by a model that has not seen
// the job, and what its survey and hours say about the starting figures. It is a pure
// function of the file, so the prompt works out many jobs at once on all cores, and a
// page works them out one after another. [Jobs.Sum] combines the scores. [Learn] turns
// them into figures that the shop may use (package rates stores them), shrunk towards
// the starting figures while there are few jobs. The statistics, which know nothing of
// cars, are in package scores below this one.
//
// What is learned, and from what:
//
//   - The depth of rust of each pocket group, from surveys of bare metal. A job
//     counts only if its survey records every part of the group that bare metal shows,
//     because someone who records only what is bad would teach that everything is bad.
//     Closed boxes never count, because they are opened where something is suspected.
//   - The hours of each trade, from hours worked against those expected after the
//     survey. A factor on hours is also the median of the whole-car factors.
//   - What the figures have wrong in all, and how much jobs grow, from the price of the
//     work after the strip against what is left after all other figures are learned.
//   - The spread of the depth of rust, from how far complete surveys were from what
//     was expected.
package pastjobs
