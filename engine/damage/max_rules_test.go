package damage

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// What nobody can mean is refused with an error, and entries on the same items are
// independent news: together they are one entry with both likelihoods multiplied.
func TestMaxEntries(t *testing.T) {
	b := body(t, "two_door_unitary")
	known := func(w ...MaxEvidence) Known { return Known{Body: b, Histories: salted(t), Worst: w} }
	for name, w := range map[string]MaxEvidence{
		"no items":      {nil, gapBad},
		"no such item":  {[]int{0, len(b.Items)}, gapBad},
		"before all":    {[]int{-1, 3}, gapBad},
		"wrong order":   {[]int{4, 3}, gapBad},
		"zero":          {[]int{3, 4}, [car.Conditions]float64{0, 1, 1, 1, 1, 1}},
		"not a number":  {[]int{3, 4}, [car.Conditions]float64{math.NaN(), 1, 1, 1, 1, 1}},
		"out of bounds": {[]int{3, 4, 5}, [car.Conditions]float64{1e-9, 1, 1, 1, 1, 1}},
	} {
		if m, err := New(known(w), coarse); err == nil || m != nil {
			t.Errorf("%s: model %v, error %v, want a refusal", name, m, err)
		}
	}
	if _, err := New(known(make([]MaxEvidence, MostMaxEvidence+1)...), coarse); err == nil {
		t.Errorf("%d entries were taken", MostMaxEvidence+1)
	}
	left := onSide(b, car.Left, gapBad)
	square := left
	for k := range square.Likely {
		square.Likely[k] *= square.Likely[k]
	}
	twice, err := New(known(left, left), coarse)
	if err != nil {
		t.Fatal(err)
	}
	once, err := New(known(square), coarse)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "log evidence", twice.LogEvidence(), once.LogEvidence(), 0)
}

// Lead joints that were counted are exact in every draw; nothing else moves, so the
// same uniforms were taken.
func TestCountedLeadJoints(t *testing.T) {
	b := body(t, "two_door_unitary")
	counted := make([]int, len(b.Items))
	want := map[int]int{}
	for i := range counted {
		counted[i] = -1
		if n := b.PartOf(i).LeadJoints; n > 0 && len(want) < 3 {
			counted[i] = len(want) % (n + 1)
			want[i] = counted[i]
		}
	}
	if len(want) < 3 {
		t.Fatal("too few lead joints")
	}
	free, err := New(Known{Body: b, Histories: salted(t)}, coarse)
	if err != nil {
		t.Fatal(err)
	}
	fixed, err := New(Known{Body: b, Histories: salted(t), LeadFailed: counted}, coarse)
	if err != nil {
		t.Fatal(err)
	}
	sa, sb := chance.NewStream(1, 1), chance.NewStream(1, 1)
	x, y := free.NewCar(), fixed.NewCar()
	moved := 0
	for range 200 {
		free.Draw(&sa, x)
		fixed.Draw(&sb, y)
		for i := range b.Items {
			if n, known := want[i]; known {
				if int(y.LeadFailed[i]) != n {
					t.Fatalf("%s: %d failed, counted %d", b.Items[i].ID, y.LeadFailed[i], n)
				}
				moved += b2i(x.LeadFailed[i] != y.LeadFailed[i])
			} else if x.LeadFailed[i] != y.LeadFailed[i] {
				t.Fatalf("%s moved", b.Items[i].ID)
			}
			if x.Condition[i] != y.Condition[i] || x.Finding[i] != y.Finding[i] || x.Dent[i] != y.Dent[i] {
				t.Fatalf("%s moved", b.Items[i].ID)
			}
		}
	}
	if moved == 0 {
		t.Error("counting changed nothing: the comparison says nothing")
	}
}

// With Worst entries a draw takes as many uniforms as without, and items in groups
// that they do not reach stay as they were where the root does.
func TestMaxTakesTheSameUniforms(t *testing.T) {
	for name, c := range worstCases {
		m, _ := c.build(t, coarse)
		bare, err := New(Known{Body: m.Body, Histories: m.Histories, Seen: m.given[0].seen, EarlierWork: "not_sure"}, coarse)
		if err != nil {
			t.Fatal(err)
		}
		sa, sb := chance.NewStream(6, 2), chance.NewStream(6, 2)
		x, y := m.NewCar(), bare.NewCar()
		roof, _ := m.Body.ItemNamed("hood.whole")
		same := 0
		for range 300 {
			m.Draw(&sa, x)
			bare.Draw(&sb, y)
			if x.shared.Root == y.shared.Root {
				same++
				if x.Condition[roof] != y.Condition[roof] || x.Finding[roof] != y.Finding[roof] {
					t.Fatalf("%s: the hood moved", name)
				}
			}
		}
		if a, b := sa.Uint64(), sb.Uint64(); a != b {
			t.Errorf("%s: the streams are no longer level", name)
		}
		if same < 50 {
			t.Errorf("%s: the root came out the same %d times of 300 only", name, same)
		}
	}
}

// Where every part rusts on its own luck, what is seen of one side reaches the other
// only by what is common to the car: there is one history here, so by the state of
// earlier repairs alone (law of total probability).
func TestMaxOfItemsOnTheirOwn(t *testing.T) {
	b := body(t, "two_door_unitary")
	w := []MaxEvidence{onSide(b, car.Left, gapBad), either(t, b, "drip_rail.left", "drip_rail.right", holeSeen)}
	histories := salted(t)[:1]
	histories[0].Weight = 1
	m, err := New(Known{Body: b, Histories: histories, Worst: w, Independent: true, EarlierWork: "not_sure"}, coarse)
	if err != nil {
		t.Fatal(err)
	}
	chances, s, state := m.Chances(), &slowly{m: m}, m.RepairState()
	for _, id := range []string{"front_rail.right", "hood.whole"} {
		i, _ := b.ItemNamed(id)
		want := 0.0
		for r, v := range state {
			g := s.item(i, r, 0, 0)
			want += v * (g[4] + g[5])
		}
		near(t, id, chances[i].Holed(), want, 1e-7)
	}
}
