package pricing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/rates"
)

// The expected figures of these tests are worked out by hand from data/parts.json, which
// gives their sources, and from the body files.

// soundTables are the tables of all bodies, each with a sound car.
func soundTables(t *testing.T, standard string) (tables []*Table, cars []*damage.Car) {
	t.Helper()
	for _, body := range car.BodyIDs {
		model, table := testTable(t, body, standard)
		tables, cars = append(tables, table), append(cars, model.NewCar())
	}
	return tables, cars
}

// alsoOn decides one finding on items.
func alsoOn(table *Table, id string, items ...int) Decided {
	d := Undecided()
	d.Also = make([][]string, len(table.items))
	for _, i := range items {
		d.Also[i] = []string{id}
	}
	return d
}

// ofItem adds up the hours of a trade on an item, of the way itself or of a kind of line.
func ofItem(lines []Line, item int, id string, trade car.Trade) (hours float64) {
	for _, l := range lines {
		if l.Item == item && l.ID == id && l.Trade == trade && l.Price == 0 {
			hours += float64(l.Thousandths) / 1000
		}
	}
	return hours
}

func near(t *testing.T, what string, is, want float64) {
	t.Helper()
	if math.Abs(is-want) > 0.0011 {
		t.Errorf("%s: %g, by hand %g", what, is, want)
	}
}

// TestMissingByHand: a missing rocker takes the hours of a full panel with .85 of the
// metalwork, because nothing is taken off first, and the price of one. A missing fender is
// bolted on and saves nothing. Finding them takes .5 hours for the rocker, which is made
// today, and 5 for the fender, which the sample says must be found; none where the shop's
// rate includes chasing parts, as the sample's does. A lower fender has only a section.
func TestMissingByHand(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	chasing := *table.Rates
	chasing.Labour.Includes = nil
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	apart, err := NewTable(table.Body, common, &chasing, "show", "whole_body")
	if err != nil {
		t.Fatal(err)
	}
	lower := table.Body.PartOf(itemNamed(t, table, "fender_lower.left")).Ways[car.Section]
	for _, c := range []struct {
		item               string
		metal, fit, search float64
		way                car.Way
	}{
		{"outer_sill.left", 22 * .85, 5, .5, car.Full},
		{"fender_upper.left", 2, 4, 5, car.Full},
		{"fender_lower.left", lower.Hours[car.Metal][1] * .85, lower.Hours[car.Fit][1], 1, car.Section},
		{"door_shell.left", 7, 6, 5, car.Full},
	} {
		i := itemNamed(t, table, c.item)
		b, lines := bill(t, table, model.NewCar(), alsoOn(table, Missing, i), .5)
		if b.Way[i] != c.way {
			t.Errorf("%s: %s", c.item, car.WayIDs[b.Way[i]])
		}
		near(t, c.item+", metalwork", ofItem(lines, i, "", car.Metal), c.metal)
		near(t, c.item+", fitting", ofItem(lines, i, "", car.Fit), c.fit)
		near(t, c.item+", search included", ofItem(lines, i, "search", car.Fit), 0)
		price := 0.0
		for _, l := range lines {
			if l.Item == i && l.ID == "part" {
				price += float64(l.Price) / 100
			}
		}
		near(t, c.item+", price", price, table.labour[i][c.way].price.Likely()/100)
		u, found := apart.NewUniforms(), 0.0
		setAll(u, .5)
		hours := []float64{}
		for n := range uint64(400) {
			u.Supply.Seed = n
			lines := with(t, apart, alsoOn(apart, Missing, i)).Explain(model.NewCar(), "dry", u, apart.NewBill())
			hours = append(hours, ofItem(lines, i, "search", car.Fit))
		}
		slices.Sort(hours)
		if found = hours[200]; math.Abs(found/c.search-1) > .15 {
			t.Errorf("%s: half are found within %g hours, expected %g", c.item, found, c.search)
		}
	}
}

// TestByHandWithNothingToCopy: made by hand because none is to be had, a missing part takes
// 1.15 of its metalwork, and 1 while the one of the other side is on the car; .85 of either
// where it was welded in.
func TestByHandWithNothingToCopy(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	left, right := itemNamed(t, table, "quarter_inner.left"), itemNamed(t, table, "quarter_inner.right")
	d := alsoOn(table, Missing, left)
	d.Way = make([]int8, len(table.items))
	d.Way[left] = int8(car.Fabricate)
	metal := func() float64 {
		_, lines := bill(t, table, model.NewCar(), d, .5)
		return ofItem(lines, left, "", car.Metal)
	}
	one := metal()
	d.Also[left] = nil
	there := metal()
	near(t, "one side", one, there*.85)
	d.Also[left], d.Also[right], d.Way[right] = []string{Missing}, []string{Missing}, int8(car.Fabricate)
	near(t, "both sides", metal(), there*.85*1.15)
	for i := range table.items {
		if o := table.otherSide(i); o >= 0 && (table.otherSide(o) != i || table.Body.Items[o].Part != table.Body.Items[i].Part || table.Body.Items[o].Side == table.Body.Items[i].Side) {
			t.Errorf("%s is the other side of %s", table.Body.Items[o].ID, table.Body.Items[i].ID)
		}
	}
}

