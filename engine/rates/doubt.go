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
		f.Keys(append([]string{"format"}, doubtKeys...)...)
		f.Get("format").OneOf("underpaint doubt 1")
		d := doubtIn(f)
		if err = f.Err(); err == nil {
			return d
		}
	}
	panic("engine: internal error: the starting doubt: " + err.Error())
})

func readDoubt(f strict.Field) *Doubt {
	f.Keys(doubtKeys...)
	d := doubtIn(f)
	d.Stated = true
	return d
}

func doubtIn(f strict.Field) *Doubt {
	return &Doubt{Shared: byStage(f.Get("shared")), Own: byStage(f.Get("own")), Source: source(f)}
}

// byStage reads one figure for each stage. A later stage knows more, so its figure is not
// above that of the one before it.
func byStage(f strict.Field) map[string]float64 {
	f.Keys(DoubtStages...)
	out := map[string]float64{}
	before := mostDoubt
	for _, id := range DoubtStages {
		v := f.Get(id).Number(0, mostDoubt)
		if v > before {
			f.Get(id).Complain("no more than at the stage before it, " + plain(before))
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
