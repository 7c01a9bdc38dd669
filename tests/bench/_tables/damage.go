package damage

import (
	"errors"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/network"
)

// Flat passes to put, list by list, everything that [Model.Draw] reads, for a car of
// which nothing was seen; anything seen or counted is an error. Lists of several
// dimensions are written row by row, with the last index running fastest. Items are in
// the order of the body, except for item_drawn, which is the order of drawing. Flat is
// a function and not a method, so that a program that does not use it does not contain
// it.
func Flat(m *Model, put func(name string, values []float64)) error {
	only := m.given[0]
	if len(m.given) > 1 || only.worst != nil || len(only.layout.units) > 0 {
		return errors.New("damage: expected a car of which nothing was seen")
	}
	if slices.ContainsFunc(m.lead, func(n int) bool { return n >= 0 }) {
		return errors.New("damage: expected a car whose lead joints nobody has counted")
	}
	if err := network.Flat(only.posterior, put); err != nil {
		return err
	}
	put("state_up_to", m.upTo)
	flatHistories(m, put)
	flatOrder(m, put)
	flatItems(m, put)
	flatCauses(m, put)
	return nil
}

func flatHistories(m *Model, put func(name string, values []float64)) {
	put("car_term", slices.Concat(m.carTerm[:]...))
	put("group_term", slices.Concat(m.groupTerm[:]...))
	put("side_term", slices.Concat(m.sideTerm[:]...))
	var lead, mu, hurt []float64
	for n, history := range m.Histories {
		lead = append(lead, m.fig.failedLead[history.LastClimate])
		mu = append(mu, slices.Concat(m.mu[n][:]...)...)
		hurt = append(hurt, m.ages[m.age[n]].all, m.ages[m.age[n]].since)
	}
	put("mu", mu) // [level][reading][item]
	put("threshold", slices.Concat(m.threshold[0][:], m.threshold[1][:]))
	put("lead_chance", lead)
	put("cause_times", hurt) // [level][as it is, since the work]
}

// flatOrder writes the order of drawing: the items of each pocket, group by group.
func flatOrder(m *Model, put func(name string, values []float64)) {
	var items, count []float64
	for g := range m.Body.Groups {
		for _, pocket := range m.Body.Groups[g].Pockets {
			for _, i := range m.Body.Pockets[pocket].Items {
				items = append(items, float64(i))
			}
			count = append(count, float64(len(m.Body.Pockets[pocket].Items)))
		}
	}
	put("item_drawn", items)
	put("pocket_items", count)
}

// flatItems writes what depends on the stratum as [item][stratum].
func flatItems(m *Model, put func(name string, values []float64)) {
	var class, hidden, own, joints, knock, kept, holed, found, kinds, dent, then []float64
	for i := range m.Body.Items {
		p, l := m.Body.PartOf(i), &m.prior[i]
		class = append(class, float64(m.class[i]))
		hidden = append(hidden, float64(b2i(p.Face == car.Hidden)))
		own = append(own, m.leaf[i].residualSD)
		joints = append(joints, float64(p.LeadJoints))
		knock, kept, holed = append(knock, l.knock[:]...), append(kept, l.kept[:]...), append(holed, l.holed[:]...)
		found, dent = append(found, l.found[:]...), append(dent, l.dent[:]...)
		for s := range l.kinds {
			kinds = append(kinds, l.kinds[s][:]...)
		}
	}
	for f := range m.fig.then {
		then = append(then, m.fig.then[f][:]...)
	}
	put("item_class", class)
	put("item_hidden", hidden)
	put("item_own", own)
	put("item_lead_joints", joints)
	put("item_knock", knock)
	put("item_kept", kept)
	put("item_repaired", holed)
	put("item_found_replaced", found)
	put("item_kinds", kinds)
	put("item_dent", dent)
	put("condition_then", then)
}

func flatCauses(m *Model, put func(name string, values []float64)) {
	var hurt, spared, worse, better []float64
	for i := range m.cause {
		c := &m.cause[i]
		hurt, spared = append(hurt, c.hurt), append(spared, c.spared)
		worse, better = append(worse, c.worse[:]...), append(better, c.better[:]...)
	}
	put("item_hurt", hurt)
	put("item_spared", spared)
	put("item_hurt_then", worse)
	put("item_spared_then", better)
}
