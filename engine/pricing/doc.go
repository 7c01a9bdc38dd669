// Package pricing turns the condition of every item of a car into what is done
// about it, how long that takes and what it costs at a shop's rates.
//
// Start with [NewTable]: one body, one standard, one scope and one shop's rates
// make a flat price table. [Table.Price] takes one imagined car and a set of
// uniforms and returns its [Bill], with no allocation.
//
// [Table.With] fixes what is no longer left to the odds: ways that were chosen,
// findings outside the odds ([Findings]), and hours really worked in the strip and
// survey. Those hours are one normal observation of the car's own factors of hours
// for each trade entered; conditioning on them is exact, taking the stage's hours
// of a trade as lognormal with the mean and variance of its lines (which moves the
// log of a factor by .01 at most, tested), and the charge of the stage is then
// known. They are read with the wish under which they were worked: [Table.SameStrip]
// says on which other tables they mean the same. [Table.Allowed] and [Table.Card] say what can be done about one item.
//
// The order is fixed: each item's way of mending is drawn or chosen; metal that
// has to be opened to reach other metal is raised again and again until nothing
// changes; a full panel is fitted where its pieces would cost clearly more
// (panels.go); what a full panel covers is dropped; then getting in, once each;
// then the credit for seams that two new neighbours share.
//
// A table with nothing decided gives the bills of the table it came from, to the
// bit, and every table of one body, rates and scope takes the same uniforms, so
// that decisions are compared on the same imagined cars.
//
// Hours of every line are rounded to a thousandth of an hour, so that adding
// them is exact, and each sum is priced with one rounding (package money). The
// price of a drawn list of work ([Table.Explain]) reckoned in decimals is the
// bill to the minor unit.
//
// Figures are in data/work.json and in the body files, with their sources.
package pricing
