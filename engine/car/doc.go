// Package car describes car bodies: their parts, where each is, which neighbours it
// shares water with, what hides what, and how much work each way of repairing it takes.
// It only reads and checks data; it computes nothing about rust or money.
//
// Start with [Body] and [Load]. A body is one of six generic patterns, not measured from
// any car. A [Part] is a kind of part ("inner sill"); an [Item] is a particular one
// ("inner sill, left"). A [Pocket] is the set of items that share the same water and
// dirt. Pockets that mirror each other form a [Group].
//
// The figures are in data/*.json, each with its source. Nearly all are assumptions, and
// the pages say so. [Words] holds the two sets of part names; a shop uses one set and
// never both on one page.
package car
