package evidence

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// A second implementation of the rules for several checks on one item, with a different
// method: sorted sizes, powers and sums over pairs. It has its own copy of the figures
// (assumptions, as in the data).

// hiddenTimes is the factor on a good result on a freshly covered car.
var hiddenTimes = map[string]float64{"bubbles": .03, "open_hole": .03, "prod": .03, "tap": .1, "thumb": .1}

// ruledWeight is the weight of an answer by who gave it.
func ruledWeight(l Look) float64 {
	switch {
	case l.Look == "word" && l.By != ByCustomer:
		return .2
	case l.By == ByShop, l.Look == "open_hole" && l.Result == Yes:
		return 1
	}
	return .6
}

// ruledLog is the weighted log chance of an answer.
func ruledLog(l Look, condition int, f damage.Finding, dent bool) float64 {
	k, _ := KindOf(l.Look)
	p := k.ChanceOfYes(condition, f, dent)
	if l.Look == "open_hole" {
		p = [car.Conditions]float64{.0005, .0005, .0005, .15, .45, .75}[condition]
		if l.Result == Yes && l.By != ByShop && condition < 3 {
			p = .002
		}
	}
	if l.Result == No {
		p = 1 - p
	}
	return ruledWeight(l) * math.Log(p)
}

// ruledStep is the log ratio of condition k to the previous one. Bad and good results
// are separate; of each, the largest in size counts in full and the others four tenths.
func ruledStep(list []Look, k int, covered bool) (total float64) {
	for _, answer := range []string{Yes, No} {
		var sizes []float64
		for _, l := range list {
			if kind, _ := KindOf(l.Look); l.Result != answer || kind.AnswersTo != OfCondition {
				continue
			}
			size := ruledLog(l, k, 0, false) - ruledLog(l, k-1, 0, false)
			if times := hiddenTimes[l.Look]; covered && answer == No && times > 0 {
				size *= times
			}
			sizes = append(sizes, size)
		}
		slices.SortFunc(sizes, func(a, b float64) int { return cmp.Compare(math.Abs(b), math.Abs(a)) })
		for n, size := range sizes {
			if n > 0 {
				size *= .4
			}
			total += size
		}
	}
	return total
}

// ruledFinding is the log likelihood of a finding, with or without filler over a dent.
// The answer with the widest spread counts in full, the others four tenths.
func ruledFinding(list []Look, f damage.Finding, dent bool) (total float64) {
	widest, width, counted := "", 0.0, 0.0
	for _, kind := range Kinds() { // on a tie the first of them
		for _, l := range list {
			if l.Look != kind.ID || kind.AnswersTo != OfFinding || l.Result == CouldNot {
				continue
			}
			low, high := math.Inf(1), math.Inf(-1)
			for g := range damage.Findings {
				for _, d := range []bool{false, true} {
					low, high = min(low, ruledLog(l, 0, g, d)), max(high, ruledLog(l, 0, g, d))
				}
			}
			this := ruledLog(l, 0, f, dent)
			total += .4 * this
			if high-low > width+1e-12 {
				widest, width, counted = l.Look, high-low, this
			}
		}
	}
	if widest != "" {
		total += .6 * counted
	}
	return total
}

func TestRules(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 1000
	all := gopter.NewProperties(parameters)
	bodies := allBodies(t)
	visits := genVisit(bodies)
	near := func(got, want float64) bool { return math.Abs(math.Log(got)-want) < 1e-9 }
	all.Property("looks at one item are joined as the rules say, on a car in either state of cover", prop.ForAll(
		func(v visit) bool {
			list := v.looks(v.answers)
			for _, on := range bothCovers {
				l := v.seen(t, list, on)
				if l == nil {
					continue
				}
				for k := range l {
					for f := range damage.Findings {
						for d, dent := range []bool{false, true} {
							if !near(l[k][f][d]/l[k][0][0], ruledFinding(list, f, dent)-ruledFinding(list, 0, false)) {
								return false
							}
							if k > 0 && !near(l[k][f][d]/l[k-1][f][d], ruledStep(list, k, on == freshlyCovered)) {
								return false
							}
						}
					}
				}
			}
			return true
		}, visits))
	all.Property("looks at either side are joined as those at one item, and apart from them", prop.ForAll(
		func(v visit) bool {
			either := Either(v.body, v.item)
			var here, list []Look
			for _, l := range v.looks(v.answers) {
				if kind, _ := KindOf(l.Look); kind.AnswersTo == OfCondition && l.By != ByShop {
					here = append(here, l)
					l.On = either
				}
				list = append(list, l)
			}
			seen, err := FromLooks(v.body, list)
			if either == "" {
				return err != nil || len(here) == 0
			}
			if err != nil {
				t.Fatal(err)
			}
			for n, worst := range [][]damage.MaxEvidence{seen.Worst, seen.CoveredWorst} {
				alone := v.seen(t, here, bothCovers[n])
				if alone == nil || n == 1 && seen.CoveredItems == nil {
					continue
				}
				for k, p := range worst[0].Likely {
					if len(worst) != 1 || p != alone[k][0][0] {
						return false
					}
				}
			}
			return true
		}, visits))
	all.Property("a seller's look counts as a customer's, but for the word", prop.ForAll(
		func(v visit) bool {
			var a, b []Look
			for _, l := range v.looks(v.answers) {
				if l.By == ByShop || l.Look != sellersWord && l.By == ByCustomer {
					a = append(a, l)
					if l.By == ByCustomer {
						l.By = BySeller
					}
					b = append(b, l)
				}
			}
			x, errX := FromLooks(v.body, a)
			y, errY := FromLooks(v.body, b)
			if errX != nil || errY != nil {
				t.Fatal(errX, errY)
			}
			for i := range x.Items {
				if p, q := x.Items[i], y.Items[i]; p != nil && *p != *q {
					return false
				}
			}
			return x.Cover == y.Cover
		}, visits))
	all.Property("one more part without fresh undercoat never speaks for cover, one with it never against", prop.ForAll(
		func(at []int) bool {
			b := bodies[at[0]%len(bodies)]
			items := Items(b, "fresh_under")
			odds := func(list []Look) float64 {
				seen, err := FromLooks(b, list)
				if err != nil {
					t.Fatal(err)
				}
				return seen.Cover[freshlyCovered] / seen.Cover[asItShows]
			}
			var list []Look
			for n, x := range at {
				on := b.Items[items[(n+at[0])%len(items)]].ID
				list = append(list, Look{"fresh_under", on, [...]string{Yes, No, No, CouldNot}[x%4], witnessIDs[x/4%3]})
				now := odds(list)
				before := odds(list[:n])
				if list[n].Result == Yes && now < before || list[n].Result != Yes && now > before {
					return false
				}
			}
			return true
		}, gen.SliceOfN(6, gen.IntRange(0, 1<<20))))
	all.TestingRun(t)
}
