package carfile

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Told is the state of knowledge before the shop has seen the car.
const Told = "told"

// upTo says whether what was recorded at stage counts once a car has reached the stage
// reached.
func upTo(reached, stage string) bool {
	return slices.Index(StageIDs, stage) <= slices.Index(StageIDs, reached)
}

// LastStage returns the furthest stage that was begun, or Told if none was.
func (c *Car) LastStage() string {
	last := Told
	for _, s := range StageIDs {
		if c.Begun(s) {
			last = s
		}
	}
	return last
}

// StripBegun says whether the strip and survey has begun, so that it is too late for a
// wish that changes it.
func (c *Car) StripBegun() bool {
	return c.Begun(Survey) || c.Begun(OpeningUp) || c.StripHours != [car.Trades]float64{}
}

// looksUpTo returns the checks made by the end of a stage: the customer's own from the
// start, the shop's from the walk-around on.
func (c *Car) looksUpTo(b *car.Body, reached string) (out []evidence.Look) {
	for _, l := range c.looksAt(b) {
		if l.By == evidence.ByCustomer || reached != Told {
			out = append(out, l)
		}
	}
	return out
}

// recordsUpTo returns, by item, the record that counts by the end of a stage, −1 for
// none. A record made when a box was open replaces the one made from outside.
func (c *Car) recordsUpTo(b *car.Body, reached string) []int {
	out := make([]int, len(b.Items))
	for i := range out {
		out[i] = -1
	}
	for n := range c.Survey {
		r := &c.Survey[n]
		i, ok := b.ItemNamed(r.On)
		if !ok || !upTo(reached, r.Stage) {
			continue
		}
		if out[i] < 0 || r.Stage == OpeningUp && (r.Condition != "" || r.Finding != "" || r.Missing()) {
			out[i] = n
		}
	}
	return out
}

// RecordedCondition is the condition that counts for an item, −1 for none. A part that is
// missing has none.
func (c *Car) RecordedCondition(on string) int {
	if r := c.judged(on); r != nil {
		return slices.Index(car.ConditionIDs[:], r.Condition)
	}
	return -1
}

// Known returns everything that counts for the odds by the end of a stage, on the
// starting figures or on what the shop has learned. Old damage counts with old, and is
// left aside where that is nil.
func (c *Car) Known(b *car.Body, histories []exposure.History, reached string, own *rates.Own, old *olddamage.Figures) (damage.Known, error) {
	k := damage.Known{Body: b, Histories: histories, EarlierWork: c.EarlierWork, Shift: shiftOf(b, own), Spread: own.Spread.Factor}
	seen, err := evidence.FromLooks(b, c.looksUpTo(b, reached))
	if err != nil {
		return k, err
	}
	k.Seen, k.Worst = seen.Items, seen.Worst
	k.Cover = damage.Cover{Answer: c.Covered, Fresh: seen.Cover, Seen: seen.CoveredItems, Worst: seen.CoveredWorst}
	k.LeadFailed = make([]int, len(b.Items))
	for i, n := range c.recordsUpTo(b, reached) {
		k.LeadFailed[i] = -1
		if n < 0 {
			continue
		}
		k.LeadFailed[i] = c.Survey[n].LeadFailed
		read, err := evidence.Reading(b.PartOf(i), c.Survey[n].Entry())
		if err != nil {
			return k, err
		}
		AddRead(&k, i, read)
	}
	if old != nil {
		k.Repairs = old.Condition(b, c.OldDamage(b, reached)).OfRepairs
	}
	return k, nil
}

// shiftOf is what a shop has learned about the depth of rust, by group of the body, as
// logs; nil if it has learned nothing.
func shiftOf(b *car.Body, own *rates.Own) (shift []float64) {
	if len(own.Rust) == 0 {
		return nil
	}
	for g := range b.Groups {
		shift = append(shift, chance.Log(own.RustFactor(b.Groups[g].ID)))
	}
	return shift
}

// ModelAt conditions the odds of a body on everything known by a stage. It reuses what
// has not changed since an earlier model of the car, which may be nil.
func (c *Car) ModelAt(b *car.Body, histories []exposure.History, reached string, own *rates.Own, old *olddamage.Figures, earlier *damage.Model) (*damage.Model, error) {
	k, err := c.Known(b, histories, reached, own, old)
	if err != nil {
		return nil, err
	}
	m, err := damage.NewAfter(k, damage.StandardGrids, earlier)
	if err != nil {
		return nil, &strict.Error{Path: "looks", Found: "entries that cannot all be true", Expected: "one of them changed or removed"}
	}
	return m, nil
}

