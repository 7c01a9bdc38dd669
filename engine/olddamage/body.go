package olddamage

import "underpaint/engine/car"

// BigSkin says whether a part is a large outer skin that rough blasting can warp.
func (g *Figures) BigSkin(p *car.Part) bool {
	return p.Face == car.Outer && p.Trap <= g.mostTrap && p.AreaM2 >= g.leastM2
}

// CrackedOn is the chance of a crack on a part of a body that cracks.
func (g *Figures) CrackedOn(b *car.Body) float64 {
	if _, bed := b.PartNamed("bed_side"); bed || b.OpenCar {
		return g.Cracked[1]
	}
	return g.Cracked[0]
}
