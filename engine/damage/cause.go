package damage

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// causeFigures are the figures of damage that is independent of the rest of the car.
type causeFigures struct {
	fullAge, most float64 // years at which the published chance holds; largest factor on it
	condition     [2]byCondition
	acidOn        []string
	byPart        map[string]float64
	spared        float64
	sparedByPart  map[string]float64
	sparedThen    byCondition
}

// The rows of causeFigures.condition.
const (
	byWater = iota
	byAcid
)

func (c *causeFigures) read(f strict.Field) {
	c.fullAge, c.most = f.Get("age_of_full_chance").Number(1, 200), f.Get("most_times").Number(1, 5)
	copy(c.condition[byWater][:], f.Get("condition").Get("water").Numbers(car.Conditions, 0, 1))
	copy(c.condition[byAcid][:], f.Get("condition").Get("acid").Numbers(car.Conditions, 0, 1))
	c.acidOn = texts(f.Get("acid_on"))
	c.byPart = numbers(f.Get("chance_by_part"))
	spared := f.Get("spared")
	c.spared, c.sparedByPart = spared.Get("chance").Number(0, 1), numbers(spared.Get("chance_by_part"))
	copy(c.sparedThen[:], spared.Get("condition").Numbers(car.Conditions, 0, 1))
}

func numbers(f strict.Field) map[string]float64 {
	out := map[string]float64{}
	for _, name := range f.Names() {
		out[name] = f.Get(name).Number(0, 1)
	}
	return out
}

// times is the factor on the published chance of a cause other than rust after the given
// number of years.
func (c *causeFigures) times(years float64) float64 { return min(c.most, years/c.fullAge) }

// ownCause is the effect of causes other than rust on one item. With chance hurt it has
// such a cause, and its condition is the worse of its rust and one drawn from worse. With
// chance spared it was protected from rust, and its condition is drawn from better. So
// the distribution of the condition is that of the rust times a constant matrix, whatever
// the levels above.
type ownCause struct {
	hurt, spared  float64
	worse, better byCondition
}

// of is the ownCause of an item of a part, with hurt for a car of fullAge years.
func (c *causeFigures) of(p *car.Part) ownCause {
	o := ownCause{hurt: c.byPart[p.ID], spared: c.spared, worse: c.condition[byWater], better: c.sparedThen}
	if v, own := c.sparedByPart[p.ID]; own {
		o.spared = v
	}
	if slices.Contains(c.acidOn, p.ID) {
		o.worse = c.condition[byAcid]
	}
	return o
}

// after is o with the chance of a cause multiplied by times.
func (o ownCause) after(times float64) ownCause {
	o.hurt *= times
	return o
}

// apply turns weights of rust into weights of the condition with the same sum.
func (o *ownCause) apply(rust byCondition) (out byCondition) {
	all := 0.0
	for _, v := range rust {
		all += v
	}
	// The weight of rust no worse than k, and the chance of a cause no worse than k.
	upTo, causeUpTo := 0.0, 0.0
	for k, v := range rust {
		below := upTo
		upTo += v
		causeUpTo += o.worse[k]
		kept := 1 - o.spared - float64(o.hurt*(1-causeUpTo))
		out[k] = float64(v*kept) + float64(float64(below*o.hurt)*o.worse[k]) + float64(float64(all*o.spared)*o.better[k])
	}
	return out
}

// pull turns a likelihood of the condition into one of the rust below it. It is the
// adjoint of apply.
func (o *ownCause) pull(seen byCondition) (out byCondition) {
	luck := 0.0
	for k, v := range seen {
		luck += float64(o.better[k] * v)
	}
	// The contribution of causes worse than the rust.
	worse, causeUpTo := 0.0, 1.0
	for k := len(seen) - 1; k >= 0; k-- {
		kept := 1 - o.spared - float64(o.hurt*(1-causeUpTo))
		out[k] = float64(seen[k]*kept) + float64(o.hurt*worse) + float64(o.spared*luck)
		worse += float64(o.worse[k] * seen[k])
		causeUpTo -= o.worse[k]
	}
	return out
}

// shareOf is the share of condition k that is due to the cause alone, because rust by
// itself would have been milder. rust holds weights of rust.
func (o *ownCause) shareOf(k int, rust *byCondition) float64 {
	below := 0.0
	for _, v := range rust[:k] {
		below += v
	}
	all := o.apply(*rust)[k]
	if all <= 0 {
		return 0
	}
	return float64(float64(below*o.hurt)*o.worse[k]) / all
}
