// Package car describes car bodies: their parts, where each sits, what water it
// shares with its neighbours, what hides what, and what each way of mending it
// takes. It is data with checks, and computes nothing about rust or money.
//
// Start with [Body] and [Load]. A body is one of six generic patterns measured
// from no car. A [Part] is a kind ("inner sill"), an [Item] one of them in its
// place ("inner sill, left"). A [Pocket] is the set of items that share the same
// water and dirt; pockets that mirror each other form a [Group].
//
// The figures live in data/*.json with their source beside them; nearly all are
// assumptions, and the pages say so. [Words] carries the two sets of part names:
// a shop uses one set, never both on one page.
package car
