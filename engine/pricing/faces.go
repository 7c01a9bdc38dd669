package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// reach says how much of the sheet of a car blast and primer reach.
type reach struct {
	faces   [4]float64 // of each sheet, by faceKinds
	frame   []string   // parts of a separate frame
	outside float64    // share of the rest that is reached when only the outside is done
}

// faceKinds index reach.faces. Outer skins have a back that a gun reaches for half of it;
// only the outside of a closed box is reached.
var faceKinds = []string{"outer", "seen_when_open", "hidden_open", "hidden_closed"}

func (g *figures) readReach(f strict.Field) {
	for k, id := range faceKinds {
		g.reach.faces[k] = f.Get("faces").Get(id).Number(0, 2)
	}
	g.reach.frame = texts(f.Get("frame_apart").Get("parts"))
	g.reach.outside = f.Get("outside_only_share").Get("share").Number(0, 1)
}

// facesOf is how many of the two faces of a part's sheet are reached.
func (r *reach) facesOf(p *car.Part) float64 {
	switch {
	case p.Face == car.Outer:
		return r.faces[0]
	case p.Face == car.SeenWhenOpen:
		return r.faces[1]
	case p.SeenWhenStripped:
		return r.faces[2]
	}
	return r.faces[3]
}

// surfaces are the areas of a body in m², and the paints whose quantity depends on the
// parts replaced.
type surfaces struct {
	reached, outer, frame float64
	byItem                []float64 // its part of reached; 0 on a frame with a material of its own
	primers               []coat    // in the strip stage, on everything reached but the parts replaced
	newParts              []coat    // after it, on the parts replaced
}

// coat is a material by area.
type coat struct {
	perM2 float64 // thousandths of its unit
	price rates.Price
}

func (c *coat) on(m2 float64) money.Minor {
	return c.price.Of(int64(float64(c.perM2*m2) + 0.5))
}

// setSurfaces works out the areas. What has a material of its own (a separate frame, parts
// that are replaced) is left out of the rest, so a shop without such a material loses
// nothing.
func (t *Table) setSurfaces() {
	s := surfaces{byItem: make([]float64, len(t.Body.Items))}
	apart := slices.ContainsFunc(t.Rates.Materials, func(m rates.Material) bool { return m.Area == rates.Frame })
	for i := range t.Body.Items {
		p := t.Body.PartOf(i)
		outer, rest := 0.0, float64(p.AreaM2*t.fig.reach.facesOf(p))
		if apart && slices.Contains(t.fig.reach.frame, p.ID) {
			if !t.outsideOnly() {
				s.frame += rest
			}
			continue
		}
		if p.Face == car.Outer {
			outer = p.AreaM2
			rest -= outer
		}
		if t.outsideOnly() {
			rest *= t.fig.reach.outside
		}
		s.outer += outer
		s.byItem[i] = outer + rest
		s.reached += s.byItem[i]
	}
	for k := range t.Rates.Materials {
		m := &t.Rates.Materials[k]
		if m.Area == rates.Replaced && m.Scopes[t.Scope] && m.Factor[t.Standard] > 0 {
			s.newParts = append(s.newParts, t.coat(m))
		}
	}
	for k := range t.Rates.Materials {
		if m := &t.Rates.Materials[k]; isPrimer(m) && m.Scopes[t.Scope] && len(s.newParts) > 0 {
			s.primers = append(s.primers, t.coat(m))
		}
	}
	t.surfaces = s
}

func (t *Table) coat(m *rates.Material) coat {
	return coat{float64(m.UnitsPerM2() * m.Factor[t.Standard] * 1000), m.Price}
}

// isPrimer says whether a material is paint on bare metal. Parts that are to be replaced
// are blasted like the rest, so that they can be surveyed, but nobody primes them.
func isPrimer(m *rates.Material) bool {
	return m.Stage == rates.StripStage && m.How == rates.ByFilm && m.Area == rates.Reached
}

// area returns the area in m² on which a material is used if nothing is replaced.
func (t *Table) area(m *rates.Material) float64 {
	s := &t.surfaces
	switch m.Area {
	case rates.Reached:
		if m.How != rates.ByFilm {
			return s.reached + s.frame // a frame is blasted too
		}
		return s.reached
	case rates.Outer:
		return s.outer
	case rates.InsideAndUnder:
		return s.reached - s.outer
	case rates.Frame:
		return s.frame
	}
	return 0
}

// replacedM2 is the area of the parts replaced on one car, in m² of faces reached: those
// for which a new part is bought or made whole, and those that such a part covers.
func (t *Table) replacedM2(b *Bill) (sum float64) {
	for i, area := range t.surfaces.byItem {
		if b.Covered[i] || b.Way[i] >= car.Full {
			sum += area
		}
	}
	return sum
}

// primer is what primer costs in the strip stage if parts of this area are replaced.
func (t *Table) primer(replaced float64) (sum money.Minor) {
	if t.Rates.Strip.PriceSet {
		return 0 // the shop's price of the stage includes it
	}
	for k := range t.surfaces.primers {
		sum += t.surfaces.primers[k].on(t.surfaces.reached - replaced)
	}
	return sum
}

// onNewParts is what the materials on parts replaced cost.
func (t *Table) onNewParts(replaced float64) (sum money.Minor) {
	for k := range t.surfaces.newParts {
		sum += t.surfaces.newParts[k].on(replaced)
	}
	return sum
}

// Paint is how much of a paint the strip and survey takes.
type Paint struct {
	Name   car.Words
	Litres float64 // ready to spray
	Base   float64 // share of them that is the tin of base; the rest is activator
}

// stripPaints lists the paints of the strip and survey that are mixed from a base.
func (t *Table) stripPaints(replaced float64) (out []Paint) {
	for k := range t.Rates.Materials {
		m := &t.Rates.Materials[k]
		if m.Stage != rates.StripStage || m.How != rates.ByFilm || m.Film.BaseShare == 1 || !m.Scopes[t.Scope] {
			continue
		}
		area := t.area(m)
		if isPrimer(m) && len(t.surfaces.newParts) > 0 {
			area -= replaced
		}
		out = append(out, Paint{m.Name, float64(m.UnitsPerM2() * area), m.Film.BaseShare})
	}
	return out
}
