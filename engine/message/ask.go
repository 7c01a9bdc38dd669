package message

import (
	"errors"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/carfile"
	"underpaint/engine/money"
	"underpaint/engine/record"
	"underpaint/engine/strict"
)

// Engine answers requests. It starts without rates: the first request must be
// "open". The zero Engine is ready.
type Engine struct {
	// Reports takes what a panic told, one text for each; nil means standard error.
	Reports io.Writer

	session *Session
	effect  *effectJob
	jobs    *record.Jobs
	scoring *scoring
}

// answer answers a request that is in one of the tables. forShop says whether a panic
// is told in the reply too.
func (e *Engine) answer(request []byte, forShop bool, tables ...[]asking) (reply []byte) {
	id := int64(0)
	defer func() {
		if p := recover(); p != nil {
			m := mistakeOf(p)
			m.report(e.Reports)
			reply = m.broken(id, forShop)
		}
	}()
	f, err := strict.ParseRequest(request)
	if err != nil {
		return refused(id, "request", err)
	}
	id = int64(f.Get("id").Whole(0, 1<<30))
	var names []string
	all := slices.Concat(tables...)
	for _, a := range all {
		names = append(names, a.name)
	}
	ask := f.Get("ask").OneOf(names...)
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	a := all[slices.Index(names, ask)]
	if a.engine != nil {
		return a.engine(e, id, f)
	}
	if e.session == nil {
		return refused(id, "rates", &strict.Error{Path: "rates", Found: "nothing", Expected: "the shop's rates to be opened first"})
	}
	if a.rated != nil {
		return a.rated(e.session, id, f)
	}
	return e.session.askOfCar(id, a, f)
}

func (e *Engine) open(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "rates")
	text := f.Get("rates").Document(strict.MaxBytes)
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	s, err := NewSession([]byte(text))
	if err != nil {
		return refused(id, "rates", err)
	}
	e.session = s
	return s.opened(id)
}

func checkCar(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "car")
	c := carfile.Read(f.Get("car"))
	if err := f.Err(); err != nil {
		return refused(id, "car", err)
	}
	if wrong := c.Check(); len(wrong) > 0 {
		return refused(id, "car", wrong[0])
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "car_ok")
		w.Member("canonical", string(c.Text()))
		notes := c.Notes()
		w.Objects("notes", len(notes), func(n int) {
			w.Member("path", notes[n].Path)
			w.Member("text", notes[n].Text)
		})
	})
	return w.Bytes()
}

func (s *Session) askRange(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "car", "effort", "axis_at_least", "before", "quiet")
	effort := f.Get("effort").OneOf("rough", "settle")
	view := view{}
	if f.Has("axis_at_least") {
		view.axisAtLeast = int64(f.Get("axis_at_least").Number(0, 1e15))
	}
	if f.Has("before") {
		b := f.Get("before")
		b.Keys("low_minor", "high_minor", "answer")
		view.before = &before{money.Minor(b.Get("low_minor").Number(0, 1e15)), money.Minor(b.Get("high_minor").Number(0, 1e15)), b.Get("answer").Text(200)}
	}
	quiet := f.Has("quiet") && f.Get("quiet").Bool()
	c := carfile.Read(f.Get("car"))
	if err := f.Err(); err != nil {
		return refused(id, "car", err)
	}
	if err := s.Open(c); err != nil {
		return refused(id, "car", err)
	}
	state := Rough
	if effort == "settle" {
		state = s.step()
	} else {
		state = s.rough()
	}
	if quiet && state == Refining {
		return s.refining(id)
	}
	return s.rangeReply(id, state, view)
}

// refining is the short reply of a range that goes on and need not be shown yet:
// saying a range costs about as much as another block of imagined cars.
func (s *Session) refining(id int64) []byte {
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "range")
		w.Member("state", string(Refining))
		w.Key("imagined_cars")
		w.Whole(int64(s.Cars()))
	})
	return w.Bytes()
}

// askCover says in how many cars of ten a sum would be enough.
func (s *Session) askCover(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "sum")
	m, err := s.sumAsked(f)
	if err != nil {
		return refused(id, "sum", err)
	}
	if s.job == nil || len(s.job.runs) != 1 || s.job.runs[0].run.Rows() != 1 || s.job.runs[0].run.Cars() == 0 {
		return refused(id, "sum", &strict.Error{Path: "sum", Found: "no single range", Expected: "one body and one standard chosen first"})
	}
	share := s.job.runs[0].run.Below(0, int64(m))
	line := s.Rates.Currency.TextWhole(m) + ": " + coverWords(share)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "cover")
		w.Member("text", line)
	})
	return w.Bytes()
}

// sumAsked reads the sum of money of a request.
func (s *Session) sumAsked(f strict.Field) (money.Minor, error) {
	text := f.Get("sum").Decimal()
	if f.Err() != nil {
		return 0, f.Err()
	}
	d, err := money.Parse(text)
	if err != nil || d.Less(money.Decimal{}) {
		return 0, &strict.Error{Path: "sum", Found: text, Expected: "an amount of money"}
	}
	m, _ := s.Rates.Currency.Round(d)
	return m, nil
}

func coverWords(share float64) string {
	switch {
	case share < 0.05:
		return "fewer than 1 car in 20 like yours would come out below this."
	case share > 0.95:
		return "more than 19 cars in 20 like yours would come out below this, and some would still cost more."
	}
	n := min(9, max(1, int(math.Floor(float64(share*10)+0.5))))
	if n == 1 {
		return "about 1 car in 10 like yours would come out below this."
	}
	return "about " + strconv.Itoa(n) + " cars in 10 like yours would come out below this."
}

func head(w *strict.Writer, id int64, kind string) {
	w.Key("id")
	w.Whole(id)
	w.Member("kind", kind)
}

// refused is the reply to what cannot be answered. It never holds a figure.
func refused(id int64, what string, err error) []byte {
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "refused")
		w.Member("what", what)
		var at *strict.Error
		if errors.As(err, &at) {
			// A path within the user's own file, not within the message around it.
			own := *at
			own.Path = strings.TrimPrefix(strings.TrimPrefix(own.Path, "car"), ".")
			writeError(w, &own)
			return
		}
		w.Member("text", err.Error())
	})
	return w.Bytes()
}
