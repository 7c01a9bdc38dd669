package message

import (
	"io"

	"underpaint/engine/strict"
)

// asking is a request by its name, with what answers it: one of the three.
type asking struct {
	name   string
	engine func(*Engine, int64, strict.Field) []byte         // needs no rates to be open
	rated  func(*Session, int64, strict.Field) []byte        // needs the shop's rates
	car    func(*Session, int64, carRequest) ([]byte, error) // needs them, and is about one car
}

// What is asked, by who asks. A program that reaches only one of these tables is
// linked without what answers the others, which is why a customer's engine is
// smaller than a shop's: they are plain tables that nothing joins before the
// program runs.
var (
	customersAsk = []asking{
		{name: "open", engine: (*Engine).open},
		{name: "range", rated: (*Session).askRange},
		{name: "cover", rated: (*Session).askCover},
		{name: "fits", rated: (*Session).fits},
		{name: "sheet", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.sheet(id, q.car) }},
		{name: "worth", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.worthReply(id, q.car, q.whom) }},
		{name: "wide", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.wideReply(id, q.car) }},
		{name: "plan", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.plan(id, q.car) }},
		{name: "decide", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.decide(id, q.car) }},
		{name: "check_car", engine: func(_ *Engine, id int64, f strict.Field) []byte { return checkCar(id, f) }},
	}
	shopsAskOfCars = []asking{
		{name: "tally", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.tally(id, q.car) }},
		{name: "look_again", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.lookAgain(id, q.car) }},
		{name: "odds", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.odds(id, q.car, q.on) }},
		{name: "before_after", car: func(s *Session, id int64, q carRequest) ([]byte, error) {
			return s.beforeAfter(id, q.car, q.effort, q.least)
		}},
		{name: "to_do", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.toDo(id, q.car) }},
		{name: "compare_ways", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.compareWays(id, q.car, q.on) }},
		{name: "twenty", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.twenty(id, q.car) }},
		{name: "two_ways", car: func(s *Session, id int64, q carRequest) ([]byte, error) { return s.twoWays(id, q.car) }},
		{name: "suppose", car: func(s *Session, id int64, q carRequest) ([]byte, error) {
			return s.suppose(id, q.car, q.on, q.condition)
		}},
	}
	// These bring the rates that they are about, so none needs "open" first.
	shopsAskOfRates = []asking{
		{name: "check_rates", engine: func(_ *Engine, id int64, f strict.Field) []byte { return checkRates(id, f) }},
		{name: "rates_outline", engine: func(_ *Engine, id int64, f strict.Field) []byte { return ratesOutline(id, f) }},
		{name: "effect", engine: (*Engine).effectReply},
		{name: "read_prices", engine: func(_ *Engine, id int64, f strict.Field) []byte { return readPrices(id, f) }},
		{name: "write_prices", engine: func(_ *Engine, id int64, f strict.Field) []byte { return writePrices(id, f) }},
	}
	shopsAskOfJobs = []asking{
		{name: "open_jobs", engine: (*Engine).openJobs},
		{name: "score", engine: (*Engine).score},
		{name: "read_jobs", engine: func(_ *Engine, id int64, f strict.Field) []byte { return readJobs(id, f) }},
		{name: "write_jobs", engine: (*Engine).writeJobs},
		{name: "adopt", engine: (*Engine).adopt},
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
	return c.engine.answer(request, false, customersAsk)
}

// Ask answers one request with one reply; it never fails and never panics. The
// reply carries the request's id, or 0 when that could not be read. Of a mistake in the
// program it tells in members "panic" and "stack", and Reports is told the same.
func (e *Engine) Ask(request []byte) []byte {
	return e.answer(request, true, customersAsk, shopsAskOfCars, shopsAskOfRates, shopsAskOfJobs)
}