// TestMissingIsRefused: a part for which nothing says where it comes from needs a price first,
// and a missing part cannot be patched.
func TestMissingIsRefused(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	i := itemNamed(t, table, "hood.whole")
	d := alsoOn(table, Missing, i)
	if _, err := table.With(d); err != nil {
		t.Fatal(err)
	}
	d.Way = make([]int8, len(table.items))
	for k := range d.Way {
		d.Way[k] = -1
	}
	d.Way[i] = int8(car.Patch)
	if _, err := table.With(d); err == nil || !strings.Contains(err.Error(), "replacing the part whole") {
		t.Errorf("patched although it is missing: %v", err)
	}
	table.labour = slices.Clone(table.labour)
	table.labour[i][car.Full].price = nil
	if _, err := table.With(alsoOn(table, Missing, i)); err == nil || !strings.Contains(err.Error(), "a price for the part") {
		t.Errorf("priced without a price: %v", err)
	}
	d = Undecided()
	d.PanelFit = make([]string, len(table.items))
	d.PanelFit[i] = "nearly"
	if _, err := table.With(d); err == nil {
		t.Error("an unknown fit is accepted")
	}
}

// TestMissingCostsMost: for every item of every body, missing costs no less than sound, and
// no less than gone but for the metalwork that taking it off would have been, and for the
// margin within which pieces are mended although a whole panel would be cheaper.
func TestMissingCostsMost(t *testing.T) {
	tables, cars := soundTables(t, "show")
	for k, table := range tables {
		u, b, c := table.NewUniforms(), table.NewBill(), cars[k]
		for i := range table.items {
			missing := with(t, table, alsoOn(table, Missing, i))
			for n := range uint64(6) {
				s := chance.NewStream(seed, n)
				u.Fill(&s)
				u.Car = [2]float64{.5, .5} // or the margin grows with them
				u.Supply.Fill(&s)
				c.Condition[i] = 0
				table.Price(c, "dry", u, b)
				sound := b.Total - b.Consumables // the margin is without them
				c.Condition[i] = car.Conditions - 1
				table.Price(c, "dry", u, b)
				gone := b.Total - b.Consumables
				lines := missing.Explain(c, "dry", u, b)
				c.Condition[i] = 0
				is := b.Total - b.Consumables
				saved := ofItem(lines, i, "", car.Metal)*(1/.85-1)*table.money.perHour[car.Metal] + margin(table, i, u)
				if is < sound || float64(is) < float64(gone)-saved-20 { // hours are rounded
					t.Errorf("%s %s, draw %d: missing %d, sound %d, gone %d, of which at most %.0f is saved", table.Body.ID, table.Body.Items[i].ID, n, is, sound, gone, saved)
				}
			}
		}
	}
}

// margin is by how much a whole panel may be cheaper than its pieces before it is fitted in
// their place: the published .15 of the most expensive one that covers the item.
func margin(table *Table, item int, u *Uniforms) (most float64) {
	for i, covered := range table.covers {
		if (i == item && len(covered) > 0 || slices.Contains(covered, item)) && table.isDone(i, car.Full) {
			most = max(most, .15*table.costAt(i, car.Full, u))
		}
	}
	return most
}

// TestWorseFitCostsMore: for every item that takes a bought panel, one that fits costs what
// it did before any fit was recorded, to the minor unit; one that needs work no less; and a
// wrong one no less than that, and more weeks.
func TestWorseFitCostsMore(t *testing.T) {
	tables, cars := soundTables(t, "concours")
	for k, table := range tables {
		u, b := table.NewUniforms(), table.NewBill()
		for i := range table.items {
			if !table.Bought(i) {
				continue
			}
			d := Undecided()
			d.Way = make([]int8, len(table.items))
			if d.Way[i] = int8(car.Full); !table.isDone(i, car.Full) || table.labour[i][car.Full].price == nil {
				d.Way[i] = int8(car.Section)
			}
			s := chance.NewStream(seed, uint64(i))
			u.Fill(&s)
			u.Supply.Fill(&s)
			price := func(fit string) (int64, float64) {
				d.PanelFit = make([]string, len(table.items))
				d.PanelFit[i] = fit
				with(t, table, d).Price(cars[k], "dry", u, b)
				return int64(b.Total), b.Weeks
			}
			before, weeks := price("")
			if fit, w := price("fits"); fit != before || w != weeks || b.Fitting != 0 {
				t.Errorf("%s: %d where it fits, %d before", table.Body.Items[i].ID, fit, before)
			}
			work, _ := price("needs_work")
			if work <= before || math.Abs(float64(b.Fitting)-float64(work-before)) > .02*float64(work-before)+300 {
				t.Errorf("%s: %d where it needs work, %d where it fits, said %d", table.Body.Items[i].ID, work, before, b.Fitting)
			}
			if wrong, w := price("wrong"); wrong <= work || w <= weeks {
				t.Errorf("%s: %d and %.1f weeks where it is wrong, %d and %.1f where it needs work", table.Body.Items[i].ID, wrong, w, work, weeks)
			}
		}
	}
}

