package exposure

import "underpaint/engine/chance"

// Medians returns μ = ln(D/t0) for each reading: the log of the median depth D lost at
// the worst spot of a part, as a share of its sheet thickness t0. m is the ratio of the
// loss at the worst spot to the mean loss; b is the exponent of time (plain power law of
// ISO 9224:2012, also beyond 20 years); paintLife is in years; splashShare is 0 to 1; mm
// is the thickness of the sheet. paintLife and mm are those of 1965 to 1972; Medians
// applies the factors of the year of make. All but splashShare and paintLife must be
// above 0.
//
// Paint is used up first. The bare years of each period are then converted to the time
// that would have given the same loss at a common rate, and added. A spot has lost at
// least as much as the last period's climate takes in least_years (data/history.json).
//
// PaintedAgain: at the restoration the paint starts anew, the loss so far remains, and
// the final depth is multiplied by a factor. Renewed: the paint starts anew and the loss
// so far is reset to zero. New paint is not paint of the year of make.
func (l History) Medians(m, b, paintLife, splashShare, mm float64) (mu [Readings]float64) {
	var room [8]weather
	var speeds [8]float64
	all := l.weathers(room[:0])
	last, fast := speedsOf(all, b, splashShare, speeds[:0])
	depths := l.depths(all, fast, last, b, paintLife)
	scale := chance.Log(m) - chance.Log(1000*mm*data().thickness.at(l.Made))
	rates := chance.Log(l.RatesTimes)
	for r, depth := range depths {
		// Rates are added last, so that histories with equal lives differ in nothing else.
		mu[r] = (scale + depth) + rates
	}
	return mu
}

// speedsOf appends, for each period, its first year's loss in µm to the power 1/b.
// The loss is the geometric mean of air and splash, weighted by splashShare. last is the
// log of the last period's loss.
func speedsOf(all []weather, b, splashShare float64, out []float64) (last float64, speeds []float64) {
	for i := range all {
		if w := &all[i]; w.share > 0 {
			last = float64((1-splashShare)*w.lnAir) + float64(splashShare*w.lnSplash)
		}
		out = append(out, chance.Exp(last/b))
	}
	return last, out
}

// depths returns, for each reading, the log of the mean loss in µm (m = 1) at undoubted
// rates. Its arguments come from weathers and speedsOf.
func (l History) depths(all []weather, speeds []float64, last, b, paintLife float64) (out [Readings]float64) {
	g := data()
	var spots [Readings]surface
	spots[AsItIs].paint = paintLife * g.paintLife.at(l.Made)
	// The other readings branch off from the first at the restoration. work is the number
	// of years left until then.
	work, branched := l.AgeYears-l.WorkYearsAgo, false
	branch := func(from surface) {
		branched = true
		spots[PaintedAgain] = surface{paint: g.againLife * paintLife, time: from.time}
		spots[Renewed] = surface{paint: paintLife}
	}
	for i := range all {
		w, left := &all[i], all[i].years // left: years of the period after the restoration
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
	if !branched { // the restoration is today
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

// surface is the worst spot of a part at some time in its life.
type surface struct {
	paint float64 // paint left, in years of weather in a climate whose paint factor is 1
	time  float64 // bare years so far, times the first year's loss to the power 1/b
}

// wear exposes the surface to a number of years of a period whose first year's loss to
// the power 1/b is speed. Weather that the paint does not absorb falls on bare metal.
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
