package pricing

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// offers adds another body to a shop's rates at a price that never varies.
func offers(body string, price, had float64) func(*rates.Rates) {
	return func(r *rates.Rates) {
		a := *rates.StartingAnotherBody()
		a.Offered = []rates.OfferedBody{{Body: body, Price: [3]float64{price, price, price}, ToBeHad: had, Weeks: [3]float64{4, 12, 40}}}
		r.AnotherBody = &a
	}
}

// allGone is a car of which nothing is left.
func allGone(m *damage.Model) *damage.Car {
	c := m.NewCar()
	for i := range c.Condition {
		c.Condition[i] = 5
	}
	return c
}

// TestAnotherBodyByHand: everything to do with another body, all figures at their likely
// ones, by hand: hours of data/another_body.json at the published rates of the sample (85
// and 75 an hour, wire at 4.50 an hour of metalwork), times the standard's factors of
// data/work.json (metal and fitting: 1 at show, 1.45 and 1.6 at concours) and the body's
// stage factor (1 for a two-door, 1.15 for the hardtop); the search follows neither. The
// whole-car factors are those of data/work.json: log deviations .15 and .12, correlation .7.
func TestAnotherBodyByHand(t *testing.T) {
	for _, c := range []struct {
		body, standard     string
		metal, moving, fit float64 // times the hours for a two-door at show standard
	}{
		{"two_door_unitary", "show", 1, 1, 1}, {"two_door_unitary", "concours", 1.45, 1.45, 1.6}, {"hardtop_on_frame", "show", 1.15, 1.15, 1.15},
	} {
		model, table := scoped(t, c.body, c.standard, "whole_body", offers(c.body, 9000, 1))
		u, b := table.NewUniforms(), table.NewBill()
		setAll(u, .5)
		for _, hard := range []float64{.5, .9, .2} {
			u.Car = [2]float64{hard, hard}
			table.Price(model.NewCar(), "dry", u, b)
			z := chance.NormalQuantile(hard)
			slow, slowRest := math.Exp(.15*z), math.Exp(.12*(.7+math.Sqrt(1-.7*.7))*z)
			metal, fit := slow*(170*c.metal+10*c.moving), slowRest*(15+24*c.fit)
			want := 900000 + 25000 + float64(table.StagePrice().Likely) + 100*(metal*(85+4.5)+fit*75)
			if math.Abs(float64(b.Another.Other)-want) > 20 || !b.Another.Had || b.Another.Advised {
				t.Errorf("%s, %s at %g: %+v, by hand %.0f", c.body, c.standard, hard, b.Another, want)
			}
		}
	}
}

// TestAnotherBodyTaken: on a car of which nothing is left, the bill on another body, kind
// by kind by hand. Labour of body, paint and fitting and all materials stay; metalwork,
// parts, wire and gas go; prep after the survey falls to the published .8. Tax (6.25 % on
// materials and parts) falls on the body and its strip materials as well.
func TestAnotherBodyTaken(t *testing.T) {
	model, table := scoped(t, "two_door_unitary", "show", "whole_body", offers("two_door_unitary", 9000, 1))
	kept, _ := bill(t, table, allGone(model), Undecided(), .5)
	u, taken := table.NewUniforms(), table.NewBill()
	setAll(u, .5)
	lines := table.TakingAnotherBody(true).Explain(allGone(model), "dry", u, taken)
	a := kept.Another
	if !a.Advised || taken.Another != a || float64(a.Keep) <= 1.15*float64(a.Other) || kept.AnotherBody != 0 || taken.AnotherBody != a.Other {
		t.Fatalf("%+v and %+v", a, taken.Another)
	}
	if want := kept.Labour[car.Metal] + kept.Parts + kept.Consumables; a.Keep != want {
		t.Errorf("keep %d, its kinds of line %d", a.Keep, want)
	}
	if taken.Labour[car.Metal] != 0 || taken.Parts != 0 || taken.Consumables != 0 || taken.Materials != kept.Materials || taken.Strip != kept.Strip || taken.SentOut != kept.SentOut {
		t.Errorf("%+v", taken)
	}
	for _, trade := range []car.Trade{car.BodyWork, car.Paint, car.Fit} {
		if taken.Labour[trade] != kept.Labour[trade] {
			t.Errorf("%s: %d, on this body %d", car.TradeIDs[trade], taken.Labour[trade], kept.Labour[trade])
		}
	}
	if want := .8 * float64(kept.Labour[car.Prep]); math.Abs(float64(taken.Labour[car.Prep])-want) > 5 {
		t.Errorf("prep %d, by hand %.0f", taken.Labour[car.Prep], want)
	}
	if want := kept.Total - a.Keep + a.Other - kept.Labour[car.Prep] + taken.Labour[car.Prep]; taken.Total != want {
		t.Errorf("total %d, by hand %d", taken.Total, want)
	}
	wire := 4.5 * 180 * 100.0
	taxed := float64(table.money.stripMaterials*2+table.primer(kept.ReplacedM2)+table.primer(0)+kept.Materials) + wire + 925000
	if want := taxed * .0625; math.Abs(float64(taken.Tax)-want) > 2 {
		t.Errorf("tax %d, by hand %.0f", taken.Tax, want)
	}
	strip := int64(0)
	for k := range table.strip {
		strip += thousandths(table.strip[k].likely)
	}
	hours := int64(0)
	for trade := range kept.AfterHours {
		hours += taken.AfterHours[trade] - kept.AfterHours[trade]
	}
	if want := strip + 219000 - kept.AfterHours[car.Metal] - kept.AfterHours[car.Prep]/5; abs(hours-want) > 2 {
		t.Errorf("%d thousandths of an hour more, by hand %d", hours, want)
	}
	if want := kept.Weeks + float64(hours)/1000/table.Rates.Time.HoursAWeek[1] + 12; math.Abs(taken.Weeks-want) > 1e-9 {
		t.Errorf("%.3f weeks, by hand %.3f", taken.Weeks, want)
	}
	sum := money.Minor(0)
	for _, l := range lines {
		if !l.Strip && l.Item >= 0 && (l.Price > 0 || l.Trade == car.Metal) {
			t.Errorf("%+v is charged beside another body", l)
		}
		if l.Item < 0 && l.ID == AnotherBodyPrice {
			sum += l.Price
		}
	}
	if want := 925000 + table.StagePrice().Likely + money.Minor(wire); sum != want {
		t.Errorf("price, papers, strip, wire and gas %d, by hand %d", sum, want)
	}
}