// fullBill prices one item fitted whole on many cars whose parts come as they come, and
// calls each with its lines.
func fullBill(t *testing.T, table *Table, item string, s Supply, cars int, each func(i int, u *Uniforms, b *Bill, lines []Line)) {
	t.Helper()
	model, _ := testTable(t, table.Body.ID, "show")
	i := itemNamed(t, table, item)
	supplied := with(t, table, only(t, table, map[string]car.Way{item: car.Full})).Supplied(s)
	u, b, c := table.NewUniforms(), table.NewBill(), model.NewCar()
	setAll(u, .5)
	stream := chance.NewStream(seed, 77)
	for range cars {
		u.Supply.Fill(&stream)
		each(i, u, b, supplied.Explain(c, "dry", u, b))
	}
}

// shareIs checks that a share of n draws is within 4 standard errors of its chance.
func shareIs(t *testing.T, what string, count, n int, want float64) {
	t.Helper()
	if is := float64(count) / float64(n); math.Abs(is-want) > 4*math.Sqrt(want*(1-want)/float64(n)) {
		t.Errorf("%s: %.4f, by hand %.4f", what, is, want)
	}
}

// TestNewPanelsByHand: over all places where panels come from, .35 × .80 + .45 × .55 +
// .20 × .25 = .5775 fit, .35 × .17 + .45 × .35 + .20 × .45 = .307 need work and .1155 are
// wrong. A roof takes 46 hours of metalwork and 5 of fitting, or 1.25 and 1.4 times as many;
// a wrong one 6 more in half of them.
func TestNewPanelsByHand(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	const cars = 8000
	count, hours := [3]int{}, []float64{}
	fullBill(t, table, "roof_skin.whole", Supply{AllThere: "all_there"}, cars, func(i int, u *Uniforms, b *Bill, lines []Line) {
		metal, fit, wrong := ofItem(lines, i, "", car.Metal), ofItem(lines, i, "", car.Fit), ofItem(lines, i, "wrong_panel", car.Fit)
		switch {
		case b.Missing[i]: // as rare as a welded roof is missing
		case wrong > 0:
			near(t, "wrong, metalwork", metal, 46*1.25)
			hours = append(hours, wrong)
			count[2]++
		case metal > 50:
			near(t, "needs work, metalwork", metal, 46*1.25)
			near(t, "needs work, fitting", fit, 5*1.4)
			count[1]++
		default:
			near(t, "fits, metalwork", metal, 46)
			near(t, "fits, fitting", fit, 5)
			count[0]++
		}
	})
	shareIs(t, "fits", count[0], cars, .5775)
	shareIs(t, "needs work", count[1], cars, .307)
	shareIs(t, "wrong", count[2], cars, .1155)
	slices.Sort(hours)
	if half := hours[len(hours)/2]; math.Abs(half-6) > .5 {
		t.Errorf("half of the wrong ones take %g hours, published 6", half)
	}
}

// TestUsedPartsByHand: .7 of the parts that must be found are used ones. Of these .08 are no
// good and paid for twice, and .4 are patched; all are prepared.
func TestUsedPartsByHand(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	const cars = 8000
	used, noGood, patched, waits := 0, 0, 0, 0
	fullBill(t, table, "quarter_inner.left", Supply{AllThere: "all_there"}, cars, func(i int, u *Uniforms, b *Bill, lines []Line) {
		prices := 0
		for _, l := range lines {
			if l.Item == i && l.ID == "part" {
				prices++
			}
		}
		if prices == 2 {
			noGood++
		}
		if ofItem(lines, i, "used_part", car.Prep) > 0 {
			used++
		}
		if ofItem(lines, i, "used_patching", car.Metal) > 0 && ofItem(lines, i, "used_patching", car.Prep) > 0 {
			patched++
		}
		if prices == 2 && b.lost > 0 {
			waits++
		}
	})
	shareIs(t, "used", used, cars, .7)
	shareIs(t, "no good", noGood, cars, .7*.08)
	shareIs(t, "patched", patched, cars, .7*.4)
	if waits != noGood {
		t.Errorf("%d wait for another, %d are no good", waits, noGood)
	}
}

