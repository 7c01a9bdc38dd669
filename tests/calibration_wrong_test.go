//go:build !js

package tests

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
)

// double counts everything seen so far twice, if the trial does.
func (how trial) double(k *damage.Known) {
	if !how.twice {
		return
	}
	for _, items := range [][]*damage.Likelihood{k.Seen, k.Cover.Seen} {
		for i, l := range items {
			items[i] = evidence.Joined(l, l)
		}
	}
	for _, sides := range [][]damage.MaxEvidence{k.Worst, k.Cover.Worst} {
		for n := range sides {
			for c, v := range sides[n].Likely {
				sides[n].Likely[c] = v * v
			}
		}
	}
}

// read adds what a survey recorded, as a trial takes it. It does not change known
// itself.
func (how trial) read(k *damage.Known, entries []evidence.SurveyEntry, only func(i int) bool) {
	k.Seen, k.Cover.Seen = slices.Clone(k.Seen), slices.Clone(k.Cover.Seen)
	for i := range entries {
		if !only(i) {
			continue
		}
		read, err := evidence.Reading(k.Body.PartOf(i), entries[i])
		if err != nil {
			panic(err)
		}
		if how.softly {
			soften(read, k.Body.PartOf(i), entries[i])
		}
		if how.twice {
			read = evidence.Joined(read, read)
		}
		carfile.AddRead(k, i, read)
	}
}

// softReading is a survey believed less than bare metal deserves: how often it is
// right, one step out, two, and each step further, divided by the sides that exist;
// first for a part that was seen, then for a closed box judged from outside (made up).
var softReading = [2][4]float64{{.85, .14, .01, .0005}, {.45, .35, .20, .005}}

// soften replaces what a record says about the condition by softReading.
func soften(read *damage.Likelihood, p *car.Part, e evidence.SurveyEntry) {
	as, closed := slices.Index(car.ConditionIDs[:], e.Condition), !p.SeenWhenStripped && !e.Opened
	row := softReading[0]
	if closed {
		row = softReading[1]
	}
	for is := range read {
		off := max(as-is, is-as)
		soft := row[min(off, len(row)-1)]
		if off > 0 && off < 3 && is-off >= 0 && is+off < car.Conditions {
			soft /= 2
		}
		for f := range read[is] {
			for d := range read[is][f] {
				read[is][f][d] *= soft / evidence.RecordChance(closed, is, as)
			}
		}
	}
}
