package evidence

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// imagined is a simulated car with a body that has seen some salt.
func imagined(t testing.TB, b *car.Body, draw uint64) *damage.Car {
	t.Helper()
	m, err := damage.New(damage.Known{Body: b, Histories: history(t, "salt")}, few)
	if err != nil {
		t.Fatal(err)
	}
	s, c := chance.NewStream(20261125, draw), m.NewCar()
	m.Draw(&s, c)
	return c
}

// Simulated answers are valid input, no item is checked twice for the same thing, and
// the number of uniforms does not depend on the car or on whether it is covered.
func TestImaginedCanBeEntered(t *testing.T) {
	for _, b := range allBodies(t) {
		var after [2]uint64
		for n := range after {
			c := imagined(t, b, uint64(n))
			s := chance.NewStream(3, 4)
			list := ImagineWalkRound(b, c, n == 1, &s)
			seen, err := FromLooks(b, list)
			if err != nil || len(seen.Worst) != 2 {
				t.Fatalf("%s: %d sides, %v", b.ID, len(seen.Worst), err)
			}
			made := map[[2]string]int{}
			for _, l := range list {
				k, _ := KindOf(l.Look)
				made[[2]string{l.On, k.AnswersTo}]++
				if made[[2]string{l.On, k.AnswersTo}] > 1 || l.By != ByShop || l.Result == CouldNot {
					t.Errorf("%s: %+v", b.ID, l)
				}
			}
			for _, opened := range []bool{false, true} {
				entries := ImagineSurvey(b, c, opened, &s)
				for i, e := range entries {
					l, err := Reading(b.PartOf(i), e)
					if err != nil || l == nil {
						t.Errorf("%s: %+v: %v, %v", b.Items[i].ID, e, l, err)
					}
					if e.Finding == "filler_over_hole" && b.PartOf(i).Face != car.Outer || e.Dent != "" && b.PartOf(i).Face != car.Outer {
						t.Errorf("%s: %+v on an inner part", b.Items[i].ID, e)
					}
					if closed := !b.PartOf(i).SeenWhenStripped; e.Opened != (closed && opened) || (e.Finding == "") != (closed && !opened) {
						t.Errorf("%s: %+v", b.Items[i].ID, e)
					}
				}
			}
			after[n] = s.Uint64()
		}
		if after[0] != after[1] {
			t.Errorf("%s: two cars took different numbers of uniforms", b.ID)
		}
	}
}

// The check made on a part is the most informative of those possible there. The test
// works this out by direct sums over equally likely conditions or findings.
func TestImaginedLooksTellMost(t *testing.T) {
	information := func(k Kind) (total float64) {
		type state struct {
			condition int
			f         damage.Finding
			dent      bool
		}
		var states []state
		if k.AnswersTo == OfCondition {
			for c := range car.Conditions {
				states = append(states, state{condition: c})
			}
		} else {
			for f := range damage.Findings {
				states = append(states, state{f: f})
			}
			states = append(states, state{dent: true})
		}
		for _, yes := range []bool{true, false} {
			mean := 0.0
			var p []float64
			for _, s := range states {
				v := k.ChanceOfYes(s.condition, s.f, s.dent)
				if !yes {
					v = 1 - v
				}
				p, mean = append(p, v), mean+v/float64(len(states))
			}
			for _, v := range p {
				total += v / float64(len(p)) * math.Log(v/mean)
			}
		}
		return total
	}
	b := load(t, "two_door_unitary")
	s := chance.NewStream(1, 1)
	for _, l := range ImagineWalkRound(b, imagined(t, b, 1), false, &s) {
		made, _ := KindOf(l.Look)
		if made.BySide {
			continue
		}
		near(t, l.Look, made.tells(), information(made), 1e-12)
		i := item(t, b, l.On)
		for _, k := range Kinds() {
			if k.BySide || k.ID == "word" || k.ID == "photos" || k.AnswersTo != made.AnswersTo || !slices.Contains(k.Parts, b.PartOf(i).ID) || k.NotAtLead && b.PartOf(i).LeadJoints > 0 {
				continue
			}
			if information(k) > information(made)+1e-12 {
				t.Errorf("%s: %s is more informative than %s", l.On, k.ID, l.Look)
			}
		}
	}
}

