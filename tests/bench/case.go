package bench

import (
	"errors"
	"os"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// Seed is the seed of every race (any other would do).
const Seed = 1

// Case is one car and one shop's rates, made ready for drawing and pricing.
type Case struct {
	Model *damage.Model
	Table *pricing.Table
}

// Load reads a car file and a rates file. The car must have one body and one standard.
func Load(carFile, ratesFile string) (*Case, error) {
	carText, err := os.ReadFile(carFile)
	if err != nil {
		return nil, err
	}
	ratesText, err := os.ReadFile(ratesFile)
	if err != nil {
		return nil, err
	}
	c, err := carfile.Decode(carText)
	if err != nil {
		return nil, err
	}
	r, err := rates.Decode(ratesText)
	if err != nil {
		return nil, err
	}
	if c.Standard == carfile.NotSure {
		return nil, errors.New(carFile + ": expected one standard")
	}
	return open(c, r)
}

func open(c *carfile.Car, r *rates.Rates) (*Case, error) {
	body, err := c.OneBody()
	if err != nil {
		return nil, err
	}
	common, err := car.LoadCommon()
	if err != nil {
		return nil, err
	}
	histories, err := c.Histories()
	if err != nil {
		return nil, err
	}
	one := &Case{}
	r.OldDamage.InRange, r.OverTime = false, nil // the other programs price neither
	if one.Model, err = c.ModelAt(body, histories, carfile.Told, r.Own, r.Reckoned(), nil); err != nil {
		return nil, err
	}
	one.Table, err = pricing.NewTable(body, common, r, c.Standard, c.Scope)
	return one, err
}

// Priced is what every peer must agree on for one simulated car: money in minor units,
// hours and weeks in thousandths, and two counts of items that do not show in the
// money: those replaced before, and those with a cause of their own.
type Priced struct{ Total, Tax, Hours, Weeks, Replaced, OwnCause int64 }

// spread keeps the seeds of neighbouring cars far apart (the odd number nearest
// to 2^64 over the golden ratio).
const spread = 0x9E3779B97F4A7C15

// Cars passes n cars of a seed to each, as the engine draws and prices them when every
// uniform of a car comes from two plain streams of its own. The peers do the same.
func (c *Case) Cars(seed uint64, n int, each func(Priced)) {
	one, u, b := c.Model.NewCar(), c.Table.NewUniforms(), c.Table.NewBill()
	for k := range uint64(n) {
		damaged, worked := chance.NewStream(seed, (2*k+1)*spread), chance.NewStream(seed, (2*k+2)*spread)
		c.Model.Draw(&damaged, one)
		u.Fill(&worked)
		c.Table.Price(one, c.Model.Histories[one.History].LastClimate, u, b)
		p := Priced{Total: int64(b.Total), Tax: int64(b.Tax), Weeks: int64(b.Weeks*1000 + 0.5)}
		for t := range b.AfterHours {
			p.Hours += b.StripHours[t] + b.AfterHours[t]
		}
		p.countItems(one)
		each(p)
	}
}

func (p *Priced) countItems(c *damage.Car) {
	for i, f := range c.Finding {
		if f == damage.Replaced {
			p.Replaced++
		}
		if c.OwnCause[i] {
			p.OwnCause++
		}
	}
}
