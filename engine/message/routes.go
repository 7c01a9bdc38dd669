package message

import "io"

// What is asked, by who asks. A program that reaches only one of these tables is
// linked without what answers the others, which is why a customer's engine is
// smaller than a shop's: they are plain tables that nothing joins before the
// program runs.
var (
	customerHandlers = []handler{
		{name: "open", engine: openRates},
		{name: "range", rated: askRange},
		{name: "cover", rated: askCover},
		{name: "fits", rated: askFits},
		{name: "sheet", car: askSheet},
		{name: "worth", car: askWorth},
		{name: "wide", car: askWide},
		{name: "plan", car: askPlan},
		{name: "decide", car: askDecide},
		{name: "check_car", engine: checkCar},
	}
	shopCarHandlers = []handler{
		{name: "tally", car: askTally},
		{name: "look_again", car: askLookAgain},
		{name: "odds", car: askOdds},
		{name: "before_after", car: askBeforeAfter},
		{name: "to_do", car: askToDo},
		{name: "compare_ways", car: askCompareWays},
		{name: "twenty", car: askTwenty},
		{name: "two_ways", car: askTwoWays},
		{name: "suppose", car: askSuppose},
	}
	// These bring the rates that they are about, so none needs "open" first.
	shopRatesHandlers = []handler{
		{name: "check_rates", engine: checkRates},
		{name: "rates_outline", engine: ratesOutline},
		{name: "effect", engine: askEffect},
		{name: "read_prices", engine: readPrices},
		{name: "write_prices", engine: writePrices},
	}
	shopJobsHandlers = []handler{
		{name: "open_jobs", engine: openJobs},
		{name: "score", engine: scoreJobs},
		{name: "read_jobs", engine: readJobs},
		{name: "write_jobs", engine: writeJobs},
		{name: "adopt", engine: adopt},
	}
)

// Customer is the engine of the customer's page: it answers what that page asks,
// in the same bytes as [Engine], and refuses the rest. The zero Customer is ready.
type Customer struct {
	Reports io.Writer // as in Engine
	engine  Engine
}

// Ask answers one request with one reply, as [Engine.Ask] does. What a panic told goes
// to Reports alone.
func (c *Customer) Ask(request []byte) []byte {
	c.engine.Reports = c.Reports
	return c.engine.answer(request, false, customerHandlers)
}

// Ask answers one request with one reply; it never fails and never panics. The
// reply carries the request's id, or 0 when that could not be read. Of a mistake in the
// program it tells in members "panic" and "stack", and Reports is told the same.
func (e *Engine) Ask(request []byte) []byte {
	return e.answer(request, true, customerHandlers, shopCarHandlers, shopRatesHandlers, shopJobsHandlers)
}
