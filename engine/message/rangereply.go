package message

import (
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/exposure"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// view is how the page wants the range shown.
type view struct {
	axisAtLeast int64
	before      *before
}

type before struct {
	low, high money.Minor
	answer    string
}

// Rows are the ranges of the car in hand, one for each body and standard.
func (s *Session) Rows() (rows []Row) {
	for k := range s.job.runs {
		b := &s.job.runs[k]
		for n := range b.tables {
			rows = append(rows, s.row(b, n))
		}
	}
	return rows
}

// Cars is the number of imagined cars behind each range; the smallest, where
// several bodies are asked about.
func (s *Session) Cars() int {
	n := s.job.runs[0].run.Cars()
	for k := range s.job.runs {
		n = min(n, s.job.runs[k].run.Cars())
	}
	return n
}

func (s *Session) rangeReply(id int64, state State, v view) []byte {
	rows := s.Rows()
	dearest := 0.0
	for _, r := range rows {
		dearest = max(dearest, r.Exact.Dots[19])
	}
	a := newAxis(s.Rates.Currency, dearest, v.axisAtLeast)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "range")
		w.Member("state", string(state))
		w.Key("imagined_cars")
		w.Whole(int64(s.Cars()))
		w.Member("imagined_cars_text", grouped(int64(s.Cars())))
		w.Key("seed")
		w.Whole(Seed)
		w.Member("check_code", s.Rates.CheckCode())
		w.Member("car_line", s.CarLine())
		w.Key("axis")
		w.Object(func() { a.write(w) })
		w.Key("rows")
		w.Array(func() {
			for k := range rows {
				rows[k].MovedLine = s.moved(&rows[k], v.before)
				w.Object(func() { rows[k].write(w, a) })
			}
		})
		w.Texts("not_in_it", s.NotInIt())
		s.writeCautions(w)
		w.Member("how_sure", s.HowSure(state, rows))
		w.Texts("own_record", s.OwnRecord())
		w.Texts("warnings", s.Warnings())
		w.Texts("known_limits", s.inWords(s.text.limits))
	})
	return w.Bytes()
}

// eachPriced says in how many turns an imagined car is priced.
var eachPriced = "each priced " + strconv.Itoa(estimate.Turns) + " times as its work may go"

// HowSure says on how many imagined cars the range rests, and how good it is.
func (s *Session) HowSure(state State, rows []Row) string {
	line := "Worked out on " + grouped(int64(s.Cars())) + " imagined cars, " + eachPriced + "; " + rows[0].GoodTo + "."
	switch state {
	case Rough, Refining:
		return "About, still being worked out. " + line
	case BudgetEnded:
		return "Not as exact as it should be: the sums stopped at their limit. " + line
	}
	return line
}

// OwnRecord says how the shop's earlier ranges came out, where it publishes that,
// and what of its own it has put in the place of starting figures.
func (s *Session) OwnRecord() (out []string) {
	if p := s.Rates.Past; p != nil {
		out = append(out, "Of "+jobsText(p.Jobs())+" that this shop finished from "+date(p.From)+" to "+date(p.To)+", "+strconv.Itoa(p.Above)+
			" came out above the range first given, "+strconv.Itoa(p.Below)+" below it and "+strconv.Itoa(p.Inside)+" inside; 2 in 10 are to be expected outside.")
	}
	if n := s.Rates.Own.Figures(); n > 0 {
		one := "figures rest"
		if n == 1 {
			one = "figure rests"
		}
		out = append(out, strconv.Itoa(n)+" "+one+" on this shop's own finished jobs, as of "+date(s.Rates.Own.LearntOn)+"; all others are starting figures.")
	}
	return out
}

// NotInIt lists what the range leaves out, the scope's own first.
func (s *Session) NotInIt() []string {
	var own []string
	switch s.job.car.Scope {
	case "outside_only":
		own = append(own, "Metal behind the outer skins, underneath and inside, unless an outer panel forces it open")
	case "metalwork_only":
		own = append(own, s.say("Body and block, paint and final assembly", "Filling, flatting, paint and final assembly"))
	}
	return append(own, s.inWords(s.text.notInIt)...)
}

// Warnings are those of the rates, and what is unusual about the car.
func (s *Session) Warnings() []string {
	out := warningTexts(s.Rates)
	if len(s.job.runs) > 1 {
		out = append(out, "Each body has a range of its own: they are never mixed.")
	}
	return out
}

// warningTexts are the warnings of the rates without what hangs on the day: the
// page says itself when rates have run out.
func warningTexts(r *rates.Rates) (out []string) {
	for _, w := range r.Warnings("") {
		out = append(out, w.Text)
	}
	return out
}

// moved says what the last answer did to the range.
func (s *Session) moved(r *Row, b *before) string {
	if b == nil || b.high <= b.low || (b.low == r.Low && b.high == r.High) {
		return ""
	}
	c := s.Rates.Currency
	line := b.answer + " moved the range from " + c.TextWhole(b.low) + "–" + c.TextWhole(b.high) + " to " + r.LowText + "–" + r.HighText + "."
	if r.High-r.Low > b.high-b.low {
		line += " That made it wider: more can be wrong with such a car, or less is known of it."
	}
	return line
}

// CarLine is the car in words.
func (s *Session) CarLine() string {
	c := s.job.car
	words := s.Rates.Words
	parts := []string{}
	for k := range s.job.runs {
		parts = append(parts, s.job.runs[k].body.Name.In(words))
	}
	line := strings.Join(parts, " or ")
	switch {
	case c.Made.Year != 0:
		line += " · " + strconv.Itoa(c.Made.Year)
	case c.Made.Decade != 0:
		line += " · " + strconv.Itoa(c.Made.Decade) + "s"
	default:
		line += " · year not known"
	}
	line += " · " + s.placeName(c.Life[0])
	if n := len(c.Life); n > 1 {
		line += " and " + strconv.Itoa(n-1) + " more"
	}
	if c.Standard == carfile.NotSure {
		return line + " · all three standards"
	}
	return line + " · " + c.Standard + " standard"
}

func (s *Session) placeName(l carfile.Life) string {
	if p, ok := exposure.PlaceOf(l.Place); ok {
		return car.Words(p.Name).In(s.Rates.Words)
	}
	if c, ok := exposure.ClimateOf(l.Place); ok {
		return lowerFirst(car.Words(c.Name).In(s.Rates.Words))
	}
	return "place not known"
}

var standardNames = map[string]string{"driver": "Driver standard", "show": "Show standard", "concours": "Concours standard"}

func (s *Session) label(b *bodyRun, k int) string {
	standard := standardNames[b.standards[k]]
	if len(s.job.runs) == 1 {
		return standard
	}
	return b.body.Name.In(s.Rates.Words) + ", " + lowerFirst(standard)
}

// Reply is the range of the car in hand as the page gets it, with a plain view.
func (s *Session) Reply(id int64, state State) []byte { return s.rangeReply(id, state, view{}) }

// RatesLine names the rates by their dates.
func (s *Session) RatesLine() string {
	return "rates of " + date(s.Rates.RatesOf) + ", valid until " + date(s.Rates.ValidUntil)
}

// LocalCaution is the caution that stands at the foot of everything.
func (s *Session) LocalCaution() string {
	for _, c := range s.text.cautions {
		if c.id == "local" {
			return c.text.In(s.Rates.Words)
		}
	}
	return ""
}
