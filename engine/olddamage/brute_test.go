package olddamage

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
)

// brute is one state of everything, as the definition has it: hits in the order in which
// they fell, each with its zone and how it was mended, and the rest of the car.
type brute struct {
	repair        int
	at            []Zone
	mended        []Manner
	sagged        bool
	hand          int
	blasted       bool
	weight        float64
	manner        [Zones]Manner
	crooked, bent bool
}

// everything lists all states with their weights, by the definition alone.
func everything(g *Figures, b *car.Body, k Known, prior [damage.RepairStates]float64) (all []brute) {
	shares := g.sharesOn(b)
	for r := range prior {
		rate := g.HitsAYear * g.LeftOnTheRoad * k.RoadYears * g.TimesByWork[r]
		law := [3]float64{math.Exp(-rate), rate * math.Exp(-rate)}
		law[2] = 1 - law[0] - law[1]
		var lists [][]Zone
		lists = append(lists, nil)
		for a := range Zones {
			lists = append(lists, []Zone{a})
			for c := range Zones {
				if a != c {
					lists = append(lists, []Zone{a, c})
				}
			}
		}
		for _, at := range lists {
			v := prior[r] * law[len(at)]
			left := 1.0
			for _, z := range at {
				v *= shares[z] / left
				left -= shares[z]
			}
			for m := range int(math.Pow(3, float64(len(at)))) {
				one := brute{repair: r, at: at, weight: v}
				for _, z := range at {
					one.mended = append(one.mended, Well+Manner(m%3))
					one.weight *= g.Mended[r][m%3]
					one.manner[z] = Well + Manner(m%3)
					one.crooked = one.crooked || m%3 == 2
					m /= 3
				}
				for rest := range 2 * hands * 2 {
					x := one
					x.sagged, x.hand, x.blasted = rest%2 == 1, rest/2%hands, rest/2/hands == 1
					x.bent = x.crooked || x.sagged
					x.weight *= either(x.sagged, g.saggedOn(b)) * g.Hand[r][x.hand] * either(x.blasted, g.Blasted[r])
					x.weight *= seen(g, &k, &x, shares)
					all = append(all, x)
				}
			}
		}
	}
	return all
}

func either(yes bool, p float64) float64 {
	if yes {
		return p
	}
	return 1 - p
}

// seen is the likelihood of all evidence on one state.
func seen(g *Figures, k *Known, x *brute, shares [Zones]float64) float64 {
	v := 1.0
	if row, ok := g.answers[k.Answer]; ok {
		v = row[len(x.at)]
		if len(k.Where) > 0 {
			v *= named(g, k.Where, x, shares)
		}
	}
	for z, id := range ZoneIDs {
		v *= looked(g, k.Looks, id, int(x.manner[z]))
		if k.Zones[z] != "" && k.Zones[z] != MannerIDs[x.manner[z]] {
			v *= slip
		}
	}
	v *= looked(g, k.Looks, WholeCar, b2i(x.bent))
	if k.Square == Square && x.bent || k.Square == OutOfSquare && !x.bent {
		v *= slip
	}
	for _, h := range k.Hand {
		v *= g.left(&h, x.hand)
	}
	warped := g.SkinWarped[b2i(x.blasted)]
	return v * math.Pow(1-warped, float64(k.Skins[0])) * math.Pow(warped, float64(k.Skins[1]))
}

// named sums over the place that a knock was, where nothing was hit hard.
func named(g *Figures, where []string, x *brute, shares [Zones]float64) float64 {
	of := func(sure int) float64 {
		v := 1.0
		for z, id := range ZoneIDs {
			p := g.namedElse
			if x.manner[z] != NoHit {
				p = g.namedHit
			}
			if z != sure {
				v *= either(slices.Contains(where, id), p)
			} else if !slices.Contains(where, id) {
				v = 0
			}
		}
		return v
	}
	if len(x.at) > 0 {
		return of(-1)
	}
	sum := 0.0
	for z := range shares {
		sum += shares[z] * of(z)
	}
	return sum
}

// looked is the likelihood of the checks at one place, up to a factor: on each step the
// good and the bad ones apart, the largest whole and the rest by .4.
func looked(g *Figures, looks []evidence.Look, on string, state int) float64 {
	log := 0.0
	for k := 1; k <= state; k++ {
		for _, result := range []string{evidence.Yes, evidence.No} {
			var steps []float64
			for _, l := range looks {
				if l.On != on || l.Result != result {
					continue
				}
				kind, _ := LookNamed(l.Look)
				step := math.Log(either(result == evidence.Yes, kind.yes[k]) / either(result == evidence.Yes, kind.yes[k-1]))
				steps = append(steps, step*map[string]float64{"shop": 1, "customer": 0.6, "seller": 0.2}[l.By])
			}
			slices.SortFunc(steps, func(a, b float64) int { return int(math.Copysign(1, math.Abs(b)-math.Abs(a))) })
			for n, s := range steps {
				if n > 0 {
					s *= 0.4
				}
				log += s
			}
		}
	}
	return math.Exp(log)
}

