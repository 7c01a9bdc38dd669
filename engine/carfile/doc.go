// Package carfile is the file of one car: what is known of it, in the order in which it
// became known.
//
// Start with [Decode] and [Car]; [Car.Text] writes the file. [Car.Faults] lists the
// entries that cannot be true of a body, each with its path; everything else still
// counts. [Car.Known] turns what was recorded up to a stage into evidence for the odds,
// [Car.Decided] turns it into fixed work, and [Car.Cut] is the car as it was known at
// an earlier stage. [Car.Notes] lists what an older file leaves out, or says in words
// that are now read as others.
//
// The file holds no name, no number plate and no identity number.
package carfile
