package olddamage

import "slices"

// answered is the likelihood of what the customer said. Somebody who names places names
// each that was hit hard with one chance and each other with a small one. Where nothing
// was hit hard, a named place was only knocked: one of them by the shares of the zones,
// the others with the small chance, so that naming the front says no more than that
// fronts are hit most.
func (g *Figures) answered(k *Known, s *hitState, share [Zones]float64) float64 {
	row, asked := g.answers[k.Answer]
	if !asked {
		return 1
	}
	v := max(slip, row[s.n])
	if len(k.Where) == 0 || !slices.Contains(HitAnswers, k.Answer) {
		return v
	}
	if s.n > 0 {
		for z, id := range ZoneIDs {
			named := g.namedElse
			if s.manner[z] != NoHit {
				named = g.namedHit
			}
			if !slices.Contains(k.Where, id) {
				named = 1 - named
			}
			v *= named
		}
		return v
	}
	knocked := 0.0
	for z, id := range ZoneIDs {
		if slices.Contains(k.Where, id) {
			knocked += share[z]
		}
	}
	for n := range int(Zones) - 1 {
		if n < len(k.Where)-1 {
			v *= g.namedElse
		} else {
			v *= 1 - g.namedElse
		}
	}
	return float64(v * knocked)
}
