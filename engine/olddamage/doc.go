// Package olddamage stands for what earlier accidents and earlier hands have left in a
// car besides rust: hard hits and how they were mended, the hand that replaced panels
// and laid patches, skins warped by rough blasting, a body out of square, cracks and
// packed boxes.
//
// Start with [Starting] and [Figures.Condition]. Three things are independent of each
// other and of the rust, given the state of the car's earlier repairs (R in package
// damage):
//
//   - Hard hits: none, one, two or more (counted as two), from a Poisson law whose mean
//     goes by the years on the road and by R; two hits are in different zones; each was
//     mended well, roughly or crooked. These are 1 + 5·3 + 10·9 = 106 states for each R.
//     The car is out of square where a zone is crooked, or because it has sagged.
//   - The earlier hand, good, fair or poor. It decides what is wrong with each part that
//     was replaced, and whether a patch is brazed.
//   - Whether the car was blasted or burnt off before.
//
// [Odds] is exact: [Odds.OfRepairs] is the likelihood of the evidence for each R, a sum
// over small tables that goes where the prior of R stands ([damage.Known]). After that R
// is drawn with the rust, and the rest of this given R and the evidence.
//
// Figures are in data/olddamage.json with their sources. A shop may replace any of them.
package olddamage
