// Package figures writes out every figure that the sums rest on with its source,
// from the data files themselves, as the rows of the page "Every figure and its
// source".
//
// Start in entries.go: what counts as an entry. tree.go reads a data file in the
// order in which it is written, words.go says what its members are called, and
// page.go makes the tables.
package figures