// Decided returns the fixed work by the end of a stage. Chosen ways count only if ways
// is true.
func (c *Car) Decided(b *car.Body, reached string, ways bool) pricing.Decided {
	d := pricing.Undecided()
	d.KeepOldMetal = slices.Contains(c.Options, KeepOldMetal)
	old := c.OldDamage(b, reached)
	d.Old = &old
	if reached != Survey && reached != OpeningUp {
		return d
	}
	d.Unmeasured = old.Square != olddamage.Square && old.Square != olddamage.OutOfSquare
	d.WholeCar = c.WholeCar
	for t, h := range c.StripHours {
		if h > 0 {
			d.StripHours[t] = h
		}
	}
	d.Also, d.Bare = make([][]string, len(b.Items)), make([]bool, len(b.Items))
	for i, n := range c.recordsUpTo(b, reached) {
		if n >= 0 {
			d.Also[i], d.Bare[i] = c.Survey[n].Also, c.Survey[n].bare(b.PartOf(i))
		}
	}
	c.decideFit(&d, b, reached)
	if !ways || len(c.Ways) == 0 {
		return d
	}
	d.Way = make([]int8, len(b.Items))
	for i := range d.Way {
		d.Way[i] = -1
	}
	for _, w := range c.Ways {
		if i, ok := b.ItemNamed(w.On); ok {
			d.Way[i] = int8(slices.Index(car.WayIDs[:], w.Way))
		}
	}
	return d
}

// AddLooks and AddReadings add simulated evidence to what is known.
func AddLooks(k *damage.Known, b *car.Body, looks []evidence.Look) error {
	seen, err := evidence.FromLooks(b, looks)
	if err != nil {
		return err
	}
	cover := damage.Cover{Answer: k.Cover.Answer, Fresh: k.Cover.Fresh}
	if k.Cover.Seen != nil || seen.CoveredItems != nil {
		cover.Seen = joinedWith(orElse(k.Cover.Seen, k.Seen), orElse(seen.CoveredItems, seen.Items))
	}
	if k.Cover.Worst != nil || seen.CoveredWorst != nil {
		cover.Worst = withWorst(orElse(k.Cover.Worst, k.Worst), orElse(seen.CoveredWorst, seen.Worst))
	}
	for v, more := range seen.Cover {
		if cover.Fresh[v] == 0 {
			cover.Fresh[v] = 1
		}
		cover.Fresh[v] *= more
	}
	k.Seen, k.Worst, k.Cover = joinedWith(k.Seen, seen.Items), withWorst(k.Worst, seen.Worst), cover
	return nil
}

// orElse is the list that counts on a covered car; where cover changes nothing, it is
// the list for the car as it shows.
func orElse[T any](covered, shows []T) []T {
	if covered != nil {
		return covered
	}
	return shows
}

func joinedWith(a, b []*damage.Likelihood) []*damage.Likelihood {
	out := make([]*damage.Likelihood, len(b))
	for i := range out {
		out[i] = evidence.Joined(a[i], b[i])
	}
	return out
}

// withWorst adds checks of sides. It leaves out a gap that has been checked already.
func withWorst(known, more []damage.MaxEvidence) []damage.MaxEvidence {
	out := slices.Clone(known)
	for _, w := range more {
		if !slices.ContainsFunc(out, func(o damage.MaxEvidence) bool { return slices.Equal(o.Items, w.Items) }) && len(out) < damage.MostMaxEvidence {
			out = append(out, w)
		}
	}
	return out
}

// AddRead adds a reading of the bare metal of item i, which counts whatever covered the
// metal before.
func AddRead(k *damage.Known, i int, read *damage.Likelihood) {
	k.Seen[i] = evidence.Joined(k.Seen[i], read)
	if k.Cover.Seen != nil {
		k.Cover.Seen[i] = evidence.Joined(k.Cover.Seen[i], read)
	}
}

func AddReadings(k *damage.Known, b *car.Body, entries []evidence.SurveyEntry, only func(i int) bool) error {
	k.Seen, k.Cover.Seen = slices.Clone(k.Seen), slices.Clone(k.Cover.Seen)
	for i := range k.Seen {
		if !only(i) {
			continue
		}
		read, err := evidence.Reading(b.PartOf(i), entries[i])
		if err != nil {
			return err
		}
		AddRead(k, i, read)
	}
	return nil
}

// WithoutClosed returns the car without the records of closed boxes made from outside.
func (c *Car) WithoutClosed(b *car.Body) *Car {
	out := *c
	out.Survey = nil
	for _, r := range c.Survey {
		if i, ok := b.ItemNamed(r.On); ok && !b.PartOf(i).SeenWhenStripped && r.Stage == Survey {
			continue
		}
		out.Survey = append(out.Survey, r)
	}
	return &out
}

// Cut returns the car without anything that came after a stage ([Told] or one of
// StageIDs). It also leaves out chosen ways and the dates of the stages.
func (c *Car) Cut(stage string) *Car {
	cut := *c
	cut.Recorded, cut.Looks = Recorded{}, nil
	for _, l := range c.Looks {
		if l.By == "customer" || stage != Told {
			cut.Looks = append(cut.Looks, l)
		}
	}
	if stage == Survey || stage == OpeningUp {
		cut.WholeCar, cut.SurveyCar, cut.StripHours = c.WholeCar, c.SurveyCar, c.StripHours
		for _, r := range c.Survey {
			if upTo(stage, r.Stage) {
				cut.Survey = append(cut.Survey, r)
			}
		}
	}
	return &cut
}
