package rates

import (
	"slices"
	"strconv"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// Own holds figures that the shop has learned from its finished jobs and chosen to use.
// A factor of 1 with no jobs is the starting figure.
type Own struct {
	LearntOn string // YYYY-MM-DD
	JobsCode string // check code of the past jobs that taught them
	Rust     []OwnRust
	Hours    [car.Trades]OwnFigure
	Spread   OwnFigure // of the depth of rust: multiplies the model's sigma
	Doubt    *OwnDoubt // nil = the doubt and the growth that the rates state
	Source   string
}

// OwnRust shifts the depth of rust of one pocket group: Factor multiplies every median
// loss.
type OwnRust struct {
	Group string
	OwnFigure
}

// OwnFigure is a factor on a starting figure and the number of jobs behind it.
type OwnFigure struct {
	Factor float64
	Jobs   int
}

// Past says how the shop's earlier ranges came out, as computed from its past jobs: the
// number of jobs below, inside and above their own first range.
type Past struct {
	Below, Inside, Above int
	From, To             string // dates on which the first and the last job were finished
	JobsCode             string
}

// Jobs is the number of finished jobs.
func (p Past) Jobs() int { return p.Below + p.Inside + p.Above }

// Bounds of learned figures, and the fewest jobs about which anything is published.
// Assumption: a shop whose floors are beyond two and a half times the starting figures
// has other cars than these, or a slip in its file.
const (
	LeastOwn, MostOwn = 0.4, 2.5
	leastPast         = 10
	mostJobs          = 100_000
)

func readOwn(f strict.Field) *Own {
	o := NothingLearnt()
	if f.IsNull() {
		return o
	}
	f.Keys(ownKeys...)
	o.LearntOn, o.JobsCode, o.Source = f.Get("learnt_on").Date(), f.Get("jobs_code").Text(20), source(f)
	for _, item := range f.Get("rust").Items() {
		item.Keys(ownRustKeys...)
		one := OwnRust{item.Get("group").OneOf(groupIDs()...), readOwnFigure(item)}
		if slices.ContainsFunc(o.Rust, func(r OwnRust) bool { return r.Group == one.Group }) {
			item.Get("group").Complain("each group once")
		}
		o.Rust = append(o.Rust, one)
	}
	hours := f.Get("hours")
	hours.Keys(car.TradeIDs[:]...)
	for t, id := range car.TradeIDs {
		if hours.Has(id) {
			hours.Get(id).Keys(ownFigureKeys...)
			o.Hours[t] = readOwnFigure(hours.Get(id))
		}
	}
	if f.Has("spread") {
		f.Get("spread").Keys(ownFigureKeys...)
		o.Spread = readOwnFigure(f.Get("spread"))
	}
	if f.Has("doubt") {
		o.Doubt = readOwnDoubt(f.Get("doubt"))
	}
	return o
}

func readOwnFigure(f strict.Field) OwnFigure {
	return OwnFigure{f.Get("factor").Number(LeastOwn, MostOwn), f.Get("jobs").Whole(1, mostJobs)}
}

// groupIDs lists the pocket groups of all bodies, each once.
var groupIDs = sync.OnceValue(func() (ids []string) {
	for _, id := range car.BodyIDs {
		b, err := car.Load(id)
		if err != nil {
			panic("engine: internal error: body " + id + ": " + err.Error())
		}
		for _, g := range b.Groups {
			if !slices.Contains(ids, g.ID) {
				ids = append(ids, g.ID)
			}
		}
	}
	return ids
})

// readPast reads how earlier ranges came out; nil when nothing is published.
func readPast(f strict.Field) *Past {
	if f.IsNull() {
		return nil
	}
	f.Keys(pastKeys...)
	p := &Past{Below: f.Get("below").Whole(0, mostJobs), Inside: f.Get("inside").Whole(0, mostJobs), Above: f.Get("above").Whole(0, mostJobs),
		From: f.Get("from").Date(), To: f.Get("to").Date(), JobsCode: f.Get("jobs_code").Text(20)}
	if n := p.Jobs(); n < leastPast {
		f.ComplainFound(strconv.Itoa(n)+" jobs", "null, or at least "+strconv.Itoa(leastPast)+" jobs; fewer say too little")
	}
	if p.To < p.From {
		f.Get("to").Complain("a date not before from, " + p.From)
	}
	return p
}

// Figures is the number of figures that are the shop's own.
func (o *Own) Figures() int {
	n := len(o.Rust)
	for _, f := range append(o.Hours[:], o.Spread) {
		if f.Jobs > 0 {
			n++
		}
	}
	if o.Doubt != nil {
		n++
	}
	return n
}

// RustFactor is the factor on the depth of rust of a pocket group.
func (o *Own) RustFactor(group string) float64 {
	for _, r := range o.Rust {
		if r.Group == group {
			return r.Factor
		}
	}
	return 1
}

// With returns the same rates with other learned figures; nil means the starting
// figures. The check code remains that of the file.
func (r *Rates) With(own *Own) *Rates {
	out := *r
	if out.Own = own; own == nil {
		out.Own = NothingLearnt()
	}
	return &out
}

// NothingLearnt returns the starting figures.
func NothingLearnt() *Own {
	o := &Own{Spread: OwnFigure{Factor: 1}}
	for t := range o.Hours {
		o.Hours[t].Factor = 1
	}
	return o
}
