package pricing

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// publishedHours returns the hours of every finding in the data file, read without this
// package's reader.
func publishedHours(t *testing.T) map[string][]float64 {
	var file struct {
		Findings struct {
			Kinds []struct {
				ID    string
				Hours []float64
			}
		}
	}
	if err := json.Unmarshal(figuresFile, &file); err != nil {
		t.Fatal(err)
	}
	out := map[string][]float64{}
	for _, k := range file.Findings.Kinds {
		if _, twice := out[k.ID]; twice {
			t.Errorf("%s twice", k.ID)
		}
		out[k.ID] = k.Hours
	}
	return out
}

// TestFurtherFindings prices every finding outside the odds on one item of a car with
// all uniforms at one half, a tenth or nine tenths. The hours are the figures of the
// file times the standard's metal factor (driver .75), nothing else changes, and they
// drop out when the part is replaced.
func TestFurtherFindings(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "driver")
	figures := publishedHours(t)
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	s := chance.NewStream(seed, 1)
	model.Draw(&s, c)
	for level, p := range []float64{.1, .5, .9} {
		u.Fill(&s)
		for _, list := range [][]float64{u.Hours, u.Found} {
			for i := range list {
				list[i] = p
			}
		}
		u.Car = [2]float64{.5, .5}
		priced := 0
		for _, f := range Findings() {
			if !f.Priced || f.ID == Missing {
				continue
			}
			priced++
			item := -1
			d := Undecided()
			d.WholeCar = []string{f.ID}
			if !f.PerCar {
				item = slices.IndexFunc(table.Body.Items, func(it car.Item) bool { return f.On(&table.Body.Parts[it.Part]) })
				d = also(table, item, f.ID)
				d.Way = choose(table, item, car.Treat).Way
			}
			plainChoice := d
			plainChoice.Also, plainChoice.WholeCar = nil, nil
			plain := with(t, table, plainChoice).Explain(c, "salt", u, b)
			lines := with(t, table, d).Explain(c, "salt", u, b)
			at := slices.IndexFunc(lines, func(l Line) bool { return l.ID == f.ID })
			if at < 0 {
				t.Fatalf("%s is not priced", f.ID)
			}
			want := int64(math.Round(figures[f.ID][level] * .75 * 1000))
			if l := lines[at]; l.Thousandths != want || l.Item != item || l.Trade != car.Metal {
				t.Errorf("%s at %g: %+v, want %d", f.ID, p, l, want)
			}
			if !slices.Equal(slices.Delete(lines, at, at+1), plain) {
				t.Errorf("%s moves something else", f.ID)
			}
			if f.PerCar {
				continue
			}
			d.Way = choose(table, item, car.Full).Way
			if !table.isDone(item, car.Full) {
				continue
			}
			if slices.ContainsFunc(with(t, table, d).Explain(c, "salt", u, b), func(l Line) bool { return l.ID == f.ID }) {
				t.Errorf("%s is priced on a part that is replaced", f.ID)
			}
		}
		if priced != 8 {
			t.Errorf("%d findings outside the odds and besides a missing part, want 8", priced)
		}
	}
}

// TestFindingFallsAwayUnderACover: a finding on metal that a full panel elsewhere
// covers is not priced.
func TestFindingFallsAwayUnderACover(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	s := chance.NewStream(seed, 1)
	model.Draw(&s, c)
	u.Fill(&s)
	tried := 0
	for cover, covered := range table.covers {
		for _, i := range covered {
			d := also(table, i, "bad_weld")
			d.Way = choose(table, cover, car.Full).Way
			if !table.isDone(cover, car.Full) {
				continue
			}
			tried++
			if slices.ContainsFunc(with(t, table, d).Explain(c, "salt", u, b), func(l Line) bool { return l.ID == "bad_weld" }) {
				t.Errorf("%s is mended under a new %s", table.Body.Items[i].ID, table.Body.Items[cover].ID)
			}
		}
	}
	if tried == 0 {
		t.Error("no full panel covers anything")
	}
}

// TestFindingKeys: every finding of an item has a letter of its own that the conditions
// do not use, and the odds include the findings that they should.
func TestFindingKeys(t *testing.T) {
	seen := map[string]string{}
	ids := map[string]Finding{}
	for _, f := range Findings() {
		ids[f.ID] = f
		if f.PerCar != (f.Key == "") {
			t.Errorf("%s: key %q", f.ID, f.Key)
		}
		if f.Name.US == "" || f.Name.UK == "" {
			t.Errorf("%s has no name", f.ID)
		}
		if before, twice := seen[f.Key]; twice && f.Key != "" {
			t.Errorf("%s and %s share %q", f.ID, before, f.Key)
		}
		seen[f.Key] = f.ID
	}
	for _, id := range damage.FindingIDs[1:] {
		if f, ok := ids[id]; !ok || f.Priced {
			t.Errorf("%s is carried by the odds and must be listed, not priced apart", id)
		}
	}
	for n := range ids {
		for _, part := range ids[n].Parts {
			if !onSomeBody(t, part) {
				t.Errorf("%s is recorded on %s, which no body has", n, part)
			}
		}
	}
}

// onSomeBody says whether any body has the part, with all options or with none.
func onSomeBody(t *testing.T, part string) bool {
	for _, id := range car.BodyIDs {
		plain, err := car.Load(id)
		if err != nil {
			t.Fatal(err)
		}
		for k := -1; k < len(plain.Options); k++ {
			b := plain
			if k >= 0 {
				if b, err = car.Load(id, plain.Options[k].ID); err != nil {
					t.Fatal(err)
				}
			}
			if _, ok := b.PartNamed(part); ok {
				return true
			}
		}
	}
	return false
}

// TestFoundIsDrawnLast: the uniforms of whole-car findings come last from the stream.
func TestFoundIsDrawnLast(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	u, s := table.NewUniforms(), chance.NewStream(seed, 1)
	u.Fill(&s)
	n := 5
	for _, list := range [][]float64{u.Way, u.Hours, u.Price, u.Access, u.AccessPay, u.Nut, u.NutHours, u.Strip, u.After, u.Sent} {
		n += len(list)
	}
	again := chance.NewStream(seed, 1)
	for range n {
		again.Uniform()
	}
	if len(u.Found) == 0 || u.Found[0] != again.Uniform() {
		t.Error("a finding of the whole car moves what was drawn before")
	}
}
