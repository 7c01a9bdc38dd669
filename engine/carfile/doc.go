// Package carfile is the file of one car: what is known of it, in the order in
// which it became known.
//
// Start with [Decode] and [Car]; [Car.Text] writes the file. [Car.Faults] lists
// the entries that cannot stand on a body, each with its path; everything else
// still counts. [Car.Known] and [Car.Decided] turn what was recorded up to a stage
// into evidence for the odds and into what is fixed for the work, and [Car.Cut] is
// the car as it was known at an earlier stage. [Car.Notes] names what an older file
// does not say, or says in words that are read as others.
//
// The file holds no name, no number plate and no identity number.
package carfile
