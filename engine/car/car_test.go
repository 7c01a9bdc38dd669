package car

import (
	"math"
	"testing"
)

// TestBodies loads every body and checks its references.
func TestBodies(t *testing.T) {
	items := map[string]int{"two_door_unitary": 91, "hardtop_on_frame": 99, "open_two_seater": 101, "pickup": 88, "convertible_unitary": 90, "four_door_saloon": 101}
	for _, id := range BodyIDs {
		b, err := Load(id)
		if err != nil {
			t.Fatal(err)
		}
		optional := 0
		if id == "pickup" {
			optional = 2 // the outside rear fenders are an option
		}
		if n := len(b.Items) + optional; n != items[id] && len(b.Items) != items[id] {
			t.Errorf("%s has %d items", id, len(b.Items))
		}
		for i := range b.Items {
			p := b.PartOf(i)
			for _, cover := range p.CoveredBy {
				if _, ok := b.PartNamed(cover); !ok {
					t.Errorf("%s: %s is covered by %s, which the body does not have", id, p.ID, cover)
				}
			}
			if b.Pockets[b.Items[i].Pocket].Group != p.Group {
				t.Errorf("%s: %s is in a pocket of another group", id, b.Items[i].ID)
			}
			for w, way := range p.Ways {
				if !way.Done && way.Once == "" && !p.Ways[way.Instead].Done {
					t.Errorf("%s: %s: %s is replaced by %s, which is not done either", id, p.ID, WayIDs[w], WayIDs[way.Instead])
				}
			}
		}
		if all, outer := b.AreaM2(); outer <= 0 || outer >= all || b.LeadJoints() == 0 {
			t.Errorf("%s: areas %g and %g, %d lead joints", id, all, outer, b.LeadJoints())
		}
	}
}

// TestGauges checks that the thickness of every part is that of its gauge in the
// Manufacturers' Standard Gauge: ounces per square foot, divided by 16 and by 41.82 lb
// per square foot per inch. The ounces are those of the published table.
func TestGauges(t *testing.T) {
	ounces := map[int]float64{11: 80, 12: 70, 14: 50, 16: 40, 18: 32, 19: 28, 20: 24}
	for _, id := range BodyIDs {
		b, err := Load(id)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range b.Parts {
			want := ounces[p.Gauge] / 16 / 41.82 * 25.4
			if math.Abs(p.MM-want) > 0.006 {
				t.Errorf("%s: %s in gauge %d is %g mm, the table has %.3f", id, p.ID, p.Gauge, p.MM, want)
			}
		}
	}
}

// TestRefusals checks that an unknown body or option is an error.
func TestRefusals(t *testing.T) {
	if _, err := Load("hovercraft"); err == nil {
		t.Error("accepted an unknown body")
	}
	if _, err := Load("two_door_unitary", "outside_fenders"); err == nil {
		t.Error("accepted an option of another body")
	}
	plain, err := Load("pickup")
	if err != nil {
		t.Fatal(err)
	}
	wide, err := Load("pickup", "outside_fenders")
	if err != nil {
		t.Fatal(err)
	}
	if len(wide.Items) <= len(plain.Items) {
		t.Error("the option adds no items")
	}
}

// TestReadOnce checks that the words are read once and each body once for each choice of
// options.
func TestReadOnce(t *testing.T) {
	load := func(options ...string) *Body {
		b, err := Load("pickup", options...)
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	plain, outside := load(), load("outside_fenders")
	if load() != plain || load("outside_fenders") != outside || plain == outside {
		t.Error("a body is read again, or returned for other options")
	}
	first, err := LoadCommon()
	again, _ := LoadCommon()
	if err != nil || first != again {
		t.Errorf("the words are read again: %v", err)
	}
}
