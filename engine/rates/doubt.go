package rates

import (
	_ "embed"
	"slices"
	"sync"

	"underpaint/engine/strict"
)

//go:embed data/doubt.json
var startingDoubt []byte

// DoubtStages are the stages at which the doubt differs, in order: those of a car, and
// "ways" once the ways of repair are chosen.
var DoubtStages = []string{"told", "walk_round", "survey", "opening_up", "ways"}

// Doubt says how far the shop's figures may be wrong in ways that no figure of the model
// stands for: standard deviations of the log of the price of all work after the strip,
// 0 to 0.5, by [DoubtStages].
type Doubt struct {
	Shared map[string]float64 // by which all cars of the shop are off together; finished jobs teach it
	Own    map[string]float64 // by which one car is off alone
	Source string
	Stated bool // the shop's own, not the starting figures
}

const mostDoubt = 0.5

// StartingDoubt returns the figures of a shop that states none of its own. Callers must
// not change them.
func StartingDoubt() *Doubt { return readStarting() }

var readStarting = sync.OnceValue(func() *Doubt {
	f, err := strict.Parse(startingDoubt)
	if err == nil {
		f.Keys("format", "shared_by_all_cars", "of_one_car", "source")
		f.Get("format").OneOf("underpaint doubt 1")
		d := &Doubt{Shared: byStage(f.Get("shared_by_all_cars"), "ways_chosen"), Own: byStage(f.Get("of_one_car"), "ways_chosen"), Source: source(f)}
		if err = f.Err(); err == nil {
			return d
		}
	}
	panic("engine: internal error: the starting doubt: " + err.Error())
})

func readDoubt(f strict.Field) *Doubt {
	f.Keys(doubtKeys...)
	last := DoubtStages[len(DoubtStages)-1]
	return &Doubt{Shared: byStage(f.Get("shared"), last), Own: byStage(f.Get("own"), last), Source: source(f), Stated: true}
}

// byStage reads one figure for each stage; last is what the file calls the last of them. A
// later stage knows more, so its figure is not above that of the one before it.
func byStage(f strict.Field, last string) map[string]float64 {
	names := slices.Clone(DoubtStages)
	names[len(names)-1] = last
	f.Keys(names...)
	out := map[string]float64{}
	before := mostDoubt
	for n, id := range DoubtStages {
		v := f.Get(names[n]).Number(0, mostDoubt)
		if v > before {
			f.Get(names[n]).Complain("no more than at the stage before it, " + plain(before))
		}
		out[id], before = v, v
	}
	return out
}

// Growth is the growth of a job, in per cent of its work after the strip, that the range
// includes at a stage before jobs have taught another: the shop's allowance, unless it is
// set apart.
func (r *Rates) Growth(stage string) float64 {
	if !r.Allowance.InRange {
		return 0
	}
	return r.GrowthAllowed(stage)
}

// GrowthAllowed is the shop's allowance at a stage, in per cent, in the range or not.
func (r *Rates) GrowthAllowed(stage string) float64 {
	p := r.Allowance.After
	if slices.Index(DoubtStages, stage) < slices.Index(DoubtStages, "survey") {
		p = r.Allowance.Before
	}
	return p.Published.Float()
}