// TestMissingAsOften: what the customer answers sets how often a part is missing: .003, .04
// and .10 of those bolted on, .0005, .003 and .01 of those welded in; not sure: .6, .3 and
// .1 of each. A part that was seen on the car is never missing.
func TestMissingAsOften(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	hood, roof := itemNamed(t, table, "hood.whole"), itemNamed(t, table, "roof_skin.whole")
	seen := make([]bool, len(table.items))
	seen[roof] = true
	const cars = 40000
	u, b := table.NewUniforms(), table.NewBill()
	for answer, want := range map[string][2]float64{
		"all_there": {.003, .0005}, "some_parts_off": {.04, .003}, "in_pieces": {.1, .01}, "not_sure": {.6*.003 + .3*.04 + .1*.1, .6*.0005 + .3*.003 + .1*.01},
	} {
		stream := chance.NewStream(seed, 5)
		is, never := [2]int{}, 0
		open, shut := table.Supplied(Supply{AllThere: answer}), table.Supplied(Supply{AllThere: answer, OnCar: seen})
		for range cars {
			u.Supply.Fill(&stream)
			open.drawMissing(u, b)
			for k, i := range []int{hood, roof} {
				if b.Missing[i] {
					is[k]++
				}
			}
			shut.drawMissing(u, b)
			if b.Missing[roof] {
				never++
			}
		}
		shareIs(t, answer+", hood", is[0], cars, want[0])
		shareIs(t, answer+", roof", is[1], cars, want[1])
		if never > 0 {
			t.Errorf("%s: a part on the car is missing in %d cars", answer, never)
		}
	}
}

// TestInPieces: all hours of assembly take 1.17 times as long in half of the cars that came
// in pieces, and 1.10 and 1.25 in one of ten.
func TestInPieces(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	u, b := table.NewUniforms(), table.NewBill()
	setAll(u, .5)
	for p, times := range map[float64]float64{.1: 1.10, .5: 1.17, .9: 1.25} {
		u.Supply.Assembly = p
		lines := table.Supplied(Supply{AllThere: "in_pieces"}).Explain(model.NewCar(), "dry", u, b)
		for _, l := range lines {
			if l.ID == "assemble" && math.Abs(float64(l.Thousandths)/1000-120*times) > .002 {
				t.Errorf("at %g: %d thousandths, by hand %g hours", p, l.Thousandths, 120*times)
			}
		}
	}
}

// TestShopsOwnWords: what a shop says of its panels counts instead of the draw, and a shop
// whose growth holds all of this draws nothing.
func TestShopsOwnWords(t *testing.T) {
	entry := func(way, rest string) string {
		return `"prices": [{"part": "roof_skin", "way": "` + way + `", "price": null, "had": null, ` + rest + `},`
	}
	tableOf := func(from, to string) *Table {
		text := strings.Replace(string(rates.Sample()), from, to, 1)
		r, err := rates.Decode([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		common, err := car.LoadCommon()
		if err != nil {
			t.Fatal(err)
		}
		b, err := car.Load("two_door_unitary")
		if err != nil {
			t.Fatal(err)
		}
		table, err := NewTable(b, common, r, "show", "whole_body")
		if err != nil {
			t.Fatal(err)
		}
		return table
	}
	for rest, want := range map[string][2]float64{`"fit": "fits"`: {0, 0}, `"fit": "needs_work"`: {1, 0}, `"fit": "mixed", "weeks": [9, 9, 9]`: {.35, .1}, `"fit": "not_known"`: {.307, .1155}} {
		work, wrong := 0, 0
		const cars = 4000
		fullBill(t, tableOf(`"prices": [`, entry("full", rest)), "roof_skin.whole", Supply{}, cars, func(i int, u *Uniforms, b *Bill, lines []Line) {
			switch {
			case b.Missing[i]:
			case ofItem(lines, i, "wrong_panel", car.Fit) > 0:
				wrong++
				if strings.Contains(rest, "weeks") && b.lost != 9 {
					t.Fatalf("%g weeks lost, said 9", b.lost)
				}
			case ofItem(lines, i, "", car.Metal) > 50:
				work++
			}
		})
		if want[0] == 1 {
			if work < cars*99/100 {
				t.Errorf("%s: needs work in %d of %d", rest, work, cars)
			}
			continue
		}
		shareIs(t, rest+", needs work", work, cars, want[0])
		shareIs(t, rest+", wrong", wrong, cars, want[1])
	}
	if apart := tableOf(`"price_factor":`, `"as_they_come": false, "price_factor":`); apart.Supplied(Supply{AllThere: "in_pieces"}) != apart {
		t.Error("a shop that sets it apart draws it")
	}
}