// TestAnotherBodyIsNotOffered: where the shop names another body, or none, and where only
// the outside is done, nothing is compared.
func TestAnotherBodyIsNotOffered(t *testing.T) {
	for _, c := range []struct {
		scope  string
		change func(*rates.Rates)
		offers bool
	}{
		{"whole_body", asPublished, false}, {"whole_body", offers("pickup", 9000, 1), false}, {"outside_only", offers("two_door_unitary", 9000, 1), false},
		{"whole_body", offers("two_door_unitary", 9000, 1), true}, {"metalwork_only", offers("two_door_unitary", 9000, 1), true},
	} {
		model, table := scoped(t, "two_door_unitary", "show", c.scope, c.change)
		b, _ := bill(t, table.TakingAnotherBody(true), allGone(model), Undecided(), .5)
		if table.OffersAnotherBody() != c.offers || (b.Another != AnotherBody{}) != c.offers {
			t.Errorf("%s: offers %v, %+v", c.scope, table.OffersAnotherBody(), b.Another)
		}
	}
}

// TestAnotherBodyMustBeHad: it is advised on as many cars as one can be found for, by the
// uniform that decides it, and the margin decides at its own figure.
func TestAnotherBodyMustBeHad(t *testing.T) {
	model, table := scoped(t, "two_door_unitary", "show", "whole_body", offers("two_door_unitary", 9000, .6))
	u, b := table.NewUniforms(), table.NewBill()
	setAll(u, .5)
	for at, want := range map[float64]bool{.01: true, .59: true, .61: false, .99: false} {
		u.Another[anotherHad] = at
		table.Price(allGone(model), "dry", u, b)
		if b.Another.Had != want || b.Another.Advised != want {
			t.Errorf("at %g: %+v", at, b.Another)
		}
	}
	u.Another[anotherHad] = .01
	table.Price(allGone(model), "dry", u, b)
	over := 100 * (float64(b.Another.Keep)/float64(b.Another.Other) - 1)
	for margin, want := range map[float64]bool{over - .01: true, over + .01: false} {
		_, table := scoped(t, "two_door_unitary", "show", "whole_body", func(r *rates.Rates) {
			offers("two_door_unitary", 9000, .6)(r)
			r.AnotherBody.DearerByPercent = margin
		})
		if table.Price(allGone(model), "dry", u, b); b.Another.Advised != want {
			t.Errorf("a margin of %g where it is dearer by %g: %+v", margin, over, b.Another)
		}
	}
}

func abs(n int64) int64 { return max(n, -n) }

// TestAnotherBodyAllocatesNothing: a bill that was used once is enough for every car, on
// this body and on another.
func TestAnotherBodyAllocatesNothing(t *testing.T) {
	model, table := scoped(t, "two_door_unitary", "show", "whole_body", offers("two_door_unitary", 9000, 1))
	table = table.TakingAnotherBody(true)
	u, b, gone, sound := table.NewUniforms(), table.NewBill(), allGone(model), model.NewCar()
	setAll(u, .5)
	price := func() {
		for _, c := range []*damage.Car{gone, sound} {
			table.Price(c, "dry", u, b)
			table.Reprice(u, b)
		}
	}
	price()
	if n := testing.AllocsPerRun(20, price); n != 0 {
		t.Errorf("%g allocations", n)
	}
}

// BenchmarkAnotherBody measures what the comparison adds to pricing a car once and
// repricing it three times.
func BenchmarkAnotherBody(b *testing.B) {
	for _, offered := range []bool{false, true} {
		b.Run(map[bool]string{false: "none", true: "taken"}[offered], func(b *testing.B) {
			change := asPublished
			if offered {
				change = offers("two_door_unitary", 9000, 1)
			}
			model, table := scoped(b, "two_door_unitary", "show", "whole_body", change)
			table = table.TakingAnotherBody(true)
			u, bill, gone := table.NewUniforms(), table.NewBill(), allGone(model)
			setAll(u, .3)
			for b.Loop() {
				table.Price(gone, "dry", u, bill)
				for range 3 {
					table.Reprice(u, bill)
				}
			}
		})
	}
}
