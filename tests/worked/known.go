package worked

import (
	"fmt"
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
)

// Known is what the case says about its car, whose body is b. An error names what the
// engine does not accept.
func (c Case) Known(b *car.Body) (damage.Known, error) {
	histories, err := c.levels()
	if err != nil {
		return damage.Known{}, err
	}
	k := damage.Known{Body: b, Histories: histories, EarlierWork: c.Answer, LeadFailed: slices.Repeat([]int{-1}, len(b.Items))}
	if err := c.look(&k); err != nil {
		return k, err
	}
	return k, c.survey(&k)
}

func (c Case) levels() ([]exposure.History, error) {
	var lived []exposure.Alternative
	for _, l := range c.Lived {
		a := exposure.Alternative{Chance: l.Chance}
		for _, p := range l.Periods {
			one := exposure.Period{Climate: p.Place, Years: p.Years, Kept: p.Kept}
			if p.RoadYears > 0 {
				one.Years, one.Use = p.RoadYears, exposure.OnRoad
				a.Periods = append(a.Periods, one)
				one.Years, one.Use = p.Years-p.RoadYears, exposure.OffRoad
			}
			a.Periods = append(a.Periods, one)
		}
		lived = append(lived, a)
	}
	return exposure.Exact(lived, exposure.Asked{Year: c.ThisYear})
}

var results = map[string]string{"bad": evidence.Yes, "good": evidence.No, "could not check": evidence.CouldNot}

// look adds the checks. In the case a customer makes some that the program leaves to
// the shop, with good answers for a whole side; their log likelihood counts .6.
func (c Case) look(k *damage.Known) error {
	var looks []evidence.Look
	var byCustomers []damage.MaxEvidence
	for _, l := range slices.Concat(c.Tests, c.SideTests) {
		kind, _ := evidence.KindOf(l.Test)
		if l.Who == evidence.ByShop || kind.CustomerCan {
			looks = append(looks, evidence.Look{Look: l.Test, On: l.Item + l.Side, Result: results[l.Result], By: l.Who})
			continue
		}
		if l.Result != "good" {
			return fmt.Errorf("%s by a customer: %s", l.Test, l.Result)
		}
		side := damage.MaxEvidence{Items: evidence.OnSide(k.Body, kind.ID, l.Side)}
		for n := range side.Likely {
			side.Likely[n] = math.Pow(1-kind.ChanceOfYes(n, damage.NoFinding, false), .6)
		}
		byCustomers = append(byCustomers, side)
	}
	seen, err := evidence.FromLooks(k.Body, looks)
	if err != nil {
		return err
	}
	k.Seen, k.Worst = seen.Items, append(seen.Worst, byCustomers...)
	k.Cover = damage.Cover{Fresh: seen.Cover, Seen: seen.CoveredItems, Worst: seen.CoveredWorst}
	if k.Cover.Worst != nil {
		k.Cover.Worst = append(k.Cover.Worst, byCustomers...)
	}
	return nil
}

// survey adds the records of bare metal.
func (c Case) survey(k *damage.Known) error {
	for id, r := range c.Survey {
		i, ok := k.Body.ItemNamed(id)
		if !ok {
			return fmt.Errorf("no item %s", id)
		}
		e := evidence.SurveyEntry{Condition: r.Condition}
		switch {
		case len(r.Findings) == 1:
			e.Finding = r.Findings[0]
		case r.Findings != nil:
			e.Finding = damage.FindingIDs[damage.NoFinding]
		}
		read, err := evidence.Reading(k.Body.PartOf(i), e)
		if err != nil {
			return err
		}
		k.Seen[i] = evidence.Joined(k.Seen[i], read)
		if k.Cover.Seen != nil {
			k.Cover.Seen[i] = evidence.Joined(k.Cover.Seen[i], read)
		}
		if r.Lead != nil {
			k.LeadFailed[i] = *r.Lead
		}
	}
	return nil
}
