// Package wording turns the values of package session into sentences and amounts, in
// US or UK words: the only place in the engine with prose.
//
// Start with [For] and its methods. Each gives one ready text; the empty text says that
// there is nothing to say. What does not depend on the shop is a function or a
// constant. Lists of plain sentences and the cautions, with their sources, are in
// data/words.json.
//
// The files build on one another: text.go, amounts.go, shares.go and names.go, then
// shop.go, strip.go, jobs.go, ranges.go and range.go, then one file for each kind of
// answer, none of which uses another except tally.go and todo.go.
package wording
