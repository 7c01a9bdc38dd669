package plain

import (
	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
)

// The states of earlier repairs.
const (
	untouched = iota
	patched
	looks
	thorough
)

// pinholes is the mildest condition that counted as a hole when it was repaired.
const pinholes = 3

// drawItem draws one item, given everything that items share.
func (c *Cars) drawItem(one *Car, i int) {
	item := &c.Body.Items[i]
	p, history, r := &c.parts[item.Part], &c.Histories[one.Level], &c.fig.Repairs
	one.LeadFailed[i] = 0
	for range p.joints {
		if c.chance(c.lead[one.Level]) {
			one.LeadFailed[i]++
		}
	}
	state, reading, years, reached := one.Repair, exposure.AsItIs, history.AgeYears, false
	switch one.Repair {
	case looks:
		reading = exposure.PaintedAgain
	case thorough:
		missed := r.Thoroughly.NotReached.Elsewhere
		if p.first {
			missed = r.Thoroughly.NotReached.First
		}
		if state = untouched; !c.chance(missed) {
			reached, reading, years = true, exposure.Renewed, history.WorkYearsAgo
		}
	}
	one.Rust[i] = c.rust(one, p, item.Pocket, c.mu[one.Level][i][reading])
	one.Worn[i] = c.worn(p, one.Rust[i], years)
	one.Condition[i], one.Finding[i], one.Dent[i] = one.Worn[i], damage.NoFinding, c.chance(p.dent[one.Repair])
	switch {
	case c.NoRepairs:
		one.Dent[i] = false
	case p.outer && c.chance(r.Knock[one.Repair]):
		one.Finding[i] = damage.Replaced
	case reached:
		c.found(one, p, i)
		return
	case one.Worn[i] >= pinholes:
		one.Finding[i] = c.mended(p, state)
	}
	if f := one.Finding[i]; f != damage.NoFinding {
		then := r.Then[damage.FindingIDs[f]]
		one.Condition[i] = c.pick(&then)
	}
}

// rust is the condition from rust alone.
func (c *Cars) rust(one *Car, p *part, pocket int, mu float64) (k int8) {
	y := mu + p.car*one.Luck + p.group*one.group[c.Body.Pockets[pocket].Group] + p.side*one.pocket[pocket] + p.own*c.rand.NormFloat64()
	for int(k) < len(p.step) && y >= p.step[k] {
		k++
	}
	return k
}

// worn is the condition after causes of the item's own, and after what protected it.
func (c *Cars) worn(p *part, rust int8, years float64) int8 {
	if c.NoCauses {
		return rust
	}
	hurt := p.hurt * min(c.fig.Cause.Most, years/c.fig.Cause.FullAge)
	switch u := c.rand.Float64(); {
	case u < p.spared:
		return c.pick(&c.fig.Cause.Spared.Condition)
	case u < p.spared+hurt:
		return max(rust, c.pick(&p.cause))
	}
	return rust
}

// found says what an item looks like after a thorough restoration reached it.
func (c *Cars) found(one *Car, p *part, i int) {
	replaced := c.fig.Repairs.Thoroughly.FoundReplaced.Elsewhere
	if p.first {
		replaced = c.fig.Repairs.Thoroughly.FoundReplaced.First
	}
	if c.chance(replaced) {
		one.Finding[i] = damage.Replaced
	}
}

// mended says how somebody repaired a hole.
func (c *Cars) mended(p *part, state int) damage.Finding {
	r := &c.fig.Repairs
	q := r.Holed[state]
	if !p.first {
		q *= r.Elsewhere
	}
	if !c.chance(q) {
		return damage.NoFinding
	}
	u := c.rand.Float64()
	for f := damage.PatchOverRust; f < damage.Replaced; f++ {
		if u -= r.Kinds[state][damage.FindingIDs[f]]; u >= 0 {
			continue
		}
		if !p.outer {
			return damage.PatchOverRust
		}
		return f
	}
	return damage.Replaced
}

func (c *Cars) chance(p float64) bool { return c.rand.Float64() < p }

func (c *Cars) pick(p *[car.Conditions]float64) (picked int8) {
	u := c.rand.Float64()
	for k, v := range p {
		if v > 0 {
			picked = int8(k)
		}
		if u -= v; u < 0 {
			break
		}
	}
	return picked
}