// Answers and records occur as often as the data say: each share to within five standard
// errors (binomial), and those too rare for that pooled into one.
func TestImaginedFrequencies(t *testing.T) {
	const times = 4000
	b := load(t, "hardtop_on_frame")
	c := imagined(t, b, 2)
	share := func(what string, count, p float64) {
		t.Helper()
		near(t, what, count/times, p, 5*math.Sqrt(p*(1-p)/times)+1e-9)
	}
	s := chance.NewStream(8, 8)
	records := make([]map[SurveyEntry]float64, len(b.Items))
	for i := range records {
		records[i] = map[SurveyEntry]float64{}
	}
	for range times {
		for i, e := range ImagineSurvey(b, c, false, &s) {
			records[i][e]++
		}
	}
	rare, often := 0.0, 0.0
	for i := range records {
		for e, count := range records[i] {
			l, err := Reading(b.PartOf(i), e)
			if err != nil {
				t.Fatal(err)
			}
			p := l[c.Condition[i]][c.Finding[i]][b2i(c.Dent[i])]
			if p*times < 25 {
				rare += count
				continue
			}
			often += p
			share(b.Items[i].ID, count, p)
		}
	}
	rest := float64(len(records)) - often
	if sd := math.Sqrt(times * rest); math.Abs(rare-times*rest) > 5*sd {
		t.Errorf("rare records: %.0f, want %.0f within %.0f", rare, times*rest, 5*sd)
	}
	for _, covered := range []bool{false, true} {
		yes, made := map[[2]string]float64{}, []Look(nil)
		for range times {
			made = ImagineWalkRound(b, c, covered, &s)
			for _, l := range made {
				if l.Result == Yes {
					yes[[2]string{l.Look, l.On}]++
				}
			}
		}
		hidden := 0
		for _, l := range made {
			k, at, err := check(b, 0, l)
			if err != nil {
				t.Fatal(err)
			}
			worst := at[0]
			for _, i := range at {
				if c.Condition[i] > c.Condition[worst] {
					worst = i
				}
			}
			p := k.ChanceOfYes(int(c.Condition[worst]), c.Finding[worst], c.Dent[worst])
			if times := hiddenTimes[k.ID]; covered && times > 0 {
				sound := 1 - k.ChanceOfYes(0, 0, false)
				p = 1 - sound*math.Pow((1-p)/sound, times)
				if c.Condition[worst] >= firstHole {
					hidden++
				}
			}
			share(l.Look+" "+l.On, yes[[2]string{l.Look, l.On}], p)
		}
		if covered && hidden < 10 {
			t.Errorf("%d holes that cover can hide: too few to test anything", hidden)
		}
	}
}

// For a freshly covered car, the simulation and the likelihood give good results the
// same log ratios.
func TestImaginedGoodIsReadRight(t *testing.T) {
	for look := range hiddenTimes {
		k, ok := KindOf(look)
		if !ok {
			t.Fatal(look)
		}
		on := "outer_sill.left"
		if look == "thumb" {
			on = "front_floor.left"
		}
		shows, covered := both(t, on, Look{Look: look, Result: No, By: ByShop})
		if shows == covered {
			t.Errorf("%s: cover hides nothing", look)
		}
		for c := range car.Conditions {
			good := (1 - k.yesIfCovered(c, 0, false)) / (1 - k.yesIfCovered(0, 0, false))
			near(t, look+" "+car.ConditionIDs[c], good, covered[c][0][0]/covered[0][0][0], 1e-12)
			if yes := k.yesIfCovered(c, 0, false); !(yes > 0 && yes < 1) || yes > k.ChanceOfYes(c, 0, false)+1e-15 {
				t.Errorf("%s %s: a bad result with chance %g", look, car.ConditionIDs[c], yes)
			}
		}
	}
}
