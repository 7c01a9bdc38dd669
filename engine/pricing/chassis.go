package pricing

import "underpaint/engine/car"

// The line that lifts the body, and the one that moves everything to another chassis,
// which lifts it too.
const bodyOff, otherChassis = "body_off", "other_chassis"

// fromAnother is what a chassis from another car adds to the line that fits it: the hours
// of other trades, which go as the line goes, and the metalwork on its own rust.
type fromAnother struct {
	also       []plainLine
	rustChance float64
	rust       *plainLine
}

func (t *Table) fromAnother(line plainLine, body *car.GettingIn) (out fromAnother, err error) {
	with := func(id string, trade car.Trade, h car.Hours) (*plainLine, error) {
		tp, err := threePoint(h, t.pace(trade))
		return &plainLine{id: id, name: line.name, trade: trade, hours: tp}, err
	}
	for trade, h := range body.Also {
		if h == (car.Hours{}) || t.dropped(car.Trade(trade)) {
			continue
		}
		one, err := with(line.id, car.Trade(trade), h)
		if err != nil {
			return out, err
		}
		out.also = append(out.also, *one)
	}
	if out.rustChance = body.OwnRust.Chance; out.rustChance > 0 {
		out.rust, err = with(line.id+"_rust", car.Metal, body.OwnRust.Metal)
	}
	return out, err
}

// addFromAnother adds these lines to a bill; s is the score of the line itself.
func (x *fromAnother) addFromAnother(s float64, u *Uniforms, f *[car.Trades]float64, b *Bill) {
	for k := range x.also {
		b.add(&x.also[k], s, f[x.also[k].trade])
	}
	if x.rust != nil && u.Another[chassisRusts] < x.rustChance {
		b.add(x.rust, scaledDeviate(u.Another[chassisHours]), f[x.rust.trade])
	}
}

// DrawsFromAnother says whether the table takes [Uniforms.Another].
func (t *Table) DrawsFromAnother() bool { return t.OffersAnotherBody() || t.PaysForAnother() }

// PaysForAnother says whether [Uniforms.Another] changes any total.
func (t *Table) PaysForAnother() bool {
	if t.TakesAnotherBody() {
		return true
	}
	for k := range t.accesses {
		if t.accesses[k].rust != nil {
			return true
		}
	}
	return false
}
