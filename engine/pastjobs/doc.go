// Package pastjobs holds a shop's finished jobs: what was known of each car, what
// was found, what it came to; how the ranges came out; and what can be learnt.
//
// Start with [Decode] and [Jobs]. [Jobs.Score] works out one job: where it fell in
// its own first range, at the rates of its day, by a model that has not seen it,
// and what its survey and hours say about the starting figures. It is a pure
// function of the file, so the prompt does many at once on all cores and a page one
// after another. [Jobs.Sum] puts the scores together, and [Learn] turns them into
// figures that the shop may use (package rates keeps them), drawn towards the
// starting figures while the jobs are few. The statistics, which know nothing of cars,
// are in package scores below this one.
//
// What is learnt, and on what it rests:
//
//   - The depth of rust of each pocket group, from strip surveys. Only a job whose
//     survey records every part of the group that bare metal shows counts: who
//     records only what is bad would teach that everything is bad. Closed boxes
//     never count, since they are opened where something is suspected.
//   - The hours of each trade, from hours worked against those expected after the
//     survey. A factor on hours is also the median of the whole-car factors.
//   - The spread of the depth of rust, from how far whole surveys fell from what was
//     to be expected.
package pastjobs
