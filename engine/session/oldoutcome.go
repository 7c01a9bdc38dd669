package session

import (
	"slices"

	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
)

// These seeds keep the simulated old damage, and the checks of it, apart from the rust.
const oldSeed, oldWalkSeed = 0x0C2B, 0x0C48

// oldOutcome is what the stages to come show of old damage on one simulated car.
type oldOutcome struct {
	looks   []evidence.Look              // checks made and simulated, nil before the walk-around
	repairs [damage.RepairStates]float64 // what it says about earlier repairs
}

// fillOld draws the uniforms of old damage of the n-th simulated car.
func fillOld(u *pricing.Uniforms, n int) {
	stream := chance.NewStream(oldSeed, uint64(n))
	for k := range u.Old {
		u.Old[k] = stream.Uniform()
	}
}

// walk simulates the checks of old damage in a walk-around, and returns what is decided
// after it. ok is false for a shop that leaves old damage aside.
func (o *oldOutcome) walk(stages *stageRanges, bill *pricing.Bill, n int) (d pricing.Decided, ok bool) {
	fig := stages.shop.Rates.Reckoned()
	if fig == nil {
		return d, false
	}
	b, old, stream := stages.body, bill.OldDamage(), chance.NewStream(oldWalkSeed, uint64(n))
	d = stages.car.Decided(b, stages.car.LastStage(), false)
	d.Old.Looks = append(slices.Clone(d.Old.Looks), fig.Imagine(&old, olddamage.HasRoof(b), &stream)...)
	o.looks, o.repairs = d.Old.Looks, fig.Condition(b, *d.Old).OfRepairs
	return d, true
}

// see adds to the decisions what a survey shows of old damage on the items that it
// reaches: what an earlier hand left, how every zone was mended, and squareness. A missing
// part shows nothing.
func (o *oldOutcome) see(stages *stageRanges, bill *pricing.Bill, d *pricing.Decided, entries []evidence.SurveyEntry, reached func(i int) bool) {
	fig, b := stages.shop.Rates.Reckoned(), stages.body
	if fig == nil {
		return
	}
	if o.looks != nil {
		d.Old.Looks = o.looks
	}
	if d.Bare == nil {
		d.Bare = make([]bool, len(b.Items))
	}
	for i := range b.Items {
		if !reached(i) || d.Bare[i] {
			continue
		}
		if d.Bare[i] = true; bill.Missing[i] {
			continue
		}
		d.Also[i] = append(slices.Clone(d.Also[i]), bill.OldFound(i)...)
		r := carfile.Record{Condition: entries[i].Condition, Finding: entries[i].Finding, Also: d.Also[i], Stage: carfile.OpeningUp}
		carfile.AddSeen(d.Old, b.PartOf(i), &r)
	}
	old := bill.OldDamage()
	d.Old.Zones, d.Old.Square = old.Surveyed(b)
	d.Unmeasured = false
	o.repairs = fig.Condition(b, *d.Old).OfRepairs
}
