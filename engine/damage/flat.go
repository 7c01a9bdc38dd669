package damage

import (
	"errors"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/network"
)

// Flat hands out, list by list, everything that [Model.Draw] reads, for a car of
// which nothing was seen; anything seen or counted is an error. Lists of several
// dimensions are written row after row, the last runs fastest. Items are in the
// order of the body, except for item_drawn, the order of drawing. It is a function and
// no method so that a program that does not use it carries nothing of it.
func Flat(m *Model, put func(name string, values []float64)) error {
	if m.worst != nil || len(m.seenTogether.units) > 0 {
		return errors.New("damage: expected a car of which nothing was seen")
	}
	if slices.ContainsFunc(m.lead, func(n int) bool { return n >= 0 }) {
		return errors.New("damage: expected a car whose lead joints nobody has counted")
	}
	if err := network.Flat(m.posterior, put); err != nil {
		return err
	}
	flatLevels(m, put)
	flatOrder(m, put)
	flatItems(m, put)
	return nil
}

func flatLevels(m *Model, put func(name string, values []float64)) {
	put("car_term", m.carTerm)
	put("group_term", m.groupTerm)
	put("side_term", slices.Concat(m.sideTerm[open], m.sideTerm[closed]))
	put("mu", slices.Concat(m.mu...))
	put("threshold", slices.Concat(m.threshold[0][:], m.threshold[1][:]))
	var lead []float64
	for _, level := range m.Levels {
		lead = append(lead, m.fig.failedLead[level.LastClimate])
	}
	put("lead_chance", lead)
}

// flatOrder writes down the order of drawing: the items of each pocket, group
// after group.
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

func flatItems(m *Model, put func(name string, values []float64)) {
	var shut, hidden, joints, knock, holed, kinds, dent, then []float64
	for i := range m.Body.Items {
		p, l := m.Body.PartOf(i), &m.prior[i]
		shut = append(shut, float64(b2i(!p.SeenWhenStripped)))
		hidden = append(hidden, float64(b2i(p.Face == car.Hidden)))
		joints = append(joints, float64(p.LeadJoints))
		knock, holed, dent = append(knock, l.knock[:]...), append(holed, l.holed[:]...), append(dent, l.dent[:]...)
		for r := range l.kinds {
			kinds = append(kinds, l.kinds[r][:]...)
		}
	}
	for f := range m.fig.then {
		then = append(then, m.fig.then[f][:]...)
	}
	put("item_closed", shut)
	put("item_hidden", hidden)
	put("item_own", m.own)
	put("item_lead_joints", joints)
	put("item_knock", knock)
	put("item_repaired", holed)
	put("item_kinds", kinds)
	put("item_dent", dent)
	put("condition_then", then)
}
