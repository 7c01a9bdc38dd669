package message

import "io"

// These tables list the requests by who asks. They are plain tables that nothing joins
// before the program runs, so the linker leaves out the handlers of a table that a
// program does not reach. That makes a customer's engine smaller than a shop's.
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
		{name: "dangers", car: askDangers},
		{name: "twenty", car: askTwenty},
		{name: "two_ways", car: askTwoWays},
		{name: "suppose", car: askSuppose},
	}
	// These requests carry their own rates, so none needs "open" first.
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

// Customer is the engine of the customer's page. It answers the requests of that page
// with the same bytes as [Engine] and refuses all others. The zero Customer is ready to
// use.
type Customer struct {
	Reports io.Writer // as in Engine
	engine  Engine
}

// Ask answers one request with one reply, as [Engine.Ask] does, but writes the details of
// a panic to Reports only.
func (c *Customer) Ask(request []byte) []byte {
	c.engine.Reports = c.Reports
	return c.engine.answer(request, false, customerHandlers)
}

// Ask answers one request with one reply. It never fails and never panics. The reply
// carries the request's id, or 0 when the id cannot be read. After a panic the reply has
// the details in its members "panic" and "stack", and Ask writes the same to Reports.
func (e *Engine) Ask(request []byte) []byte {
	return e.answer(request, true, customerHandlers, shopCarHandlers, shopRatesHandlers, shopJobsHandlers)
}