// cases are kinds of evidence, alone and together.
func cases() map[string]Known {
	look := func(id, on, result, by string) evidence.Look {
		return evidence.Look{Look: id, On: on, Result: result, By: by}
	}
	return map[string]Known{
		"nothing":   {RoadYears: 27},
		"answer":    {RoadYears: 12, Answer: "hard", Where: []string{"front"}},
		"two named": {RoadYears: 45, Answer: "lightly", Where: []string{"rear", "roof"}},
		"looks": {RoadYears: 27, Answer: "not_that_i_know", Looks: []evidence.Look{look("lid_gap", "front", "yes", "customer"), look("ripples", "front", "yes", "shop"),
			look("not_factory_seams", "front", "no", "shop"), look("ripples", "left", "no", "customer"), look("tyres_or_crabwise", "car", "yes", "customer"), look("diagonals", "car", "no", "shop"), look("ripples", "rear", "could_not", "shop")}},
		"survey": {RoadYears: 15, Zones: [Zones]string{"roughly", "none", "", "well", ""}, Square: OutOfSquare, Skins: [2]int{3, 2},
			Hand: []HandSeen{{CanBraze: true, Kinds: []Kind{Brazed}}, {}, {CanBraze: true}, {Kinds: []Kind{BadPanel, BadWeld}}, {Patch: true, CanBraze: true}, {Patch: true, CanBraze: true, Kinds: []Kind{Brazed}}}},
		"three zones recorded": {RoadYears: 15, Zones: [Zones]string{"roughly", "crooked", "well", "none", "none"}, Square: Square},
	}
}

// TestBruteForce: the odds are those of an enumeration of every state of everything, by
// the definition of conditional probability.
func TestBruteForce(t *testing.T) {
	g, prior := Starting(), [damage.RepairStates]float64{0.36, 0.45, 0.12, 0.07}
	for _, body := range []string{"two_door_unitary", "convertible_unitary", "hardtop_on_frame"} {
		b, err := car.Load(body)
		if err != nil {
			t.Fatal(err)
		}
		for name, k := range cases() {
			o := g.Condition(b, k)
			var posterior [damage.RepairStates]float64
			sum := 0.0
			for r := range prior {
				posterior[r] = prior[r]
				if o.OfRepairs != [damage.RepairStates]float64{} {
					posterior[r] *= o.OfRepairs[r]
				}
				sum += posterior[r]
			}
			for r := range posterior {
				posterior[r] /= sum
			}
			same(t, body+" "+name, o.Chances(posterior), posterior, everything(g, b, k, prior))
		}
	}
}

func same(t *testing.T, name string, got Chances, repairs [damage.RepairStates]float64, all []brute) {
	t.Helper()
	total := 0.0
	for n := range all {
		total += all[n].weight
	}
	share := func(is func(x *brute) bool) (sum float64) {
		for n := range all {
			if is(&all[n]) {
				sum += all[n].weight
			}
		}
		return sum / total
	}
	near := func(what string, got, want float64) {
		if !(math.Abs(got-want) <= 1e-12) {
			t.Errorf("%s, %s: %.15g, enumerated %.15g", name, what, got, want)
		}
	}
	for r := range repairs {
		near("R "+damage.RepairStateIDs[r], repairs[r], share(func(x *brute) bool { return x.repair == r }))
	}
	for z, id := range ZoneIDs {
		for m := range Manners {
			near(id+" "+MannerIDs[m], got.Manner[z][m], share(func(x *brute) bool { return x.manner[z] == m }))
		}
	}
	for h := range hands {
		near("hand", got.Hand[h], share(func(x *brute) bool { return x.hand == h }))
	}
	near("hit", got.Hit, share(func(x *brute) bool { return len(x.at) > 0 }))
	near("out of square", got.OutOfSquare, share(func(x *brute) bool { return x.bent }))
	near("blasted", got.Blasted, share(func(x *brute) bool { return x.blasted }))
	near("to mend", got.ToMend, share(func(x *brute) bool { return x.bent || slices.Contains(x.mended, Roughly) }))
}
