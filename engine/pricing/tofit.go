package pricing

import (
	"underpaint/engine/car"
)

// comingTimes are what the hours of a way are multiplied by as its part comes.
type comingTimes struct {
	missing float64 // the metalwork, where the part is missing
	toFit   bool    // the panel needs work
}

// toFit adds up what bought parts take that do not come as they should, without the
// whole-car factors.
type toFit struct {
	hours [car.Trades]float64
	parts float64 // minor units, before handling
}

// moreToFit is how many more hours of a trade a panel takes that needs work.
func (b *Bill) moreToFit(trade car.Trade, h float64, times tradeTimes) float64 {
	more := float64(h * (times.of(trade) - 1))
	b.toFit.hours[trade] += more
	return more
}

// hoursToFit adds hours that are worked only because a part does not come as it should.
func (b *Bill) hoursToFit(item int, id string, trade car.Trade, h, factor float64) {
	b.toFit.hours[trade] += h
	b.hours(item, id, trade, h, factor)
}

// chargeFitting works out what such parts cost more: labour, the consumables of its
// metalwork at an amount an hour, and parts with handling.
func (t *Table) chargeFitting(f *[car.Trades]float64, perMetalHour float64, b *Bill) {
	if b.Fitting = 0; b.toFit == (toFit{}) {
		return
	}
	sum := float64(b.toFit.parts * b.wrong * t.money.handled)
	for trade, h := range b.toFit.hours {
		rate := t.money.perHour[trade]
		if car.Trade(trade) == car.Metal {
			rate += perMetalHour
		}
		sum += float64(h * f[trade] * rate)
	}
	b.Fitting = wholeMinor(sum)
}
