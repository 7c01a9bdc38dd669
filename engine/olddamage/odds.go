package olddamage

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
)

// Known is what is known about the old damage of one car.
type Known struct {
	RoadYears float64 // years on the road, see exposure.RoadYears
	Answer    string  // about hits: one of Answers, or "" if not asked
	Where     []string
	Looks     []evidence.Look // those of other checks are left aside
	Zones     [Zones]string   // as recorded in a survey: one of MannerIDs, or "" where not recorded
	Square    string          // one of SquareIDs, or ""
	Hand      []HandSeen
	Skins     [2]int // big skins seen on bare metal: even, warped
}

// HandSeen is what a survey recorded of the earlier hand on one part.
type HandSeen struct {
	Patch    bool // a patch laid over rust; otherwise a part that was replaced
	CanBraze bool // brass can be recorded on the part
	Kinds    []Kind
}

// Odds are the odds of old damage of one car, given everything known and the state of
// its earlier repairs.
type Odds struct {
	// OfRepairs is the likelihood of the evidence by state of earlier repairs, the
	// largest 1; all 0 without evidence.
	OfRepairs [damage.RepairStates]float64

	fig     *Figures
	known   Known
	hits    [damage.RepairStates][hitStates]float64 // running sums
	sagged  [damage.RepairStates][2]float64         // chance, where no zone is crooked and where one is
	hand    [damage.RepairStates][hands]float64     // running sums
	blasted [damage.RepairStates]float64
	zones   [Zones]int8 // recorded, −1 = not
}

// hitStates are one without a hit, 5·3 with one and 10·9 with two.
const hitStates = 1 + int(Zones)*3 + 10*9

// hitState is what one of them means.
type hitState struct {
	manner  [Zones]Manner
	zones   [2]Zone // those hit
	n       int
	crooked bool
}

// allHits lists the states: none, one by zone and manner, two likewise.
var allHits = func() (list []hitState) {
	list = append(list, hitState{})
	for a := range Zones {
		for m := Well; m <= Crooked; m++ {
			one := hitState{n: 1, zones: [2]Zone{a}, crooked: m == Crooked}
			one.manner[a] = m
			list = append(list, one)
		}
	}
	for a := range Zones {
		for b := a + 1; b < Zones; b++ {
			for m := Well; m <= Crooked; m++ {
				for k := Well; k <= Crooked; k++ {
					one := hitState{n: 2, zones: [2]Zone{a, b}, crooked: m == Crooked || k == Crooked}
					one.manner[a], one.manner[b] = m, k
					list = append(list, one)
				}
			}
		}
	}
	return list
}()

// slip is the likelihood of a record that is not so, as on bare metal (package evidence).
const slip = 1e-6

// Condition works out the odds. It is exact.
func (g *Figures) Condition(b *car.Body, k Known) *Odds {
	if !HasRoof(b) { // the customer may not know which body it is
		k.Where = slices.DeleteFunc(slices.Clone(k.Where), func(id string) bool { return id == ZoneIDs[Roof] })
	}
	o := &Odds{fig: g, known: k}
	for z := range o.zones {
		o.zones[z] = int8(slices.Index(MannerIDs[:], k.Zones[z]))
	}
	shares := g.sharesOn(b)
	likely, square := o.likelihoods(shares)
	var total [damage.RepairStates]float64
	for r := range total {
		hits := o.conditionHits(r, shares, likely, square, g.saggedOn(b))
		total[r] = hits * o.conditionHand(r) * o.conditionBlast(r)
	}
	if !k.says() {
		return o
	}
	top := slices.Max(total[:])
	for r := range total {
		o.OfRepairs[r] = total[r] / top
	}
	return o
}

// says says whether there is any evidence.
func (k *Known) says() bool {
	return k.Answer != "" || len(k.Looks)+len(k.Hand) > 0 || k.Zones != [Zones]string{} || k.Square != "" || k.Skins != [2]int{}
}

// sharesOn are the shares of the zones; a body without a roof is not hit there.
func (g *Figures) sharesOn(b *car.Body) [Zones]float64 {
	shares := g.Zones
	if !HasRoof(b) {
		left := 1 - shares[Roof]
		shares[Roof] = 0
		for z := range shares {
			shares[z] /= left
		}
	}
	return shares
}

// HasRoof says whether a body has a roof that can be hit.
func HasRoof(b *car.Body) bool {
	_, has := b.PartNamed("roof_skin")
	return has
}

func (g *Figures) saggedOn(b *car.Body) float64 {
	switch {
	case b.OnAFrame:
		return g.Sagged[2]
	case b.OpenCar:
		return g.Sagged[1]
	}
	return g.Sagged[0]
}

// Rate is the mean number of hard hits in so many years on the road.
func (g *Figures) Rate(repair int, roadYears float64) float64 {
	return float64(g.HitsAYear*g.LeftOnTheRoad) * float64(roadYears*g.TimesByWork[repair])
}

// prior is the chance of a state of hits, but for how they were mended.
func (g *Figures) prior(s *hitState, rate float64, share [Zones]float64) float64 {
	none := chance.Exp(-rate)
	switch s.n {
	case 0:
		return none
	case 1:
		return float64(rate*none) * share[s.zones[0]]
	}
	a, b := share[s.zones[0]], share[s.zones[1]]
	more := max(0, 1-none-float64(rate*none))
	return more * (float64(a*b)/(1-a) + float64(a*b)/(1-b))
}

// likelihoods are those of the looks and records by zone and manner, and by whether the
// car is square.
func (o *Odds) likelihoods(share [Zones]float64) (zones func(s *hitState) float64, square [2]float64) {
	var at [Zones][]float64
	for z, id := range ZoneIDs {
		at[z] = o.fig.at(id, o.known.Looks, int(Manners))
		for m := range at[z] {
			if o.zones[z] >= 0 && int(o.zones[z]) != m {
				at[z][m] *= slip
			}
		}
	}
	copy(square[:], o.fig.at(WholeCar, o.known.Looks, 2))
	switch o.known.Square {
	case Square:
		square[1] *= slip
	case OutOfSquare:
		square[0] *= slip
	}
	return func(s *hitState) float64 {
		v := o.fig.answered(&o.known, s, share)
		for z, m := range s.manner {
			v *= at[z][m]
		}
		return v
	}, square
}
