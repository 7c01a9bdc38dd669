package olddamage

import "slices"

// conditionHits works out the odds of hits and of sagging for one state of earlier
// repairs, and returns the likelihood of what is known about them.
func (o *Odds) conditionHits(r int, share [Zones]float64, likely func(*hitState) float64, square [2]float64, sagged float64) float64 {
	// The chance of what is known of squareness, and of having sagged as well, where no
	// zone is crooked and where one is.
	straight := float64((1-sagged)*square[0]) + float64(sagged*square[1])
	of := [2]float64{straight, square[1]}
	o.sagged[r] = [2]float64{float64(sagged*square[1]) / straight, sagged}
	rate, sum := o.fig.Rate(r, o.known.RoadYears), 0.0
	for n := range allHits {
		s := &allHits[n]
		v := o.fig.prior(s, rate, share) * likely(s)
		for _, z := range s.zones[:s.n] {
			v *= o.fig.Mended[r][s.manner[z]-Well]
		}
		sum += float64(v * of[b2i(s.crooked)])
		o.hits[r][n] = sum
	}
	for n := range o.hits[r] {
		o.hits[r][n] /= sum
	}
	return sum
}

// conditionHand does the same for the earlier hand.
func (o *Odds) conditionHand(r int) float64 {
	sum := 0.0
	for h := range hands {
		v := o.fig.Hand[r][h]
		for n := range o.known.Hand {
			v *= o.fig.left(&o.known.Hand[n], h)
		}
		sum += v
		o.hand[r][h] = sum
	}
	for h := range o.hand[r] {
		o.hand[r][h] /= sum
	}
	return sum
}

// left is the chance that a hand left what a survey recorded on one part.
func (g *Figures) left(s *HandSeen, h int) float64 {
	if s.Patch {
		if !s.CanBraze {
			return 1
		}
		if slices.Contains(s.Kinds, Brazed) {
			return max(slip, g.PatchBrazed[h])
		}
		return max(slip, 1-g.PatchBrazed[h])
	}
	is := g.replacedIs(h, s.CanBraze)
	if len(s.Kinds) == 0 {
		return max(slip, is[Right])
	}
	v := 1.0
	for _, k := range s.Kinds {
		v *= max(slip, is[k])
	}
	return v
}

// replacedIs are the chances of what a hand leaves on a part that it replaced. Where
// brass cannot be, a bad weld takes its place.
func (g *Figures) replacedIs(h int, canBraze bool) (is [HandKinds]float64) {
	for k := range is {
		is[k] = g.ReplacedIs[k][h]
	}
	if !canBraze {
		is[BadWeld], is[Brazed] = is[BadWeld]+is[Brazed], 0
	}
	return is
}

// conditionBlast does the same for blasting.
func (o *Odds) conditionBlast(r int) float64 {
	var v [2]float64
	for blasted, p := range [2]float64{1 - o.fig.Blasted[r], o.fig.Blasted[r]} {
		warped := o.fig.SkinWarped[blasted]
		for range o.known.Skins[0] {
			p *= max(slip, 1-warped)
		}
		for range o.known.Skins[1] {
			p *= max(slip, warped)
		}
		v[blasted] = p
	}
	o.blasted[r] = v[1] / (v[0] + v[1])
	return v[0] + v[1]
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
