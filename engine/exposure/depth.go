package exposure

import "underpaint/engine/chance"

// Medians returns μ = ln(D/t0) for each reading: the log of the median depth
// lost at the worst spot of a part as a share of its sheet. m is the worst spot
// against the mean loss, b the exponent of time (plain power law of ISO
// 9224:2012, also beyond 20 years), paintLife in years, splashShare 0 to 1, mm
// the thickness of the sheet; paintLife and mm as of 1965 to 1972, the factors
// of the year of make come on top. All but splashShare and paintLife must be
// above 0.
//
// Paint is used up first. Bare years of each period then add as the time that
// would have given the same loss at that period's rate. A spot has lost at least
// what the last period takes in least_years (data/history.json).
//
// PaintedAgain: at the restoration the paint starts anew, the loss so far stays,
// and the depth is larger at the end. Renewed: paint starts anew and the loss so
// far counts for nothing. New paint is not that of the year of make.
func (l History) Medians(m, b, paintLife, splashShare, mm float64) (mu [Readings]float64) {
	var room [8]weather
	var speeds [8]float64
	all := l.weathers(room[:0])
	last, fast := speedsOf(all, b, splashShare, speeds[:0])
	depths := l.depths(all, fast, last, b, paintLife)
	scale := chance.Log(m) - chance.Log(1000*mm*data().thickness.at(l.Made))
	rates := chance.Log(l.RatesTimes)
	for r, depth := range depths {
		// Rates are added last, so that histories with equal lives differ by nothing else.
		mu[r] = (scale + depth) + rates
	}
	return mu
}

// speedsOf appends the loss of each period's first year, in µm, to the power
// 1/b; last is the log of the last period's loss. splashShare makes the
// geometric mean of air and splash.
func speedsOf(all []weather, b, splashShare float64, out []float64) (last float64, speeds []float64) {
	for i := range all {
		if w := &all[i]; w.share > 0 {
			last = float64((1-splashShare)*w.lnAir) + float64(splashShare*w.lnSplash)
		}
		out = append(out, chance.Exp(last/b))
	}
	return last, out
}

// depths returns the log of the loss in µm where the worst spot is no worse than
// the mean, for each reading, with rates as told. It takes what weathers and
// speedsOf return.
func (l History) depths(all []weather, speeds []float64, last, b, paintLife float64) (out [Readings]float64) {
	g := data()
	var spots [Readings]surface
	spots[AsItIs].paint = paintLife * g.paintLife.at(l.Made)
	// The other readings branch off from the first at the restoration; work is how
	// many years of the life are left until then.
	work, branched := l.AgeYears-l.WorkYearsAgo, false
	branch := func(from surface) {
		branched = true
		spots[PaintedAgain] = surface{paint: g.againLife * paintLife, time: from.time}
		spots[Renewed] = surface{paint: paintLife}
	}
	for i := range all {
		w, left := &all[i], all[i].years // left: of the period, after the restoration
		if !branched && work < w.years {
			cut := spots[AsItIs]
			cut.wear(w, work, speeds[i])
			branch(cut)
			left -= max(0, work)
		}
		work -= w.years
		spots[AsItIs].wear(w, w.years, speeds[i])
		if branched {
			spots[PaintedAgain].wear(w, left, speeds[i])
			spots[Renewed].wear(w, left, speeds[i])
		}
	}
	if !branched { // the restoration is of today
		branch(spots[AsItIs])
	}
	for r := range out {
		out[r] = last + float64(b*g.lnLeastYears)
		if t := spots[r].time; t > 0 {
			out[r] = max(out[r], float64(b*chance.Log(t)))
		}
	}
	out[PaintedAgain] += g.lnAgainDepth
	return out
}

// surface is the worst spot of a part on its way through the years.
type surface struct {
	paint float64 // what is left of it, in years of weather where its factor is 1
	time  float64 // bare years so far, times the first year's loss to the power 1/b
}

// wear takes the surface through so many years of a period whose first year's
// loss to the power 1/b is speed. Whatever the paint does not take of the
// weather falls on bare metal.
func (s *surface) wear(w *weather, years, speed float64) {
	falls := float64(w.share * max(0, years))
	taken := min(falls, float64(s.paint*w.paintFactor))
	if taken < falls {
		s.paint = 0
		s.time += float64(speed * (falls - taken))
	} else {
		s.paint = max(0, s.paint-taken/w.paintFactor)
	}
}
