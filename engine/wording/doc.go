// Package wording turns the values of package session into sentences and amounts, in
// US or UK words. It is the only package of the engine that writes prose.
//
// Start with [For] and its methods. Each returns one finished text; an empty text means
// that there is nothing to say. Texts that do not depend on the shop are functions or
// constants. Lists of plain sentences and the cautions, with their sources, are in
// data/words.json.
//
// The files build on one another: caution.go, text.go, amounts.go, shares.go and names.go come
// first, then shop.go, strip.go, jobs.go, ranges.go and range.go, then one file for each
// kind of answer. Of these only tally.go and todo.go are used by others.
package wording
