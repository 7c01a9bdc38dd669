package damage

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/exposure"
)

// What was seen of the worst of several items against a calculation by another
// way: given the root, the distribution of the worst of either set is built up item
// by item, level by level, as a table of both worsts, without components, signs,
// tables in x or messages. Coarse grids keep it small; the arithmetic is the same.

var coarse = Grids{Car: Grid{5, -3, 3}, Group: Grid{3, -2, 2}, Pocket: Grid{3, -2, 4}}

// carrying are the parts that a door gap answers to (data/looks.json of package
// evidence, which this package cannot import).
var carrying = []string{"outer_sill", "inner_sill", "sill_web", "post_foot", "centre_post", "front_rail", "rear_rail",
	"spring_mount", "susp_mount", "chassis_rail", "outrigger", "body_mount"}

func body(t testing.TB, id string) *car.Body {
	t.Helper()
	b, err := car.Load(id)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func salted(t testing.TB) []exposure.History {
	t.Helper()
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{
		{Climate: "salt", Years: 10, Kept: "driven_all_year"}, {Climate: "salt", Years: 40, Kept: "garage"}}}}, exposure.Asked{Year: 2026, WorkedIn: 1990})
	if err != nil {
		t.Fatal(err)
	}
	return histories
}

var (
	gapBad   = [car.Conditions]float64{.15, .16, .18, .22, .4, .65}
	gapGood  = [car.Conditions]float64{.97, .97, .95, .92, .75, .45}
	holeSeen = [car.Conditions]float64{.06, .15, .3, .5, .6, 1}
)

func onSide(b *car.Body, side car.Side, likely [car.Conditions]float64) MaxEvidence {
	w := MaxEvidence{Likely: likely}
	for i := range b.Items {
		if slices.Contains(carrying, b.PartOf(i).ID) && b.Items[i].Side == side {
			w.Items = append(w.Items, i)
		}
	}
	return w
}

func either(t testing.TB, b *car.Body, left, right string, likely [car.Conditions]float64) MaxEvidence {
	t.Helper()
	i, ok := b.ItemNamed(left)
	k, ok2 := b.ItemNamed(right)
	if !ok || !ok2 {
		t.Fatalf("no %s or %s", left, right)
	}
	return MaxEvidence{[]int{min(i, k), max(i, k)}, likely}
}

type worstCase struct {
	body    string
	sides   []car.Side // left bad, right good
	pairs   [][2]string
	targets []string
	seen    string // an item of which something was seen alone
	across  string // an item of the other side that counts in the first side too
}

var worstCases = map[string]worstCase{
	"one side":           {"two_door_unitary", []car.Side{car.Left}, nil, []string{"inner_sill.left", "front_rail.right", "hood.whole"}, "outer_sill.left", ""},
	"both sides":         {"two_door_unitary", []car.Side{car.Left, car.Right}, nil, []string{"outer_sill.left", "spring_mount.rear_right"}, "outer_sill.left", ""},
	"a frame, one water": {"hardtop_on_frame", []car.Side{car.Left, car.Right}, [][2]string{{"chassis_rail.left", "chassis_rail.right"}}, []string{"chassis_rail.left", "chassis_kickup.whole"}, "chassis_rail.right", ""},
	"either sill":        {"two_door_unitary", nil, [][2]string{{"outer_sill.left", "outer_sill.right"}}, []string{"outer_sill.left", "outer_sill.right", "inner_sill.right"}, "outer_sill.right", ""},
	"either roof rail":   {"two_door_unitary", nil, [][2]string{{"drip_rail.left", "drip_rail.right"}}, []string{"drip_rail.right", "roof_skin.whole"}, "drip_rail.left", ""},
	"three pairs":        {"two_door_unitary", nil, [][2]string{{"outer_sill.left", "outer_sill.right"}, {"inner_sill.left", "inner_sill.right"}, {"wheel_arch_lip.left", "wheel_arch_lip.right"}}, []string{"inner_sill.left", "sill_web.left"}, "outer_sill.left", ""},
	"a side and a pair":  {"two_door_unitary", []car.Side{car.Left}, [][2]string{{"outer_sill.left", "outer_sill.right"}}, []string{"outer_sill.left", "outer_sill.right", "sill_web.left"}, "inner_sill.left", ""},
	"sides and pairs": {"two_door_unitary", []car.Side{car.Left, car.Right}, [][2]string{{"outer_sill.left", "outer_sill.right"}, {"post_foot.front_left", "post_foot.front_right"}},
		[]string{"outer_sill.right", "post_foot.front_left"}, "outer_sill.right", ""},
	"a set across": {"two_door_unitary", []car.Side{car.Left, car.Right}, [][2]string{{"outer_sill.left", "outer_sill.right"}}, []string{"outer_sill.left", "outer_sill.right", "inner_sill.right"}, "sill_web.left", "outer_sill.right"},
	"sides and more pairs": {"two_door_unitary", []car.Side{car.Left, car.Right}, [][2]string{{"outer_sill.left", "outer_sill.right"}, {"post_foot.front_left", "post_foot.front_right"}, {"sill_web.left", "sill_web.right"}},
		[]string{"outer_sill.left", "sill_web.right", "inner_sill.left"}, "outer_sill.right", ""},
}

