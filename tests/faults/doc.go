// Command faults puts faults into a package on purpose, one at a time, and runs the
// package's own tests to see whether they detect them. A fault that survives either
// changes nothing or shows that a test is missing.
//
//	go run ./tests/faults -package ./engine/money -n 50 -seed 1
//
// We wrote our own because it asks more of the tests and costs less than the one
// maintained tool for Go (Gremlins, as of 2026). That one has no constants off by one,
// no if left out and no arguments swapped, which is where arithmetic with money and
// chances goes wrong; and it tries every fault of a module, where a random sample says
// as much.
//
// Start with main.go. mutate.go lists the faults: another comparison, another sign, a
// constant off by one, a condition inverted, an if left out, two arguments swapped.
// Everything happens in a copy, and the seed alone decides which faults are tried. It
// is not part of the ordinary tests, because it takes long.
package main
