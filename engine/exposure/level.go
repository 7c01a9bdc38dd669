package exposure

import "underpaint/engine/chance"

// Period is one stretch of a car's life spent one way in one climate.
type Period struct {
	Climate string  // a climate id, see Climates
	Years   float64 // length, more than 0
	Kept    string  // driven_all_year, driven_in_summer, dry_or_heated_garage, garage, open_shed_or_outside
}

// Level is one alternative history of the car: a level of the network's history
// node.
type Level struct {
	Weight      float64  // chance of this alternative; all levels sum to 1
	RatesTimes  float64  // every corrosion rate is multiplied by this
	Periods     []Period // in time order, earliest first
	AgeYears    float64  // age of the car in this alternative
	LastClimate string   // climate of the last period
}

// Mu returns μ = ln(D/t0), the log of the median depth lost at the worst spot of
// a part as a share of its sheet. m is the worst spot against the mean loss, b
// the exponent of time (plain power law of ISO 9224:2012, also beyond 20 years),
// paintLife in years, splashShare 0 to 1, mm the thickness of the sheet. All but
// splashShare and paintLife must be above 0.
//
// Paint is used up first. Bare years of each period then add as the time that
// would have given the same loss at that period's rate. A spot has lost at least
// what the last period takes in least_years (data/climates.json). Climates and
// ways of keeping that are not known count for nothing; Levels and Exact refuse
// them.
func (l Level) Mu(m, b, paintLife, splashShare, mm float64) float64 {
	paint := paintLife // what is left of it, in years of driving where its factor is 1
	sum, last := 0.0, 0.0
	for _, p := range l.Periods {
		climate, known := ClimateOf(p.Climate)
		if !known {
			continue
		}
		kept := data().kept[p.Kept]
		// Weather of the period in years of driving; whatever the paint does not
		// take of it falls on bare metal.
		weather := float64(kept.share * p.Years)
		covered := min(weather, float64(paint*climate.PaintLifeFactor))
		paint = max(0, paint-covered/climate.PaintLifeFactor)
		if covered < weather {
			paint = 0
		}
		last = chance.Log(l.RatesTimes) + logRate(climate, kept, splashShare)
		if bare := weather - covered; bare > 0 {
			sum += float64(chance.Exp(last/b) * bare)
		}
	}
	depth := last + float64(b*chance.Log(data().leastYears))
	if sum > 0 {
		depth = max(depth, float64(b*chance.Log(sum)))
	}
	return chance.Log(m) + depth - chance.Log(1000*mm)
}

// logRate is the log of the loss in the first year, in µm, of steel that sees
// road splash for a share of its time: the geometric mean of air and splash.
func logRate(c Climate, k keptWay, share float64) float64 {
	splash := c.SplashUM
	if !k.splash {
		splash = c.AirUM
	}
	return float64((1-share)*chance.Log(c.AirUM)) + float64(share*chance.Log(splash))
}
