// Package session holds one open shop and one open car and answers every question about
// them with Go values. It writes no JSON and no sentences.
//
// Start with [New], [Session.Open] and [Session.Ranges]. Methods that take long do a
// slice of the work at a time; call them again until their state is no longer
// [Refining]. [Session] caches conditioned models by the evidence about the car, written
// as text, so all rows with the same evidence share one model.
//
// Money is in minor units, hours in hours, shares from 0 to 1. Errors about a car, the
// rates or an amount are *strict.Error with the path in the user's own file.
//
// The files build on one another in this order, and none uses a later one:
//
//	state.go rounding.go order.go axis.go     how figures are rounded and drawn
//	anotherbody.go                            what another body would take
//	undecided.go doubt.go promise.go          what is left to choose, how far figures are doubted, how long prices hold
//	shop.go places.go bodies.go               what a shop is, and what it prices
//	walk.go oldwalk.go sheet.go               what there is to record on a body
//	tally.go todo.go                          what is recorded, and what to decide
//	models.go opencar.go stageranges.go       the cache; a car's range, now and by stage
//	oldoutcome.go outcome.go checks.go …      what checks and stages are worth
//	varianceshares.go                         what makes a range wide
//	figurescode.go                            which figures of the program they rest on
//	session.go                                all of it together
//	ranges.go cover.go plan.go decide.go …    one file for each question about a car
//	comparison.go ratescheck.go outline.go …  about rates, prices and past jobs
package session