func (c worstCase) build(t *testing.T, grids Grids) (*Model, *slowly) {
	t.Helper()
	b := body(t, c.body)
	s := &slowly{seen: map[int]bool{}}
	for n, side := range c.sides {
		s.nodes = append(s.nodes, onSide(b, side, [][car.Conditions]float64{gapBad, gapGood}[n]))
	}
	if i, ok := b.ItemNamed(c.across); ok {
		s.nodes[0].Items = append(slices.Clone(s.nodes[0].Items), i)
		slices.Sort(s.nodes[0].Items)
	}
	for n, p := range c.pairs {
		s.pairs = append(s.pairs, either(t, b, p[0], p[1], [][car.Conditions]float64{holeSeen, gapGood, gapBad}[n]))
	}
	all := append(slices.Clone(s.pairs), s.nodes...)
	for _, w := range all {
		for _, i := range w.Items {
			s.seen[i] = true
		}
	}
	seen := make([]*Likelihood, len(b.Items))
	i, ok := b.ItemNamed(c.seen)
	if !ok {
		t.Fatalf("no %s", c.seen)
	}
	seen[i] = NoEvidence()
	for k := range seen[i] {
		for f := range seen[i][k] {
			seen[i][k][f] = [2]float64{.1 + .15*float64(k), .4 + .1*float64(f)}
		}
	}
	var err error
	if s.m, err = New(Known{Body: b, Histories: salted(t), Seen: seen, Worst: all, EarlierWork: "not_sure"}, grids); err != nil {
		t.Fatal(err)
	}
	s.seen[i] = true
	return s.m, s
}

// The tolerance is that of reading tables in x (package comment of table.go), a few
// times over for the items that are read together.
func TestMaxAgainstDistributions(t *testing.T) {
	for name, c := range worstCases {
		t.Run(name, func(t *testing.T) {
			m, s := c.build(t, coarse)
			chances := m.Chances()
			for _, id := range c.targets {
				i, ok := m.Body.ItemNamed(id)
				if !ok {
					t.Fatalf("no %s", id)
				}
				if one := m.ChancesOf(i); one != chances[i] {
					t.Errorf("%s alone: %v, among all %v", id, one, chances[i])
				}
				want, _, evidence := s.chances(i)
				for k := range want {
					near(t, id+" "+car.ConditionIDs[k], chances[i].Condition[k], want[k], 1e-7)
				}
				near(t, "log evidence", m.LogEvidence(), math.Log(evidence), 1e-6)
			}
		})
	}
}

// Drawn cars against the same distributions and chances: shares to five standard
// errors (binomial).
func TestMaxDrawn(t *testing.T) {
	const cars = 8000
	for name, c := range worstCases {
		t.Run(name, func(t *testing.T) {
			m, s := c.build(t, coarse)
			chances := m.Chances()
			i, _ := m.Body.ItemNamed(c.targets[0])
			_, both, _ := s.chances(i)
			counts := make([]Chances, len(m.Body.Items))
			var worst worsts
			stream, drawn := chance.NewStream(20261125, 1), m.NewCar()
			for range cars {
				m.Draw(&stream, drawn)
				at := [2]int8{}
				for i := range counts {
					counts[i].Condition[drawn.Condition[i]]++
					counts[i].Finding[drawn.Finding[i]]++
					counts[i].Dent += float64(b2i(drawn.Dent[i]))
					for n, w := range s.nodes {
						if slices.Contains(w.Items, i) {
							at[n] = max(at[n], drawn.Condition[i])
						}
					}
				}
				worst[at[0]][at[1]]++
			}
			share := func(what string, count, want float64) {
				near(t, what, count/cars, want, 5*math.Sqrt(want*(1-want)/cars)+2/float64(cars))
			}
			for i := range counts {
				id := m.Body.Items[i].ID
				for k, v := range counts[i].Condition {
					share(id+" "+car.ConditionIDs[k], v, chances[i].Condition[k])
				}
				for f, v := range counts[i].Finding {
					share(id+" "+FindingIDs[f], v, chances[i].Finding[f])
				}
				share(id+" dent", counts[i].Dent, chances[i].Dent)
			}
			for l := range worst {
				for r, v := range worst[l] {
					share("worst of both sides", v, both[l][r])
				}
			}
		})
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.7f, want %.7f", what, got, want)
	}
}
