// Package pricing turns the condition of every item of a car into the work to be done,
// the hours it takes and its price at a shop's rates.
//
// Start with [NewTable], which makes a flat price table for one body, one standard, one
// scope and one shop's rates. [Table.Price] takes one simulated car and a set of
// uniforms and fills a [Bill] without allocating.
//
// [Table.With] fixes what is no longer uncertain: chosen ways, findings outside the
// odds ([Findings]), and hours already worked in the strip and survey. For each trade
// entered, those hours are one normal observation of the car's factors of hours, and
// the charge of the stage is then known. The conditioning is exact, given that the
// stage's hours of a trade are taken as lognormal with the mean and variance of its
// lines (tests show that this moves the log of a factor by at most .01). Hours only
// mean something together with the wish under which they were worked: [Table.SameStrip]
// says on which other tables they mean the same. [Table.Allowed] and [Table.Card] list
// what can be done about one item.
//
// [Table.Supplied] also draws how parts come: which are missing, how new-made panels fit and
// what state used parts are in (supply.go, figures in data/parts.json). A part recorded as
// missing is replaced whole ([Missing]), and one whose panel was tried comes as recorded
// (Decided.PanelFit), on every table.
//
// [Table.Price] works in this order:
//   - It draws each item's way of repair, or takes the chosen one. A missing item gets what
//     a gone one would, but at least a whole part.
//   - It raises metal that has to be opened to reach other metal, until nothing
//     changes.
//   - It fits a full panel where the pieces would cost clearly more (panels.go), and
//     drops what full panels cover.
//   - It adds up the area of what is replaced, which is not primed with the rest
//     (faces.go).
//   - It credits the seam that two new neighbours share.
//   - It charges each line for getting in once.
//
// Where the rates say how prices rise, each stage of the job is charged at the prices of
// its own day (overtime.go): [Bill.Rise] is what that adds.
//
// A table with nothing decided gives the same bills as the table it came from, to the
// bit. All tables of one body, rates and scope take the same uniforms, so decisions are
// compared on the same simulated cars.
//
// The hours of every line are rounded to a thousandth of an hour, so that adding them
// is exact, and each total is priced with one rounding (package money). Pricing a drawn
// list of work ([Table.Explain]) in decimals gives the bill to the minor unit.
//
// Figures are in data/work.json, data/parts.json and the body files, with their sources.
package pricing
