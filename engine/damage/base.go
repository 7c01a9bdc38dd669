package damage

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/exposure"
)

// base is everything about one car that does not depend on evidence. All conditionings
// of the car share it.
type base struct {
	Body      *car.Body
	Histories []exposure.History

	fig       *figures
	grids     Grids
	mu        [][exposure.Readings][]float64 // [level][reading][item] median of y
	age       []int                          // by level: which of ages
	ages      []years
	alive     []alive // by class of levels, see sums.go
	prior     []leafPrior
	cause     []ownCause        // by item, at the age of the published chance
	causes    [][2][]ownCause   // [index of ages][as the car is, since the work][item]
	table     []*conditionTable // by item
	leaf      []leaf            // by item, for drawing
	joined    []int             // items with lead-loaded joints
	class     []class           // by item
	threshold [2][car.Conditions - 1]float64
	carTerm   [classes][]float64
	groupTerm [classes][]float64
	sideTerm  [classes][]float64
	group     []float64 // weights of its levels
	pocket    []float64
	scale     scale // of the tables
	shift     []float64
	spread    float64
	alone     bool
}

// years are factors on the published chance of a cause other than rust, for the years
// that count: the car's age, and the years since it was restored.
type years struct{ all, since float64 }

// newBase works out the prior of a car.
func newBase(known *Known, grids Grids) (*base, error) {
	fig, err := loadFigures()
	if err != nil {
		return nil, err
	}
	if known.Independent {
		fig = fig.independent()
	}
	if known.Spread > 0 && known.Spread != 1 {
		fig = fig.spreadBy(known.Spread)
	}
	b := &base{Body: known.Body, Histories: known.Histories, fig: fig, grids: grids, shift: known.Shift, spread: known.Spread, alone: known.Independent}
	b.scale = newScale(cmp.Or(grids.PerUnit, pointsToAUnit))
	b.setTerms()
	b.setItems()
	b.setHistories()
	b.alive = b.livesAlike()
	return b, nil
}

// serves reports whether b is also the base of known, that is whether the two differ
// only in evidence.
func (b *base) serves(known *Known, grids Grids) bool {
	sameLevel := func(x, y exposure.History) bool {
		return x.Weight == y.Weight && x.RatesTimes == y.RatesTimes && x.Life() == y.Life()
	}
	return b.Body == known.Body && b.grids == grids && b.spread == known.Spread && b.alone == known.Independent &&
		slices.Equal(b.shift, known.Shift) && slices.EqualFunc(b.Histories, known.Histories, sameLevel)
}

// setTerms works out the terms that the shared factors add to the log of a depth.
func (b *base) setTerms() {
	carAt, groupAt, pocketAt := b.grids.Car.values(), b.grids.Group.values(), b.grids.Pocket.values()
	b.group, b.pocket = b.grids.Group.weights(leak{}), b.grids.Pocket.weights(b.fig.leak)
	for c, s := range b.fig.share {
		b.carTerm[c] = scaled(carAt, b.fig.sigma*math.Sqrt(s.car))
		b.groupTerm[c] = scaled(groupAt, b.fig.sigma*math.Sqrt(s.group))
		b.sideTerm[c] = scaled(pocketAt, b.fig.sigma*math.Sqrt(s.side))
	}
}

func scaled(at []float64, by float64) []float64 {
	out := make([]float64, len(at))
	for i := range at {
		out[i] = at[i] * by
	}
	return out
}

// setItems works out what each leaf needs that does not depend on the history: its table,
// and its chances of repair and of a cause other than rust.
func (b *base) setItems() {
	b.threshold = [2][car.Conditions - 1]float64{b.fig.logStep, b.fig.logStep}
	b.threshold[1][0] = b.fig.logStepHidden
	tables := map[kind]*conditionTable{}
	for i := range b.Body.Items {
		p := b.Body.PartOf(i)
		k := kind{p.Face == car.Hidden, b.fig.classOf(p)}
		threshold, residualSD := &b.threshold[b2i(k.hidden)], b.fig.sigma*math.Sqrt(b.fig.share[k.class].residual)
		if tables[k] == nil {
			tables[k] = newConditionTable(b.scale, *threshold, residualSD)
		}
		b.class, b.table = append(b.class, k.class), append(b.table, tables[k])
		b.prior, b.cause = append(b.prior, b.fig.leafPrior(p)), append(b.cause, b.fig.cause.of(p))
		if p.LeadJoints > 0 {
			b.joined = append(b.joined, i)
		}
		b.leaf = append(b.leaf, leaf{residualSD, threshold, p.LeadJoints})
	}
}

// setHistories works out the medians and the years for each alternative of the history.
func (b *base) setHistories() {
	for n := range b.Histories {
		history := &b.Histories[n]
		var mu [exposure.Readings][]float64
		for r := range mu {
			mu[r] = make([]float64, len(b.Body.Items))
		}
		for i := range b.Body.Items {
			p := b.Body.PartOf(i)
			for r, v := range history.Medians(p.Rust.M, p.Rust.B, p.Rust.Life, p.Splash, p.MM) {
				if b.shift != nil {
					v += b.shift[p.Group]
				}
				mu[r][i] = v
			}
		}
		b.mu = append(b.mu, mu)
		y := years{b.fig.cause.times(history.AgeYears), b.fig.cause.times(history.WorkYearsAgo)}
		at := slices.Index(b.ages, y)
		if at < 0 {
			at, b.ages = len(b.ages), append(b.ages, y)
			b.causes = append(b.causes, [2][]ownCause{b.causesAfter(y.all), b.causesAfter(y.since)})
		}
		b.age = append(b.age, at)
	}
}

// causeAt is the cause other than rust of item i, for an index of ages and a stratum.
// Read only.
func (b *base) causeAt(i, age int, s stratum) *ownCause {
	return &b.causes[age][b2i(s == renewed)][i]
}

// causesAfter are the causes other than rust of all items, with their chance multiplied
// by times.
func (b *base) causesAfter(times float64) (out []ownCause) {
	for i := range b.cause {
		out = append(out, b.cause[i].after(times))
	}
	return out
}

// blocks is the number of pairs of a history and a level of the car.
func (b *base) blocks() int { return len(b.Histories) * len(b.carTerm[open]) }

// split splits a root state of one conditioning into history level, car level and repair
// state.
func (b *base) split(root int) (level, k, repair int) {
	repair = root % RepairStates
	root /= RepairStates
	return root / len(b.carTerm[open]), root % len(b.carTerm[open]), repair
}

// sideOf returns the terms of the levels of an item's pocket.
func (b *base) sideOf(i int) []float64 { return b.sideTerm[b.class[i]] }

// luck is the amount that the levels above its pocket add to the mean of an item's y.
func (b *base) luck(i, k, p int) float64 {
	c := b.class[i]
	return b.carTerm[c][k] + b.groupTerm[c][p]
}

// luckIn is the amount that all levels above an item add to the mean of its y, by class.
func (b *base) luckIn(k, p, q int) (luck [classes]float64) {
	for c := range luck {
		luck[c] = b.carTerm[c][k] + b.groupTerm[c][p] + b.sideTerm[c][q]
	}
	return luck
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
