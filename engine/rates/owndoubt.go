package rates

import (
	"underpaint/engine/strict"
)

// OwnDoubt is what the shop's finished jobs say about the growth of a job and about the
// doubt that is left, at the stage that they were read from. Other stages move with it:
// the growth by as much, the doubts in proportion.
type OwnDoubt struct {
	Growth      float64 // per cent of the work after the strip, in place of the allowance
	Shared, Own float64 // as in [Doubt]
	Jobs        int
	From        string // a stage of [DoubtStages]: "told" or "survey"
}

// Bounds of a learned doubt (assumption: beyond them the file has a slip, not a shop).
const (
	LeastGrowth, MostGrowth = -30.0, 60.0
	LeastShared, MostShared = 0.02, 0.3
	LeastAlone, MostAlone   = 0.03, 0.25
)

func readOwnDoubt(f strict.Field) *OwnDoubt {
	f.Keys(ownDoubtKeys...)
	return &OwnDoubt{
		Growth: f.Get("growth_percent").Number(LeastGrowth, MostGrowth),
		Shared: f.Get("shared").Number(LeastShared, MostShared),
		Own:    f.Get("own").Number(LeastAlone, MostAlone),
		Jobs:   f.Get("jobs").Whole(1, mostJobs),
		From:   f.Get("from").OneOf("told", "survey"),
	}
}

func (d *OwnDoubt) write(w *strict.Writer) {
	w.Object(func() {
		for _, one := range []struct {
			name string
			v    float64
		}{{"growth_percent", d.Growth}, {"shared", d.Shared}, {"own", d.Own}} {
			w.Key(one.name)
			w.Number(one.v)
		}
		w.Key("jobs")
		w.Whole(int64(d.Jobs))
		w.Member("from", d.From)
	})
}
