package wording

import (
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
)

func idsOf(list []Danger) (ids []string) {
	for _, d := range list {
		for _, c := range d.Cautions {
			ids = append(ids, c.ID)
		}
	}
	return ids
}

func steps(ids ...string) (out []pricing.WorkLine) {
	for _, id := range ids {
		out = append(out, pricing.WorkLine{Kind: pricing.StripStep, ID: id, Name: car.Words{US: "Step " + id, UK: "Step " + id}})
	}
	return out
}

// TestDangersOnce: a caution is at the first line that causes it, and a line whose
// cautions were all given before is left out. Worked by hand from the data.
func TestDangersOnce(t *testing.T) {
	text := textOf(t, sampleShop(t))
	got := text.StripDangers(&session.Work{Strip: steps("undercoat", "sealer", "meet", "purge_1", "purge_2")})
	if len(got) != 2 || got[0].Line != "Step undercoat" || got[1].Line != "Step purge_1" || !slices.Equal(idsOf(got), []string{"asbestos", "compressed_air"}) {
		t.Errorf("%v: %v", idsOf(got), got)
	}
}

// TestDangersOfParts: what is found on a part adds its caution to the part; the next part
// with the same work has none.
func TestDangersOfParts(t *testing.T) {
	text := textOf(t, sampleShop(t))
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	patch := pricing.WorkLine{Kind: pricing.WayOfRepair, ID: "patch"}
	packed := pricing.WorkLine{Kind: pricing.FoundWork, ID: "packed", Name: car.Words{US: "Box packed", UK: "Box packed"}}
	got := text.ToDoDangers(b, &session.Work{Cards: []session.CardWork{{Item: 0, Lines: []pricing.WorkLine{patch, packed}}, {Item: 1, Lines: []pricing.WorkLine{patch}}}})
	if len(got) != 1 || got[0].On != b.Items[0].ID || got[0].Line != "Patch, box packed" {
		t.Fatalf("%v", got)
	}
	if ids := idsOf(got); ids[len(ids)-1] != "foam" || !slices.Contains(ids, "fire_watch") || len(ids) != len(slices.Compact(slices.Sorted(slices.Values(ids)))) {
		t.Errorf("%v", ids)
	}
}

// TestAirbagsByYear: airbags concern cars made from model year 1974 on (the first sold
// with them; from memory), and cars whose year nobody knows.
func TestAirbagsByYear(t *testing.T) {
	text := textOf(t, sampleShop(t))
	for made, want := range map[int]bool{1969: false, 1973: false, 1974: true, 1985: true, 0: true} {
		work := session.Work{Made: made, Strip: steps("disassemble")}
		shop := slices.Contains(idsOf(text.StripDangers(&work)), "airbags")
		customer := slices.ContainsFunc(text.CustomersCautions(&work), func(c Caution) bool { return c.ID == "airbags" })
		if shop != want || customer != want {
			t.Errorf("made in %d: shop %v, customer %v", made, shop, customer)
		}
	}
}

// TestCustomersCautions: the customer gets what customers may do or have to decide, and
// only of work that the car has.
func TestCustomersCautions(t *testing.T) {
	text := textOf(t, sampleShop(t))
	ids := func(work *session.Work) (out []string) {
		for _, c := range text.CustomersCautions(work) {
			out = append(out, c.ID)
		}
		return out
	}
	all := []string{"not_seen", "rights", "strip_first", "asbestos", "lifting", "structure", "belts", "numbers", "old_paint", "springs", "airbags", "refrigerant", "local"}
	if got := ids(nil); !slices.Equal(got, all) {
		t.Errorf("%v", got)
	}
	if got := ids(&session.Work{Strip: steps("undercoat")}); !slices.Equal(got, []string{"not_seen", "rights", "strip_first", "asbestos", "belts", "old_paint", "local"}) {
		t.Errorf("%v", got)
	}
	for _, c := range text.CustomersCautions(nil) {
		if c.ID == "lifting" && (!CustomerDoes(&c, &session.Work{CustomerChecks: true}) || CustomerDoes(&c, &session.Work{}) || CustomerDoes(&c, nil)) ||
			c.ID == "springs" && CustomerDoes(&c, &session.Work{CustomerChecks: true}) {
			t.Errorf("%s: wrong about what the customer does", c.ID)
		}
	}
}
