// Command faults puts mistakes into a package on purpose, one at a time, and asks
// the package's own tests whether they see them. What survives is either a mistake
// that changes nothing or a test that is missing.
//
//	go run ./tests/faults -package ./engine/money -n 50 -seed 1
//
// It is our own because it asks more of the tests and costs less than the one tool for
// Go that is kept (Gremlins, looked at in 2026): that one has no constants off by one,
// no if left out and no arguments swapped, which is where sums of money and chances go
// wrong, and tries every mistake of a module, where a sample by seed says as much.
//
// Start with main.go; mutate.go lists the mistakes: another comparison, another
// sign, a constant off by one, a condition turned round, an if left out, two
// arguments swapped. Everything is done in a copy; which mistakes are tried hangs on
// the seed alone. It is no part of the ordinary tests, for it takes long.
package main
