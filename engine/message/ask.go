package message

import (
	"io"
	"slices"

	"underpaint/engine/session"
	"underpaint/engine/strict"
)

// Engine answers requests. It starts without rates, so the first request must be "open".
// The zero Engine is ready to use.
type Engine struct {
	// Reports receives one text for each panic; nil means standard error.
	Reports io.Writer

	shop       *openShop
	comparison session.RatesComparison
	jobs       session.PastJobs
}

// handler is the name of a request with the one of three functions that answers it. An
// error that does not name its subject is about the request, or about the car.
type handler struct {
	name   string
	engine func(*Engine, strict.Field) (Reply, error)   // needs no rates to be open
	rated  func(*openShop, strict.Field) (Reply, error) // needs the shop's rates
	car    func(*openShop, carRequest) (Reply, error)   // needs the rates and one car
}

// answer answers a request that is in one of the tables. forShop says whether the reply
// has the details of a panic too.
func (e *Engine) answer(request []byte, forShop bool, tables ...[]handler) (reply []byte) {
	id := int64(0)
	defer func() {
		if p := recover(); p != nil {
			m := mistakeOf(p)
			m.report(e.Reports)
			reply = Encode(id, m.broken(forShop))
		}
	}()
	f, err := strict.ParseRequest(request)
	if err != nil {
		return Encode(id, refused("request", err))
	}
	id = int64(f.Get("id").Whole(0, 1<<30))
	var names []string
	all := slices.Concat(tables...)
	for _, h := range all {
		names = append(names, h.name)
	}
	ask := f.Get("ask").OneOf(names...)
	if f.Err() != nil {
		return Encode(id, refused("request", f.Err()))
	}
	r, about, err := e.handle(all[slices.Index(names, ask)], f)
	if err != nil {
		return Encode(id, refused(about, err))
	}
	return Encode(id, r)
}

// handle calls the function that answers a request. about is the subject of an error that
// does not name its own.
func (e *Engine) handle(h handler, f strict.Field) (r Reply, about string, err error) {
	if h.engine != nil {
		r, err = h.engine(e, f)
		return r, "request", err
	}
	if e.shop == nil {
		return nil, "rates", &strict.Error{Path: "rates", Found: "nothing", Expected: "the shop's rates to be opened first"}
	}
	if h.rated != nil {
		r, err = h.rated(e.shop, f)
		return r, "request", err
	}
	q, err := readCarRequest(f)
	if err == nil {
		r, err = h.car(e.shop, q)
	}
	return r, "car", err
}
