package evidence

import (
	"cmp"
	"slices"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// CountedYes is the chance of a yes, adjusted for how much the answer will count. by is
// who makes the check, and covered is the chance that the car is freshly covered. A
// customer's answer counts for less: both chances are raised to the power of the
// customer's weight and scaled to add to one, which is accurate enough for ranking
// checks. A hole that a customer sees counts in full.
func (k Kind) CountedYes(by string, covered float64, condition int, f damage.Finding, dent bool) float64 {
	who := shop
	if by == ByCustomer {
		who = customer
	}
	p := k.yesBy(who, condition, f, dent)
	p += float64(covered * (k.yesIfCovered(condition, f, dent) - k.ChanceOfYes(condition, f, dent)))
	if who == shop || k.yesWhole {
		return p
	}
	yes, no := chance.Exp(looks().w.customer*chance.Log(p)), chance.Exp(looks().w.customer*chance.Log(1-p))
	return yes / (yes + no)
}

// imaginedKinds are the checks of a simulated walk-round, the most informative first.
// They leave out the seller's word and photographs, which a simulated car does not have.
var imaginedKinds = sync.OnceValue(func() (out []Kind) {
	for _, k := range looks().kinds {
		if !k.BySide && k.ID != sellersWord && k.ID != photographs {
			out = append(out, k)
		}
	}
	slices.SortStableFunc(out, func(a, b Kind) int { return cmp.Compare(b.tells(), a.tells()) })
	return out
})

// photographs is the check that relies on photographs of earlier work.
const photographs = "photos"

// tells is how informative a check is: the mutual information of its answer and what it
// answers to, in nats, if all conditions (or all findings and filler over a dent) were
// equally likely (C. E. Shannon, "A mathematical theory of communication", 1948).
func (k Kind) tells() float64 {
	yes := k.condition[:]
	if k.AnswersTo == OfFinding {
		yes = append(slices.Clone(k.finding[:]), k.ChanceOfYes(0, damage.NoFinding, true))
	}
	mean, left := 0.0, 0.0
	for _, p := range yes {
		mean += p / float64(len(yes))
		left += doubt(p) / float64(len(yes))
	}
	return doubt(mean) - left
}

// doubt is the entropy in nats of a yes or no, where yes has chance p.
func doubt(p float64) float64 {
	return -float64(p*chance.Log(p)) - float64((1-p)*chance.Log(1-p))
}

// ImagineWalkRound simulates a careful walk-round of a simulated car by the shop. On
// every item it makes the most informative check of condition that is possible there and
// the most informative check for an earlier repair, so that no two checks on an item
// repeat the same information. On each side it checks the door gaps. It draws each
// result from its chances; a bad result is less likely if the car is freshly covered and
// cover can hide it. It takes one uniform for each check, so equal streams on similar
// cars give similar results, covered or not.
func ImagineWalkRound(b *car.Body, c *damage.Car, covered bool, s *chance.Stream) (out []Look) {
	done := map[string]map[int]bool{OfCondition: {}, OfFinding: {}}
	for _, kind := range imaginedKinds() {
		for _, i := range Items(b, kind.ID) {
			if done[kind.AnswersTo][i] || kind.NotAtLead && b.PartOf(i).LeadJoints > 0 {
				continue
			}
			done[kind.AnswersTo][i] = true
			p := kind.ChanceOfYes(int(c.Condition[i]), c.Finding[i], c.Dent[i])
			if covered {
				p = kind.yesIfCovered(int(c.Condition[i]), c.Finding[i], c.Dent[i])
			}
			out = append(out, Look{Look: kind.ID, On: b.Items[i].ID, Result: drawn(s, p), By: ByShop})
		}
	}
	return append(out, imagineGaps(b, c, s)...)
}

// imagineGaps checks the door gaps of each side, which depend on the worst item.
func imagineGaps(b *car.Body, c *damage.Car, s *chance.Stream) (out []Look) {
	kind, _ := KindOf("gaps")
	for _, side := range []car.Side{car.Left, car.Right} {
		worst := int8(-1)
		for _, i := range OnSide(b, kind.ID, side.String()) {
			worst = max(worst, c.Condition[i])
		}
		if worst < 0 {
			continue
		}
		p := kind.ChanceOfYes(int(worst), damage.NoFinding, false)
		out = append(out, Look{Look: kind.ID, On: side.String(), Result: drawn(s, p), By: ByShop})
	}
	return out
}

func drawn(s *chance.Stream, p float64) string {
	if s.Uniform() < p {
		return Yes
	}
	return No
}

// ImagineSurvey simulates a survey of every item of a simulated car, with the errors of
// [Reading]. Closed boxes are judged from outside unless opened. It returns one entry
// per item and takes three uniforms for each.
func ImagineSurvey(b *car.Body, c *damage.Car, opened bool, s *chance.Stream) []SurveyEntry {
	out := make([]SurveyEntry, len(b.Items))
	for i := range out {
		uCondition, uFinding, uDent := s.Uniform(), s.Uniform(), s.Uniform()
		p := b.PartOf(i)
		closed := !p.SeenWhenStripped && !opened
		e := SurveyEntry{Opened: opened && !p.SeenWhenStripped}
		row := readings().condition[b2i(closed)][c.Condition[i]]
		e.Condition = car.ConditionIDs[pickOf(row[:], uCondition)]
		if !closed {
			e.Finding = imagineFinding(p, c.Finding[i], uFinding)
			if p.Face == car.Outer {
				e.Dent = No
				if uDent < dentRead(c.Dent[i], true) {
					e.Dent = Yes
				}
			}
		}
		out[i] = e
	}
	return out
}

// imagineFinding draws what the survey records of an earlier repair. On an inner item
// filler over a hole is recorded as a patch.
func imagineFinding(p *car.Part, is damage.Finding, u float64) string {
	var row [damage.Findings]float64
	for recorded := range row {
		f := damage.Finding(recorded)
		if p.Face == car.Outer || f != damage.FillerOverHole {
			row[recorded] = findingRead(p, is, f)
		}
	}
	return damage.FindingIDs[pickOf(row[:], u)]
}

// pickOf picks an index by inverse distribution function. If rounding leaves u at or
// above the sum, it picks the last possible one.
func pickOf(p []float64, u float64) (picked int) {
	for k, v := range p {
		if v > 0 {
			picked = k
		}
		if u < v {
			return k
		}
		u -= v
	}
	return picked
}

// BestLook is the most informative check of an item's condition that is possible before
// stripping. It prefers a check that a customer can do.
func BestLook(b *car.Body, item int) (best Kind, found bool) {
	for _, customer := range []bool{true, false} {
		for _, k := range imaginedKinds() {
			if k.AnswersTo != OfCondition || k.CustomerCan != customer || k.NotAtLead && b.PartOf(item).LeadJoints > 0 {
				continue
			}
			if slices.Contains(Items(b, k.ID), item) {
				return k, true
			}
		}
	}
	return best, false
}
